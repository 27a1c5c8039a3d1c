// @vitest-environment jsdom
import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { type Project, parseProject } from '../../../core/index.ts';
import { type JournalEntry, setBridge } from '../../../renderer/bridge.ts';
import { goOn, openExample, openStart, saveProject } from '../../../renderer/files.ts';
import { entryEveryMs, followWork } from '../../../renderer/safekeeping/journal.ts';
import { journalText } from '../../../renderer/safekeeping/journalText.ts';
import { staying, unstay } from '../../../renderer/safekeeping/notices.ts';
import type { WorkerLike } from '../../../renderer/solve/client.ts';
import { followProject, pauseMs } from '../../../renderer/solve/follow.ts';
import { dropDrafts, keepDraft } from '../../../renderer/store/drafts.ts';
import { setValue } from '../../../renderer/store/edits.ts';
import { evaluationStore } from '../../../renderer/store/evaluation.ts';
import { applyEdit, currentProject, undo } from '../../../renderer/store/project.ts';
import { memoryBridge } from '../../helpers/memoryBridge.ts';

const start = { handle: null, path: null, name: 'demo.json', text: demoText };
const examples = [{ id: 'demo', title: 'Demo', note: '', text: demoText }];
/** Longest wait for a quiet moment and for the answers, ms. */
const slackMs = 300;

let stop: () => void;
let written: JournalEntry[];
let closed: number;
let fails: boolean;

beforeEach(async () => {
  vi.useFakeTimers();
  [written, closed, fails] = [[], 0, false];
  const { bridge } = memoryBridge(start, examples);
  const issue = {
    path: ['/keep'],
    code: 'journal-unwritable',
    message: 'The drive is full.',
    remedy: 'Free some space.',
  };
  setBridge({
    ...bridge,
    writeJournal: async (_journal, entry) => {
      if (fails) return { ok: false, issues: [issue] };
      written.push(entry);
      return { ok: true, value: null };
    },
    closeJournal: async () => {
      closed += 1;
      return { ok: true, value: null };
    },
  });
  await openStart();
  stop = followWork();
});

afterEach(() => {
  stop();
  unstay('journal');
  dropDrafts([]);
  vi.useRealTimers();
});

const pass = (ms = slackMs) => vi.advanceTimersByTimeAsync(ms);
const speed = (rpm: number) => applyEdit(setValue(['process', 'screwSpeedRpm'], rpm), { label: `Speed ${rpm}` });
const speedOf = (entry: JournalEntry | undefined) => (JSON.parse(entry?.text ?? '{}') as Project).process.screwSpeedRpm;

test('what is kept opens as the project that was shown', async () => {
  speed(17);
  await pass();
  const read = parseProject(written[0]?.text ?? '');
  expect(read).toEqual({ ok: true, value: currentProject() });
  expect(written[0]).toMatchObject({ handle: null, name: 'demo.json', step: 'Speed 17' });
});

test('the first edit goes at once, a burst after it in one entry that names its edits', async () => {
  speed(11);
  await pass();
  expect(written).toHaveLength(1);
  for (const rpm of [12, 13, 14]) speed(rpm);
  await pass(entryEveryMs + slackMs);
  expect(written).toHaveLength(2);
  expect(speedOf(written[1])).toBe(14);
  expect(written[1]?.step).toBe('Speed 12; Speed 13; Speed 14');
});

test('never is more than a second of edits without an entry', async () => {
  for (let i = 0; i < 40; i++) {
    speed(100 + i);
    await pass(50);
  }
  await pass(entryEveryMs);
  expect(written.length).toBeGreaterThanOrEqual(3);
  expect(speedOf(written.at(-1))).toBe(139);
});

test('typed text is kept before it is taken over; without work nothing is', async () => {
  await pass(2_000);
  expect(written).toEqual([]);
  keepDraft({ path: ['process', 'screwSpeedRpm'], text: '12 lemons', value: null, issue: null });
  await pass();
  expect(written[0]?.drafts).toEqual({ 'process/screwSpeedRpm': '12 lemons' });
});

test('a save, giving the work up, and undoing all of it end what is kept', async () => {
  speed(21);
  await pass();
  await saveProject();
  await pass(entryEveryMs + slackMs);
  expect(closed).toBe(1);
  speed(22);
  await pass(entryEveryMs + slackMs);
  await openExample('demo');
  await goOn(false);
  await pass(entryEveryMs + slackMs);
  expect(closed).toBe(2);
  speed(23);
  await pass(entryEveryMs + slackMs);
  undo();
  await pass(entryEveryMs + slackMs);
  expect(closed).toBe(3);
  expect(written).toHaveLength(3);
});

test('a journal that cannot be written is told once, with its reason; work goes on and is tried again', async () => {
  fails = true;
  speed(31);
  await pass();
  const notice = staying('journal');
  expect(notice?.text).toMatch(/drive is full/);
  expect(notice?.acts?.map(({ label }) => label)).toContain('Save as …');
  speed(32);
  await pass(entryEveryMs + slackMs);
  expect(staying('journal')).toBe(notice);
  fails = false;
  await pass(6_000);
  expect(speedOf(written.at(-1))).toBe(32);
});

test('a calculation killed in mid-run leaves the work and what is kept of it', async () => {
  let worker: WorkerLike | null = null;
  const startWorker = (): WorkerLike => {
    worker = { onmessage: null, onerror: null, postMessage: () => undefined, terminate: () => undefined };
    return worker;
  };
  const stopRuns = followProject(startWorker, startWorker);
  speed(41);
  await pass(pauseMs + slackMs);
  (worker as WorkerLike | null)?.onerror?.({ message: 'killed' } as ErrorEvent);
  expect(evaluationStore.getState().fault).toBe('killed');
  expect(currentProject()?.process.screwSpeedRpm).toBe(41);
  speed(42);
  await pass(entryEveryMs + slackMs);
  expect(speedOf(written.at(-1))).toBe(42);
  stopRuns();
});

test('after an edit only what it touched is written out anew', () => {
  const project = currentProject();
  if (!project) throw new Error('no project');
  journalText(project);
  const stringify = vi.spyOn(JSON, 'stringify');
  const text = journalText({ ...project, process: { ...project.process, screwSpeedRpm: 5 } });
  const size = stringify.mock.results.reduce((sum, { value }) => sum + String(value).length, 0);
  stringify.mockRestore();
  expect(JSON.parse(text).process.screwSpeedRpm).toBe(5);
  expect(size).toBeLessThan(text.length / 4);
});
