// @vitest-environment jsdom
import { beforeEach, expect, test } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { type Project, parseProject, serializeProject } from '../../../core/index.ts';
import { type Bridge, type RecoveredWork, setBridge } from '../../../renderer/bridge.ts';
import { openStart } from '../../../renderer/files.ts';
import { differenceRows } from '../../../renderer/safekeeping/differenceRows.ts';
import { staying } from '../../../renderer/safekeeping/notices.ts';
import {
  bringBackOwn,
  findRecoveries,
  goOnWith,
  readWork,
  recoveryStore,
  saveCopy,
  throwAway,
} from '../../../renderer/safekeeping/recovery.ts';
import { windowId } from '../../../renderer/safekeeping/windowId.ts';
import { draftStore } from '../../../renderer/store/drafts.ts';
import { currentProject, isUnsaved, projectStore, undo } from '../../../renderer/store/project.ts';
import { viewStore } from '../../../renderer/store/view.ts';
import { memoryBridge } from '../../helpers/memoryBridge.ts';

const read = parseProject(demoText);
if (!read.ok) throw new Error('the demo cannot be read');
const demo = read.value;
const edited: Project = { ...demo, process: { ...demo.process, screwSpeedRpm: 17 } };
const id = 'b'.repeat(32);
const handle = 'c'.repeat(32);
const onFile: RecoveredWork = {
  id,
  name: 'head.json',
  path: '/work shop/head.json',
  at: '2026-03-01T10:00:00Z',
  edits: 3,
  text: serializeProject(edited),
  drafts: { 'process/screwSpeedRpm': '99999', 'nowhere/0/at all': '1' },
  steps: ['Screw speed'],
  handle,
  fileText: demoText,
  fileVersion: 'd'.repeat(64),
  fileChanged: false,
  holder: null,
};

let dropped: string[];
let saved: Map<string, Uint8Array>;

async function open(work: RecoveredWork, more: Partial<Bridge> = {}): Promise<void> {
  dropped = [];
  const memory = memoryBridge({ handle: null, path: null, name: 'demo.json', text: demoText });
  saved = memory.saved;
  setBridge({
    ...memory.bridge,
    listRecoveries: async () => ({ ok: true, value: [work] }),
    readRecovery: async () => ({ ok: true, value: work }),
    dropRecovery: async (which) => {
      dropped.push(which);
      return { ok: true, value: null };
    },
    ...more,
  });
  await openStart();
  await findRecoveries(true);
  await readWork(id);
}

const first = () => {
  const found = recoveryStore.getState().read[id];
  if (!found) throw new Error('nothing was read');
  return found;
};

beforeEach(() => {
  recoveryStore.setState({ waiting: [], read: {} });
});

test('kept work is offered and said to wait until it is decided on', async () => {
  await open(onFile);
  expect(viewStore.getState().dialog).toBe('recovery');
  expect(staying('recovery')?.text).toMatch(/^1 piece of work/);
  await throwAway(first().work);
  expect(dropped).toEqual([id]);
  expect(staying('recovery')).toBeUndefined();
  expect(viewStore.getState().dialog).toBe('none');
});

test('going on puts the work over its file as one step, typed text in its field, and drops the journal last', async () => {
  await open(onFile);
  await goOnWith(first(), false);
  expect(currentProject()?.process.screwSpeedRpm).toBe(17);
  expect(projectStore.getState().file).toMatchObject({ handle, name: 'head.json', version: 'd'.repeat(64) });
  expect(isUnsaved(projectStore.getState())).toBe(true);
  const drafts = draftStore.getState();
  expect(Object.keys(drafts)).toEqual(['process/screwSpeedRpm']);
  expect(drafts['process/screwSpeedRpm']).toMatchObject({
    text: '99999',
    value: 99999,
    issue: { code: 'out-of-range' },
  });
  expect(dropped).toEqual([id]);
  undo();
  expect(currentProject()).toEqual(demo);
  expect(isUnsaved(projectStore.getState())).toBe(false);
});

test('going on as a copy leaves the file alone', async () => {
  await open({ ...onFile, fileChanged: true });
  await goOnWith(first(), true);
  expect(projectStore.getState().file).toMatchObject({ handle: null });
  expect(isUnsaved(projectStore.getState())).toBe(true);
});

test('a copy that the browser took as a download is not taken for safe; text that is no project can be saved too', async () => {
  await open({ ...onFile, text: 'not a project' });
  expect(first().project).toBeNull();
  await saveCopy(first());
  expect(new TextDecoder().decode(saved.get('head-kept.augerwright'))).toBe('not a project');
  expect(dropped).toEqual([]);
  expect(recoveryStore.getState().waiting).toHaveLength(1);
});

test("this window's own work comes back unasked; what cannot be read stays kept under its own name", async () => {
  await open(onFile);
  expect(await bringBackOwn()).toBe(true);
  expect(currentProject()?.process.screwSpeedRpm).toBe(17);
  await open({ ...onFile, text: '{' });
  const before = windowId();
  expect(await bringBackOwn()).toBe(false);
  expect(windowId()).not.toBe(before);
});

test('differences are named as the fields are, with units', () => {
  const after = structuredClone(edited) as Project;
  const [material] = after.materials;
  const revision = after.revisions[0];
  if (!material || !revision) throw new Error('the demo has materials and revisions');
  revision.screw.radialClearanceMm = 0.77;
  material.bulkDensityKgM3.value = 601;
  const rows = differenceRows(demo, after).map(({ place, label, after: now }) => [place, label, now]);
  expect(rows).toContainEqual(['Revision A', 'Screw: Flight clearance, mm', '0.77']);
  expect(rows).toContainEqual(['Running', 'Screw speed, rpm', '17']);
  expect(rows.find(([place]) => place === material.id)).toEqual([material.id, 'Bulk density, kg/m³', '601']);
});
