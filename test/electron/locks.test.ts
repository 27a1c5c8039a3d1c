import { readFileSync, rmSync, symlinkSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { describe, expect, test } from 'vitest';
import { ownMark, type ProcessMark, stateOf } from '../../electron/services/keep/processMark.ts';
import { createWindows } from '../../electron/services/keep/windows.ts';
import { faultyDisk } from './faultyDisk.ts';
import { gonePid } from './journalHelp.ts';
import { issueIn, opened, scratch, valueIn } from './keepHelp.ts';

const { at, host, names, put, read } = scratch();
const lock = '.mine.json.lock';

/** Leaves a lock as another start of the program would. */
function foreignLock(by: Partial<ProcessMark>, silentSeconds = 0): void {
  put('mine.json', 'old');
  const record = { program: 'augerwright', since: '2026-01-02T03:04:05.000Z', by: { ...ownMark(), ...by } };
  put(lock, JSON.stringify(record));
  const touched = new Date(Date.now() - silentSeconds * 1000);
  utimesSync(at(lock), touched, touched);
}

describe('a file that one window has open', () => {
  test('is held against other windows and other starts until it is left', async () => {
    put('mine.json', 'old');
    const services = host();
    const first = await opened(services, 'a', at('mine.json'));
    expect(first.holder).toBeNull();
    const second = await opened(services, 'b', at('mine.json'));
    expect(second.holder).toMatchObject({ kind: 'window', machine: hostname(), alive: true });
    const third = await opened(host(), 'a', at('mine.json'));
    expect(third.holder).toMatchObject({ kind: 'program', machine: hostname(), alive: true });
    for (const { save } of [second, third]) expect(issueIn(await save('new')).code).toBe('file-held');
    expect(read('mine.json')).toBe('old');
    valueIn(await first.api.leaveFile({ handle: first.handle }));
    expect(names()).toEqual(['mine.json']);
    valueIn(await third.save('new'));
    expect(names()).toContain(lock);
  });

  test('is one start’s alone where many open it at the same instant', async () => {
    put('mine.json', 'old');
    for (const leave of ['nothing', 'a dead lock']) {
      if (leave !== 'nothing') foreignLock({ pid: gonePid });
      const starts = Array.from({ length: 8 }, () => host());
      const files = await Promise.all(starts.map((start) => opened(start, 'a', at('mine.json'))));
      const saved = [];
      for (const { save } of files) saved.push((await save('new', { evenIfChanged: true })).ok);
      expect(saved.filter(Boolean)).toHaveLength(1);
      for (const start of starts) await start.close();
      expect(names().filter((name) => name.endsWith('.lock'))).toEqual([]);
    }
  });

  test('is free once its window, or the whole program, is closed', async () => {
    put('mine.json', 'old');
    const services = host();
    await opened(services, 'a', at('mine.json'));
    await services.closeWindow('a');
    expect((await opened(services, 'b', at('mine.json'))).holder).toBeNull();
    await services.close();
    expect(names()).toEqual(['mine.json']);
  });

  test('may be taken over; the loser learns of it by looking, and when it saves', async () => {
    put('mine.json', 'old');
    const loser = await opened(host(), 'a', at('mine.json'));
    const winner = await opened(host(), 'a', at('mine.json'));
    valueIn(await winner.api.takeOverFile({ handle: winner.handle }));
    const look = valueIn(await loser.api.lookAtFile({ handle: loser.handle, version: loser.version }));
    expect(look).toMatchObject({ state: 'same', holder: { kind: 'program', alive: true } });
    expect(issueIn(await loser.save('mine')).code).toBe('file-held');
    valueIn(await winner.save('theirs'));
    expect(read('mine.json')).toBe('theirs');
    // leaving what was lost takes nothing from the winner
    valueIn(await loser.api.leaveFile({ handle: loser.handle }));
    expect(names()).toContain(lock);
  });

  test('may be taken over between windows of one program', async () => {
    put('mine.json', 'old');
    const services = host();
    const loser = await opened(services, 'a', at('mine.json'));
    const winner = await opened(services, 'b', at('mine.json'));
    valueIn(await winner.api.takeOverFile({ handle: winner.handle }));
    valueIn(await winner.save('theirs'));
    expect(issueIn(await loser.save('mine')).code).toBe('file-held');
  });

  test('is one file under all its links, and "save as" does not write over its holder', async () => {
    put('mine.json', 'old');
    symlinkSync('mine.json', at('link.json'));
    const services = host();
    await opened(services, 'a', at('mine.json'));
    expect((await opened(services, 'b', at('link.json'))).holder).toMatchObject({ kind: 'window' });
    expect(issueIn(await services.saveAs('b', at('link.json'), 'new')).code).toBe('file-held');
  });
});

describe('a lock that was left', () => {
  test.each<readonly [string, Partial<ProcessMark>, number]>([
    ['a process that is gone', { pid: gonePid }, 0],
    ['a process whose number another has now', { started: 'long ago' }, 0],
    ['this machine before it was switched on anew', { boot: 'another' }, 3_600],
  ])('by %s is taken over in silence', async (_words, by, silent) => {
    foreignLock(by, silent);
    const { holder, save } = await opened(host(), 'a', at('mine.json'));
    expect(holder).toBeNull();
    valueIn(await save('new'));
  });

  test.each<readonly [string, Partial<ProcessMark>, number, boolean | null]>([
    ['a process that runs', {}, 3_600, true],
    ['another machine that touched it just now', { machine: 'other' }, 5, true],
    ['another machine that has been silent', { machine: 'other' }, 90, null],
    ['another container that touched it just now', { boot: 'another' }, 5, true],
  ])('by %s holds', async (_words, by, silent, alive) => {
    foreignLock(by, silent);
    const { holder, save } = await opened(host(), 'a', at('mine.json'));
    expect(holder).toEqual({
      kind: 'program',
      machine: by.machine ?? hostname(),
      since: '2026-01-02T03:04:05.000Z',
      alive,
    });
    expect(issueIn(await save('new')).code).toBe('file-held');
  });

  test.each(['', '{"program":"augerwright"'])('with %j in it names nobody', async (text) => {
    put('mine.json', 'old');
    put(lock, text);
    const { holder, save } = await opened(host(), 'a', at('mine.json'));
    expect(holder).toBeNull();
    valueIn(await save('new'));
    expect(readFileSync(at(lock), 'utf8')).toContain(`"pid": ${process.pid}`);
  });
});

test('a folder that takes no lock is no fault', async () => {
  put('mine.json', 'old');
  const plan = ({ name, path }: { name: string; path: string }) =>
    name === 'open' && path.endsWith('.lock') ? 'EACCES' : null;
  const { holder, save } = await opened(host(faultyDisk(plan)), 'a', at('mine.json'));
  expect(holder).toBeNull();
  valueIn(await save('new'));
  expect(names()).toEqual(['.mine.json.previous', 'mine.json']);
});

test.each([230, 250])('a name of %d letters leaves room for what stands beside it', async (length) => {
  const name = `${'n'.repeat(length)}.json`;
  put(name, 'old');
  const { save, api, handle } = await opened(host(), 'a', at(name));
  valueIn(await save('new'));
  expect(valueIn(await api.openPrevious({ handle })).text).toBe('old');
  expect(names()).toHaveLength(3);
});

test('what cut-off saves left is removed when the file is taken, and nothing else', async () => {
  put('mine.json', 'old');
  const left = ['.mine.json.0123456789abcdef.new', '.mine.json.0123456789abcdef.old'];
  const others = ['.other.json.0123456789abcdef.new', '.mine.json.notes.new'];
  for (const name of [...left, ...others]) put(name, 'x');
  await opened(host(), 'a', at('mine.json'));
  expect(names()).toEqual([lock, ...others, 'mine.json'].sort());
});

describe('windows and processes', () => {
  test('a page is there, then may be, then is gone; a window that was closed stays so', () => {
    let now = 0;
    const windows = createWindows(20_000, () => now);
    windows.heard('a');
    const seen = [0, 20_000, 21_000, 180_000, 181_000].map((at) => {
      now = at;
      return windows.isThere('a');
    });
    expect(seen).toEqual([true, true, null, null, false]);
    windows.closed('a');
    windows.heard('a');
    expect(windows.isThere('a')).toBe(false);
  });

  test('a process is told from one that is gone, and from machines that cannot be asked', () => {
    const mark = ownMark();
    expect(stateOf(mark)).toBe(process.platform === 'win32' ? 'perhaps' : 'running');
    expect(stateOf({ ...mark, pid: gonePid })).toBe('gone');
    expect(stateOf({ ...mark, machine: 'other' })).toBe('elsewhere');
  });

  test('a lock that somebody removed is put back by the next save', async () => {
    put('mine.json', 'old');
    const { save } = await opened(host(), 'a', at('mine.json'));
    rmSync(at(lock));
    writeFileSync(at('notes.txt'), '');
    valueIn(await save('new'));
    expect(names()).toContain(lock);
  });
});
