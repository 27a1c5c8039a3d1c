// @vitest-environment jsdom
import { afterEach, beforeEach, expect, test } from 'vitest';
import demoText from '../../../assets/examples/demo.json?raw';
import { type FileLook, setBridge } from '../../../renderer/bridge.ts';
import { openStart, saveProject } from '../../../renderer/files.ts';
import { conflictStore, keepMine, takeTheirs } from '../../../renderer/safekeeping/conflict.ts';
import { takeDropped } from '../../../renderer/safekeeping/drop.ts';
import { faultsStore } from '../../../renderer/safekeeping/faults.ts';
import { lookNow, watchFile } from '../../../renderer/safekeeping/fileWatch.ts';
import { staying, stayingStore } from '../../../renderer/safekeeping/notices.ts';
import { setValue } from '../../../renderer/store/edits.ts';
import { applyEdit, currentProject, projectStore, undo } from '../../../renderer/store/project.ts';
import { setView, viewStore } from '../../../renderer/store/view.ts';
import { memoryBridge } from '../../helpers/memoryBridge.ts';

const handle = 'a'.repeat(32);
const [read, theirs] = ['1'.repeat(64), '2'.repeat(64)];
const theirText = demoText.replace(/"screwSpeedRpm": [\d.]+/, '"screwSpeedRpm": 33');
const fine: FileLook = { state: 'same', version: read, holder: null };

let look: FileLook;
let given: { version: string | null; evenIfChanged: boolean }[];
let taken: string[];
let left: string[];
let stop: () => void;

beforeEach(async () => {
  [look, given, taken, left] = [fine, [], [], []];
  const { bridge } = memoryBridge({ handle, path: '/a/b.json', name: 'b.json', text: demoText, version: read });
  setBridge({
    ...bridge,
    lookAtFile: async () => ({ ok: true, value: look }),
    openRecent: async () => ({
      ok: true,
      value: { handle, path: '/a/b.json', name: 'b.json', text: theirText, version: theirs, holder: null },
    }),
    saveProject: async ({ version, evenIfChanged }) => {
      given.push({ version, evenIfChanged });
      if (version === theirs || look.state === 'same')
        return { ok: true, value: { handle, path: '/a/b.json', name: 'b.json', version: '3'.repeat(64) } };
      const code = look.holder ? 'file-held' : 'file-changed-outside';
      return { ok: false, issues: [{ path: ['/a/b.json'], code, message: 'No.', remedy: 'Ask.' }] };
    },
    takeOverFile: async (which) => {
      taken.push(which);
      return { ok: true, value: null };
    },
    leaveFile: async (which) => {
      left.push(which);
      return { ok: true, value: null };
    },
  });
  setView({ dialog: 'none', notice: null });
  stayingStore.setState({ notices: [] });
  stop = watchFile();
  await openStart();
});

afterEach(() => stop());

const edit = () => applyEdit(setValue(['process', 'screwSpeedRpm'], 17), { label: 'Screw speed' });
const speed = () => currentProject()?.process.screwSpeedRpm;

test('a change without work of one’s own offers to read it again; with work it shows both', async () => {
  look = { state: 'changed', version: theirs, holder: null };
  await lookNow();
  expect(viewStore.getState().dialog).toBe('none');
  expect(staying('file')?.acts?.[0]?.label).toBe('Read it again');
  edit();
  look = { ...look, version: '4'.repeat(64) };
  await lookNow();
  await expect.poll(() => viewStore.getState().dialog).toBe('conflict');
  setView({ dialog: 'none' });
  await lookNow();
  expect(viewStore.getState().dialog).toBe('none');
});

test('a save over a change asks first; keeping mine saves over the version that was looked at, and no other', async () => {
  edit();
  look = { state: 'changed', version: theirs, holder: null };
  expect(await saveProject()).toBe('failed');
  const { conflict } = conflictStore.getState();
  expect(viewStore.getState().dialog).toBe('conflict');
  if (!conflict) throw new Error('no conflict was shown');
  await keepMine(conflict);
  expect(given.map(({ version }) => version)).toEqual([read, theirs]);
  expect(projectStore.getState().file.version).toBe('3'.repeat(64));
  expect(speed()).toBe(17);
});

test('taking theirs is one step that can be undone', async () => {
  edit();
  look = { state: 'changed', version: theirs, holder: null };
  await saveProject();
  const { conflict } = conflictStore.getState();
  if (!conflict) throw new Error('no conflict was shown');
  takeTheirs(conflict);
  expect(speed()).toBe(33);
  undo();
  expect(speed()).toBe(17);
});

test('gone and unreachable files are told until they are back', async () => {
  look = { state: 'gone', version: null, holder: null };
  await lookNow();
  expect(staying('file')?.text).toMatch(/not there any more/);
  look = { ...look, state: 'unreachable' };
  await lookNow();
  expect(staying('file')?.text).toMatch(/does not answer/);
  look = fine;
  await lookNow();
  expect(staying('file')).toBeUndefined();
});

test('a file held elsewhere is told and can be taken over', async () => {
  const holder = { kind: 'program', machine: 'bench-2', since: '2026-03-01T10:00:00Z', alive: true } as const;
  look = { ...fine, holder };
  await lookNow();
  const notice = staying('held');
  expect(notice?.text).toMatch(/bench-2/);
  await lookNow();
  expect(staying('held')).toBe(notice);
  await notice?.acts?.[0]?.perform();
  expect(taken).toEqual([handle]);
  expect(staying('held')).toBeUndefined();
});

test('opening another project leaves the file to others', async () => {
  projectStore.setState({ file: { handle: null, name: 'x.json' } });
  expect(left).toEqual([handle]);
});

test('a dropped file that is too large is refused before it is read', async () => {
  const big = new File([''], 'big.json');
  Object.defineProperty(big, 'size', { value: 17 * 1024 * 1024 });
  await takeDropped([big]);
  expect(faultsStore.getState().refused).toMatchObject({ name: 'big.json', issues: [{ code: 'file-too-large' }] });
});
