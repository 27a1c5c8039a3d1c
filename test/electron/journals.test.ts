import { readdirSync, rmSync, statSync, utimesSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import type { Host } from '../../electron/services/host.ts';
import { versionOf } from '../../electron/services/keep/version.ts';
import { faultyDisk } from './faultyDisk.ts';
import { entry, loseWork } from './journalHelp.ts';
import { issueIn, one, opened, scratch, two, valueIn } from './keepHelp.ts';

const place = scratch();
const { at, host, put } = place;

const journalFile = (id: string) => at(`state/journals/${id}.journal`);
const listed = async (services: Host, windowId: string, journal: string) =>
  valueIn(await services.apiFor(windowId).listRecoveries({ journal }));
const lost = (write: (services: Host) => Promise<void>) => loseWork(place, write);

describe('work in a window that is gone', () => {
  test('is found by the next start with its edits, its drafts and its file, and is held no more', async () => {
    put('mine.json', 'A');
    await lost(async (services) => {
      const { api, handle } = await opened(services, 'w', at('mine.json'));
      for (const text of ['A', 'B', 'C'])
        valueIn(await api.writeJournal({ journal: one, entry: entry(text, { handle }) }));
      const drafts = { 'screw.pitch': '12 m' };
      valueIn(await api.writeJournal({ journal: one, entry: entry('C', { handle, drafts, step: 'typing' }) }));
    });
    const next = host();
    const [found] = await listed(next, 'n', two);
    expect(found).toMatchObject({ id: one, name: 'A screw', path: at('mine.json'), edits: 2 });
    const work = valueIn(await next.apiFor('n').readRecovery({ id: one }));
    expect(work).toMatchObject({
      name: 'mine.json',
      text: 'C',
      steps: ['to B', 'to C'],
      drafts: { 'screw.pitch': '12 m' },
      fileText: 'A',
      fileVersion: versionOf('A'),
      fileChanged: false,
      holder: null,
    });
    const { handle, fileVersion } = work;
    if (handle === null) throw new Error('no handle');
    const saved = { handle, text: work.text, version: fileVersion, evenIfChanged: false };
    valueIn(await next.apiFor('n').saveProject(saved));
  });

  test('tells that somebody changed the file since; what was saved from here is nobody else', async () => {
    put('mine.json', 'A');
    await lost(async (services) => {
      const { api, handle, save } = await opened(services, 'w', at('mine.json'));
      valueIn(await api.writeJournal({ journal: one, entry: entry('B', { handle }) }));
      valueIn(await save('B'));
      valueIn(await api.writeJournal({ journal: one, entry: entry('C', { handle }) }));
    });
    const work = async () => valueIn(await host().apiFor('n').readRecovery({ id: one }));
    expect(await work()).toMatchObject({ fileChanged: false, edits: 1, steps: ['to C'], fileText: 'B' });
    put('mine.json', 'theirs');
    expect(await work()).toMatchObject({ fileChanged: true, fileText: 'theirs' });
    rmSync(at('mine.json'));
    expect(await work()).toMatchObject({ fileChanged: false, fileText: null, handle: null, path: at('mine.json') });
  });

  test('keeps to the version it began from while the window only compares with another', async () => {
    put('mine.json', 'A');
    const fileChanged = async () => {
      const next = host();
      const work = valueIn(await next.apiFor('n').readRecovery({ id: one }));
      await next.close();
      return work.fileChanged;
    };
    const compare = (taken: boolean) => async (services: Host) => {
      const { api, handle, version } = await opened(services, 'w', at('mine.json'));
      put('mine.json', 'theirs');
      const theirs = await opened(services, 'w', at('mine.json'));
      valueIn(await api.lookAtFile({ handle, version: taken ? theirs.version : version }));
      valueIn(await api.writeJournal({ journal: one, entry: entry('B', { handle }) }));
    };
    await lost(compare(false));
    expect(await fileChanged()).toBe(true);
    await lost(compare(true));
    expect(await fileChanged()).toBe(false);
  });

  test.each([
    [{ machine: 'other' }, 10, 0],
    [{ machine: 'other' }, 100, 1],
    [{ started: '' }, 10, 0],
    [{ started: '' }, 100, 1],
    [{ boot: 'another' }, 100, 1],
  ])(
    'of a program %j that nobody can ask is left alone for as long as it gives signs (%d s: %d)',
    async (by, s, found) => {
      await loseWork(
        place,
        async (services) => {
          valueIn(await services.apiFor('w').writeJournal({ journal: one, entry: entry('new') }));
        },
        { pid: process.pid, ...by },
      );
      const touched = new Date(Date.now() - s * 1000);
      utimesSync(journalFile(one), touched, touched);
      expect(await listed(host(), 'n', two)).toHaveLength(found);
    },
  );

  test('that its file holds already is not offered, and its journal goes', async () => {
    put('mine.json', 'A');
    await lost(async (services) => {
      const { api, handle, save } = await opened(services, 'w', at('mine.json'));
      valueIn(await api.writeJournal({ journal: one, entry: entry('B', { handle }) }));
      valueIn(await save('B'));
    });
    expect(await listed(host(), 'n', two)).toEqual([]);
    expect(readdirSync(at('state/journals'))).toEqual([]);
  });

  test('is told from its file by what it says, not by its letters', async () => {
    put('mine.json', '{\n  "a": 1,\n  "b": 2\n}\n');
    const written = '{\n  "a": 1,\n  "b": 3\n}\n';
    const kept = (text: string) =>
      lost(async (services) => {
        const { api, handle, save } = await opened(services, 'w', at('mine.json'));
        valueIn(await api.writeJournal({ journal: one, entry: entry('{"b":3,"a":1}', { handle }) }));
        const saved = save(written);
        // comes in while the save is at work
        valueIn(await api.writeJournal({ journal: one, entry: entry(text, { handle }) }));
        valueIn(await saved);
      });
    await kept('{"b":4,"a":1}');
    const next = host();
    expect(valueIn(await next.apiFor('n').readRecovery({ id: one }))).toMatchObject({
      text: '{"b":4,"a":1}',
      edits: 1,
      fileChanged: false,
    });
    expect(await listed(next, 'n', two)).toHaveLength(1);
    valueIn(await next.apiFor('n').dropRecovery({ id: one }));
    await next.close();
    await kept('{"b":3,"a":1}');
    expect(await listed(host(), 'n', two)).toEqual([]);
  });

  test('that came in during a save of edits never kept is not taken for saved', async () => {
    put('mine.json', 'A');
    await lost(async (services) => {
      const { api, handle, save } = await opened(services, 'w', at('mine.json'));
      valueIn(await api.writeJournal({ journal: one, entry: entry('B', { handle }) }));
      const saved = save('C');
      valueIn(await api.writeJournal({ journal: one, entry: entry('D', { handle }) }));
      valueIn(await saved);
    });
    expect(valueIn(await host().apiFor('n').readRecovery({ id: one }))).toMatchObject({ text: 'D', steps: ['to D'] });
  });

  test('of a project without a file is offered until it is dropped', async () => {
    await lost(async (services) => {
      valueIn(await services.apiFor('w').writeJournal({ journal: one, entry: entry('new') }));
    });
    const next = host();
    expect(await listed(next, 'n', two)).toMatchObject([{ id: one, path: null, edits: 1 }]);
    valueIn(await next.apiFor('n').dropRecovery({ id: one }));
    expect(await listed(next, 'n', two)).toEqual([]);
    expect(issueIn(await next.apiFor('n').readRecovery({ id: one })).code).toBe('recovery-unknown');
  });
});

describe('work in a window that is there', () => {
  test('is nobody else’s to recover, and its own after its page was loaded anew', async () => {
    const services = host();
    valueIn(await services.apiFor('w').writeJournal({ journal: one, entry: entry('new') }));
    expect(await listed(services, 'n', two)).toEqual([]);
    expect(await listed(host(), 'n', two)).toEqual([]);
    expect(issueIn(await services.apiFor('n').dropRecovery({ id: one })).code).toBe('recovery-in-use');
    expect(issueIn(await services.apiFor('n').writeJournal({ journal: one, entry: entry('x') })).code).toBe(
      'recovery-in-use',
    );
    expect(await listed(services, 'w', one)).toMatchObject([{ id: one, edits: 1 }]);
    await services.closeWindow('w');
    expect(await listed(services, 'n', two)).toMatchObject([{ id: one, edits: 1 }]);
  });

  test('goes with its journal; the next edit begins a new one', async () => {
    const api = host().apiFor('w');
    valueIn(await api.writeJournal({ journal: one, entry: entry('new') }));
    valueIn(await api.closeJournal({ journal: one }));
    expect(readdirSync(at('state/journals'))).toEqual([]);
    valueIn(await api.writeJournal({ journal: one, entry: entry('newer') }));
    expect(valueIn(await api.readRecovery({ id: one }))).toMatchObject({ text: 'newer', edits: 1 });
  });

  test('survives that somebody cleans the folder up', async () => {
    const api = host().apiFor('w');
    valueIn(await api.writeJournal({ journal: one, entry: entry('new') }));
    rmSync(at('state'), { recursive: true });
    valueIn(await api.writeJournal({ journal: one, entry: entry('newer') }));
    expect(valueIn(await api.readRecovery({ id: one }))).toMatchObject({ text: 'newer' });
  });

  test.runIf(process.platform !== 'win32')('is for the eyes of its person alone', async () => {
    valueIn(
      await host()
        .apiFor('w')
        .writeJournal({ journal: one, entry: entry('new') }),
    );
    expect(statSync(at('state/journals')).mode & 0o777).toBe(0o700);
    expect(statSync(journalFile(one)).mode & 0o777).toBe(0o600);
  });
});

test('a journal that cannot be written is told once for each cause, and again after it went well', async () => {
  let code: string | null = 'ENOSPC';
  const { disk } = faultyDisk(({ name }) => (name === 'file.datasync' ? code : null));
  const api = host({ disk }).apiFor('w');
  const write = () => api.writeJournal({ journal: one, entry: entry('x') });
  expect(issueIn(await write())).toMatchObject({
    code: 'journal-unwritable',
    message: expect.stringMatching(/^Edits are not being kept: the drive is full\./),
  });
  valueIn(await write());
  code = 'EIO';
  expect(issueIn(await write()).message).toContain('the drive failed');
  code = null;
  valueIn(await write());
  code = 'EIO';
  expect(issueIn(await write()).code).toBe('journal-unwritable');
});
