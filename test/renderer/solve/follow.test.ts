import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import type { WorkerLike } from '../../../renderer/solve/client.ts';
import { followProject, pauseMs, retryRun } from '../../../renderer/solve/follow.ts';
import type { Answer, Request } from '../../../renderer/solve/protocol.ts';
import { setValue } from '../../../renderer/store/edits.ts';
import { evaluationStore } from '../../../renderer/store/evaluation.ts';
import { applyEdit, loadProject, showRevision, undo } from '../../../renderer/store/project.ts';
import { branchRevision, noteRevision } from '../../../renderer/store/revisions.ts';
import { loadExample } from '../../helpers/projects.ts';

let asked: Request[];
let worker: WorkerLike & { say(answer: Answer): void };
let stop: () => void;

function startWorker(): WorkerLike {
  const started: typeof worker = {
    onmessage: null,
    onerror: null,
    postMessage: (message) => asked.push(message as Request),
    terminate: () => undefined,
    say: (answer) => started.onmessage?.({ data: answer } as MessageEvent<Answer>),
  };
  worker = started;
  return started;
}

beforeEach(() => {
  vi.useFakeTimers();
  asked = [];
  stop = followProject(startWorker);
  loadProject(loadExample('demo'), { handle: null, name: 'demo.json' });
  vi.advanceTimersByTime(pauseMs);
});
afterEach(() => {
  stop();
  vi.useRealTimers();
});

const finish = () => worker.say({ kind: 'issues', run: asked.at(-1)?.run ?? 0, issues: [] });
const speed = (rpm: number) => applyEdit(setValue(['process', 'screwSpeedRpm'], rpm), { label: 'Screw speed' });

test('opening asks for the active revision, and a burst of edits for one run of the last state', () => {
  expect(asked.map(({ revisionId }) => revisionId)).toEqual(['C']);
  finish();
  for (const rpm of [11, 12, 13]) speed(rpm);
  vi.advanceTimersByTime(pauseMs);
  expect(asked).toHaveLength(2);
  expect(asked[1]?.project.process.screwSpeedRpm).toBe(13);
});

test('notes ask for nothing; another revision, a branch and undo ask for a run', () => {
  finish();
  applyEdit(noteRevision('C', 'looks fine'), { label: 'Note' });
  vi.advanceTimersByTime(pauseMs);
  expect(asked).toHaveLength(1);
  const steps = [
    () => showRevision('A'),
    () => applyEdit(branchRevision('A', 'Next', '2026-05-01'), { label: 'Branch' }),
    undo,
  ];
  for (const step of steps) {
    step();
    vi.advanceTimersByTime(pauseMs);
    finish();
  }
  expect(asked.map(({ revisionId }) => revisionId)).toEqual(['C', 'A', 'D', 'A']);
});

test('results are marked as running at once, a fault is kept in words, and can be tried again', () => {
  finish();
  speed(20);
  expect(evaluationStore.getState().running).toBe(true);
  vi.advanceTimersByTime(pauseMs);
  worker.onerror?.({ message: 'out of memory' } as ErrorEvent);
  expect(evaluationStore.getState()).toMatchObject({ running: false, fault: 'out of memory' });
  retryRun();
  vi.advanceTimersByTime(pauseMs);
  expect(asked).toHaveLength(3);
  finish();
  expect(evaluationStore.getState().fault).toBeNull();
});
