import { mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { parseMaterial } from '../../core/index.ts';
import { answer } from '../../electron/services/answer.ts';
import { createDialogCalls, type Dialogs } from '../../electron/services/dialogCalls.ts';
import { createHost } from '../../electron/services/host.ts';
import { stateFolder } from '../../electron/services/stateFolder.ts';
import { readStatic } from '../../electron/services/staticFiles.ts';
import { readTextFile } from '../../electron/services/textFile.ts';

let folder: string;
const inFolder = (name: string) => join(folder, name);
/** A host, and the calls of its window `one`. */
function host(startPath: string | null = null, places = {}) {
  const made = createHost({
    examplesFolder: 'test/electron/examples',
    materialsFolder: 'assets/materials',
    startPath,
    recentListPath: inFolder('state/recent.json'),
    ...places,
  });
  return { ...made, api: made.apiFor('one') };
}

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'augerwright-test-'));
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('opening and saving', () => {
  test('without a file, the demo opens, and cannot be written back', async () => {
    const opened = await host().api.readStartProject(null);
    expect(opened).toMatchObject({ ok: true, value: { handle: null, path: null, name: 'demo.json' } });
  });

  test('a file named at the start opens, is saved under its handle, and is remembered by the next start', async () => {
    writeFileSync(inFolder('mine.json'), '{"a":1}');
    const { api, close } = host(inFolder('mine.json'));
    const opened = await api.readStartProject(null);
    if (!opened.ok || opened.value.handle === null) throw new Error('not opened');
    expect(opened.value.text).toBe('{"a":1}');
    const { handle, version } = opened.value;
    const saved = await api.saveProject({ handle, version, text: '{"a":2}', evenIfChanged: false });
    expect(saved).toMatchObject({ ok: true });
    expect(readFileSync(inFolder('mine.json'), 'utf8')).toBe('{"a":2}');
    await close();
    expect(readdirSync(folder).sort()).toEqual(['.mine.json.previous', 'mine.json', 'state']);

    const next = host();
    const recent = await next.api.listRecent(null);
    if (!recent.ok) throw new Error('no list');
    expect(recent.value.map((file) => file.name)).toEqual(['mine.json']);
    expect(await next.api.openRecent({ handle: recent.value[0].handle })).toMatchObject({
      ok: true,
      value: { text: '{"a":2}' },
    });
  });

  test('a failed save leaves the old file whole', async () => {
    writeFileSync(inFolder('mine.json'), 'old');
    const { api, table } = host();
    const handle = table.admit(inFolder('gone/mine.json'));
    const saved = await api.saveProject({ handle, text: 'new', version: null, evenIfChanged: false });
    expect(saved).toMatchObject({ ok: false, issues: [{ code: 'file-folder-gone' }] });
    expect(readFileSync(inFolder('mine.json'), 'utf8')).toBe('old');
  });
});

describe('the library of materials', () => {
  test('every shipped material is listed by name, and reads as a good material', async () => {
    const { api } = host();
    const listed = await api.listMaterials(null);
    if (!listed.ok) throw new Error('no list');
    expect(listed.value.find(({ id }) => id === 'hdpe')).toMatchObject({ title: 'HDPE, generic' });
    expect(listed.value.length).toBeGreaterThan(5);
    for (const { id } of listed.value) {
      const read = await api.readMaterial({ id });
      if (!read.ok) throw new Error(`${id} is not read`);
      expect(parseMaterial(read.value.text)).toMatchObject({ ok: true, value: { id } });
    }
  });

  test('only names of the list are read, wherever the file would lie', async () => {
    const { api } = host();
    for (const id of ['nowhere', '../examples/demo', '../../package', '']) {
      expect(await api.readMaterial({ id })).toMatchObject({ ok: false, issues: [{ code: 'material-unknown' }] });
    }
  });

  test('a damaged file is listed under its id; a folder that is gone is an issue', async () => {
    writeFileSync(inFolder('torn.json'), '{"name":');
    const torn = host(null, { materialsFolder: folder });
    expect(await torn.api.listMaterials(null)).toEqual({ ok: true, value: [{ id: 'torn', title: 'torn', note: '' }] });
    const gone = host(null, { materialsFolder: inFolder('gone') });
    expect(await gone.api.listMaterials(null)).toMatchObject({ ok: false, issues: [{ code: 'file-enoent' }] });
  });
});

describe('files that cannot be read', () => {
  test.each([
    ['missing.json', 'file-enoent'],
    ['.', 'file-eisdir'],
    ['binary.json', 'file-not-text'],
    ['long.json', 'file-too-large'],
  ])('%s gives %s', async (name, code) => {
    writeFileSync(inFolder('binary.json'), Buffer.from([0xff, 0xfe, 0x00, 0xd8]));
    writeFileSync(inFolder('long.json'), 'x'.repeat(101));
    expect(await readTextFile(inFolder(name), 100)).toMatchObject({ ok: false, issues: [{ code }] });
  });

  test('a link out of the served folder is not followed', async () => {
    writeFileSync(inFolder('inside.json'), '{}');
    symlinkSync(join(process.cwd(), 'package.json'), inFolder('link.json'));
    expect(await readStatic(folder, '/inside.json')).not.toBeNull();
    expect(await readStatic(folder, '/link.json')).toBeNull();
  });
});

describe('dialogs', () => {
  const dialogs = (path: string | null): Dialogs => ({
    pickToOpen: async () => path,
    pickToSave: async () => path,
    pagePdf: async () => new TextEncoder().encode('%PDF'),
    setEdited: () => undefined,
    setMenu: () => undefined,
    newWindow: () => undefined,
    closeWindow: () => undefined,
    showLogFolder: async () => true,
  });

  test('a cancelled dialog answers null', async () => {
    const calls = createDialogCalls(host(), 'one', dialogs(null));
    expect(await calls.openProject(null)).toEqual({ ok: true, value: null });
    expect(await calls.saveProjectAs({ text: '', suggestedName: 'a.json' })).toEqual({ ok: true, value: null });
    expect(await calls.printReport({ suggestedName: 'a.pdf' })).toEqual({ ok: true, value: null });
  });

  test('a file saved under a new name is then saved by its handle, without a dialog', async () => {
    const services = host();
    const evenIfChanged = false;
    const calls = createDialogCalls(services, 'one', dialogs(inFolder('new.json')));
    const saved = await calls.saveProjectAs({ text: 'one', suggestedName: 'new.json' });
    if (!saved.ok || !saved.value?.handle) throw new Error('not saved');
    const { handle, version } = saved.value;
    await services.api.saveProject({ handle, version, text: 'two', evenIfChanged });
    expect(readFileSync(inFolder('new.json'), 'utf8')).toBe('two');
  });

  test('an export writes its bytes, and the report what the page prints', async () => {
    const calls = createDialogCalls(host(), 'one', dialogs(inFolder('out.bin')));
    await calls.exportFile({ suggestedName: 'out.bin', data: new Uint8Array([1, 2, 3]) });
    expect([...readFileSync(inFolder('out.bin'))]).toEqual([1, 2, 3]);
    await calls.printReport({ suggestedName: 'out.pdf' });
    expect(readFileSync(inFolder('out.bin'), 'utf8')).toBe('%PDF');
  });
});

test('a damaged list of recent files is taken as empty', async () => {
  const { api } = host(null, { recentListPath: inFolder('recent.json') });
  writeFileSync(inFolder('recent.json'), '{"not":"a list"}');
  expect(await api.listRecent(null)).toEqual({ ok: true, value: [] });
});

test('a fault inside a call comes back as an issue', async () => {
  const listExamples = async () => {
    throw new Error('broken');
  };
  expect(await answer({ listExamples } as never, 'listExamples', null)).toMatchObject({
    ok: false,
    issues: [{ code: 'host-fault' }],
  });
});

describe('about the program', () => {
  const about = { packagePath: 'package.json', noticesPaths: [] as string[], logFolder: null };

  test('versions come from the package and the process, notices from every bundle that has them', async () => {
    writeFileSync(inFolder('a.txt'), 'one');
    writeFileSync(inFolder('b.txt'), 'two');
    const noticesPaths = ['a.txt', 'none.txt', 'b.txt'].map(inFolder);
    const { version } = JSON.parse(readFileSync('package.json', 'utf8')) as { version: string };
    expect(await host(null, { about: { ...about, noticesPaths } }).api.readAbout(null)).toMatchObject({
      ok: true,
      value: {
        version,
        licence: 'MIT',
        notices: 'one\n\ntwo',
        runtime: expect.arrayContaining([{ name: 'Node', version: process.versions.node }]),
      },
    });
  });

  test('what is missing is said to be', async () => {
    const told = { version: 'unknown', notices: expect.stringContaining('missing') };
    expect(await host().api.readAbout(null)).toMatchObject({ ok: true, value: told });
    const gone = host(null, { about: { ...about, packagePath: inFolder('none.json') } });
    expect(await gone.api.readAbout(null)).toMatchObject({ ok: true, value: told });
  });

  test('faults of a window go to the log', async () => {
    const logged: string[] = [];
    const { api } = host(null, { log: (message: string) => logged.push(message) });
    await api.logFault({ message: 'broken', where: 'curve' });
    expect(logged).toEqual(['curve: broken']);
  });

  test('its own folder is where the system wants it, or where it is told to be', () => {
    const home = '/h';
    const at = (platform: string, env = {}) => stateFolder({ platform, env, home });
    expect(at('linux')).toBe('/h/.local/state/augerwright');
    expect(at('linux', { XDG_STATE_HOME: '/x' })).toBe('/x/augerwright');
    expect(at('linux', { XDG_STATE_HOME: 'x' })).toBe('/h/.local/state/augerwright');
    expect(at('darwin')).toBe('/h/Library/Application Support/Augerwright');
    expect(at('win32', { LOCALAPPDATA: '/l' })).toBe('/l/Augerwright');
    expect(at('linux', { AUGERWRIGHT_STATE: '/own', XDG_STATE_HOME: '/x' })).toBe('/own');
  });
});
