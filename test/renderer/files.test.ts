// @vitest-environment jsdom
import { beforeEach, expect, test } from 'vitest';
import demoText from '../../assets/examples/demo.json?raw';
import waxText from '../../assets/examples/wax-head.json?raw';
import { setBridge } from '../../renderer/bridge.ts';
import { goOn, openExample, openStart, saveProject } from '../../renderer/files.ts';
import { faultsStore } from '../../renderer/safekeeping/faults.ts';
import { staying } from '../../renderer/safekeeping/notices.ts';
import { setValue } from '../../renderer/store/edits.ts';
import { applyEdit, currentProject, isUnsaved, projectStore } from '../../renderer/store/project.ts';
import { setView, viewStore } from '../../renderer/store/view.ts';
import { memoryBridge } from '../helpers/memoryBridge.ts';

const start = { handle: null, path: null, name: 'demo.json', text: demoText };
const examples = [
  { id: 'wax', title: 'Wax', note: '', text: waxText },
  { id: 'bad', title: 'Bad', note: '', text: '{"format": 1}' },
  { id: 'slip', title: 'Slip', note: '', text: waxText.replace('"process": {', '"process": { "ambiantC": 3,') },
];
let saved: Map<string, Uint8Array>;

const unsaved = () => isUnsaved(projectStore.getState());
const edit = () => applyEdit(setValue(['process', 'screwSpeedRpm'], 17), { label: 'Screw speed' });
const name = () => currentProject()?.name ?? '';

beforeEach(async () => {
  const memory = memoryBridge(start, examples);
  saved = memory.saved;
  setBridge(memory.bridge);
  setView({ dialog: 'none', notice: null });
  await openStart();
});

test('a saved project is no longer unsaved, and what was written opens as the same project', async () => {
  edit();
  expect(unsaved()).toBe(true);
  await saveProject();
  expect(unsaved()).toBe(false);
  const written = JSON.parse(new TextDecoder().decode(saved.get('demo.json')));
  expect(written).toEqual({ ...JSON.parse(demoText), process: { ...JSON.parse(demoText).process, screwSpeedRpm: 17 } });
});

test('opening another project with unsaved changes asks first', async () => {
  const before = name();
  edit();
  await openExample('wax');
  expect(viewStore.getState().dialog).toBe('discard');
  expect(name()).toBe(before);
  await goOn(true);
  expect(saved.has('demo.json')).toBe(true);
  expect(name()).toBe(JSON.parse(waxText).name);
});

test('a save that fails gives nothing up: the work stays, is told of, and can be saved elsewhere', async () => {
  const before = name();
  const issue = { path: ['/full/demo.json'], code: 'file-enospc', message: 'The disk is full.', remedy: 'Free some.' };
  const { bridge } = memoryBridge(start, examples);
  setBridge({ ...bridge, saveProjectAs: async () => ({ ok: false, issues: [issue] }) });
  edit();
  await openExample('wax');
  await goOn(true);
  expect(name()).toBe(before);
  expect(unsaved()).toBe(true);
  expect(viewStore.getState().notice?.kind).not.toBe('good');
  const notice = staying('save');
  expect(notice?.remedy).toMatch(/full\/demo\.json.*disk is full/);
  expect(notice?.acts?.map(({ label }) => label)).toEqual(['Try again', 'Save as …']);
  setBridge(bridge);
  await notice?.acts?.[0]?.perform();
  expect(unsaved()).toBe(false);
  expect(staying('save')).toBeUndefined();
});

test('changes may be given up; without changes nothing is asked', async () => {
  edit();
  await openExample('wax');
  await goOn(false);
  expect(saved.size).toBe(0);
  expect(name()).toBe(JSON.parse(waxText).name);
  await openExample('wax');
  expect(viewStore.getState().dialog).toBe('none');
});

test('a file that is no project leaves the open one alone and says why', async () => {
  const before = currentProject();
  await openExample('bad');
  expect(currentProject()).toBe(before);
  expect(viewStore.getState().dialog).toBe('faults');
  expect(faultsStore.getState().refused).toMatchObject({ name: 'bad.json', issues: [{ path: ['format'] }] });
  await openExample('wax');
  expect(viewStore.getState().dialog).toBe('none');
});

test('a file with a field that is not known opens, and says which', async () => {
  await openExample('slip');
  expect(viewStore.getState().notice).toEqual({
    kind: 'bad',
    text: expect.stringMatching(/Opened.*process\.ambiantC/),
  });
  await openExample('wax');
  expect(viewStore.getState().notice?.kind).toBe('good');
});
