import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { logName, startLog } from '../../electron/log.ts';
import { createBudget } from '../../electron/services/budget.ts';
import { isSameFile, launchFiles } from '../../electron/services/launchFiles.ts';
import { logText, withoutPaths } from '../../electron/services/logText.ts';
import { type Display, placeInView, readPlace, writePlace } from '../../electron/services/windowPlaces.ts';
import { createWindowWork } from '../../electron/services/windowWork.ts';

let folder: string;
const inFolder = (name: string) => join(folder, name);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'augerwright-shell-'));
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('files of a start', () => {
  test('are the plain files among its words, resolved against its own folder, each once', () => {
    writeFileSync(inFolder('a b.json'), '{}');
    writeFileSync(inFolder('-flag.json'), '{}');
    mkdirSync(inFolder('folder.json'));
    const words = ['--type=renderer', '-flag.json', 'a b.json', `--project=${inFolder('a b.json')}`, 'folder.json'];
    const more = ['missing.json', 'bad\0name', '', 'x'.repeat(5_000), './a b.json', '/dev/null', '--project='];
    expect(launchFiles([...words, ...more], folder)).toEqual([inFolder('a b.json')]);
  });

  test('are no more than twelve', () => {
    const names = Array.from({ length: 20 }, (_, i) => `${i}.json`);
    for (const name of names) writeFileSync(inFolder(name), '{}');
    expect(launchFiles(names, folder)).toEqual(names.slice(0, 12).map(inFolder));
  });

  test('are the same through a link', () => {
    writeFileSync(inFolder('one.json'), '{}');
    writeFileSync(inFolder('two.json'), '{}');
    symlinkSync(inFolder('one.json'), inFolder('link.json'));
    expect(isSameFile(inFolder('one.json'), inFolder('link.json'))).toBe(true);
    expect(isSameFile(inFolder('one.json'), inFolder('two.json'))).toBe(false);
    expect(isSameFile(inFolder('gone.json'), inFolder('./gone.json'))).toBe(true);
  });
});

describe('places of windows', () => {
  const left: Display = { id: 1, workArea: { x: 0, y: 0, width: 1920, height: 1040 } };
  const right: Display = { id: 2, workArea: { x: 1920, y: 0, width: 1280, height: 984 } };
  const place = { x: 2000, y: 50, width: 1000, height: 700, maximized: false, display: 2 };
  const area = { x: 2000, y: 50, width: 1000, height: 700 };

  test('are kept from start to start', async () => {
    await writePlace(inFolder('window.json'), place);
    expect(await readPlace(inFolder('window.json'))).toEqual(place);
    expect(placeInView([left, right], place)).toEqual(area);
  });

  test.each([
    'not JSON',
    '[]',
    'null',
    JSON.stringify({ ...place, x: 1e300 }),
    JSON.stringify({ ...place, width: -5 }),
    JSON.stringify({ ...place, width: 'wide' }),
    JSON.stringify({ ...place, maximized: 1 }),
    JSON.stringify({ ...place, webPreferences: { sandbox: false } }),
    `${JSON.stringify(place)}${' '.repeat(5_000)}`,
  ])('%s is taken for no place', async (text) => {
    writeFileSync(inFolder('window.json'), text);
    expect(await readPlace(inFolder('window.json'))).toBeNull();
  });

  test('come back into view where their display is gone, or they lie outside every display', () => {
    expect(placeInView([left], place)).toEqual({ ...area, x: 920 });
    expect(placeInView([left], { ...place, x: -90_000, y: 90_000 })).toEqual({ ...area, x: 0, y: 340 });
    expect(placeInView([left], { ...place, width: 50_000, height: 1 })).toEqual({
      x: 0,
      y: 50,
      width: 1920,
      height: 640,
    });
  });

  test('are the middle at first, and each further window stands off', () => {
    expect(placeInView([left, right], null)).toEqual({ x: 240, y: 70, width: 1440, height: 900 });
    expect(placeInView([left, right], null, 1)).toEqual({ x: 272, y: 102, width: 1440, height: 900 });
    const small: Display = { id: 3, workArea: { x: 0, y: 0, width: 800, height: 600 } };
    expect(placeInView([small], null)).toEqual({ x: 0, y: 0, width: 800, height: 600 });
  });
});

test('a budget is spent within its while, and full again after it', () => {
  let time = 0;
  const budget = createBudget(2, 100, () => time);
  expect([budget.spend(), budget.spend(), budget.spend()]).toEqual([true, true, false]);
  time = 100;
  expect(budget.spend()).toBe(true);
  budget.refill();
  expect([budget.spend(), budget.spend(), budget.spend()]).toEqual([true, true, false]);
});

describe('the work of a window', () => {
  const file = { handle: 'a', path: '/p/one.json' };
  const ok = (value: unknown) => ({ ok: true, value }) as const;

  test('is untouched until something else than the demo is shown, or an edit made', () => {
    const work = createWindowWork();
    work.heard('readStartProject', null, ok({ handle: null, path: null }));
    work.heard('setEdited', { edited: false }, ok(null));
    work.heard('openProject', null, ok(null));
    expect([work.untouched(), work.path(), work.edited()]).toEqual([true, null, false]);
    work.heard('setEdited', { edited: true }, ok(null));
    expect([work.untouched(), work.edited()]).toEqual([false, true]);
    work.pageGone();
    expect([work.untouched(), work.edited()]).toEqual([false, false]);
  });

  test('follows the file from opening to saving elsewhere to leaving', () => {
    const work = createWindowWork();
    work.heard('openRecent', null, ok(file));
    expect(work.path()).toBe('/p/one.json');
    work.heard('saveProjectAs', null, ok({ handle: 'b', path: '/p/two.json' }));
    work.heard('saveProjectAs', null, { ok: false, issues: [] });
    expect(work.path()).toBe('/p/two.json');
    work.heard('leaveFile', { handle: 'a' }, ok(null));
    expect(work.path()).toBe('/p/two.json');
    work.heard('leaveFile', { handle: 'b' }, ok(null));
    expect([work.path(), work.untouched()]).toEqual([null, false]);
  });

  test('takes the file that the window works on for the shown one, not one that it merely looks at', () => {
    const work = createWindowWork();
    work.heard('openRecent', null, ok(file));
    work.heard('readRecovery', { id: 'r' }, ok({ handle: 'k', path: '/p/kept.json' }));
    expect(work.path()).toBe('/p/one.json');
    work.heard('leaveFile', { handle: 'k' }, ok(null));
    expect(work.path()).toBe('/p/one.json');
    work.heard('writeJournal', { journal: 'j', entry: { handle: 'k' } }, ok(null));
    expect(work.path()).toBe('/p/kept.json');
    work.heard('lookAtFile', { handle: 'a' }, ok({ state: 'same' }));
    expect(work.path()).toBe('/p/one.json');
  });

  test('takes a file for refused that the window makes no call about', () => {
    let time = 0;
    const work = createWindowWork(() => time);
    work.heard('readStartProject', null, ok(file));
    time = 15_000;
    expect(work.path()).toBe('/p/one.json');
    time = 15_001;
    expect(work.path()).toBeNull();
    work.heard('lookAtFile', { handle: 'a' }, ok({ state: 'same' }));
    time = 100_000;
    expect(work.path()).toBe('/p/one.json');
  });

  test('knows its journal while there is one', () => {
    const work = createWindowWork();
    work.heard('writeJournal', { journal: 'j' }, ok(null));
    expect(work.journal()).toBe('j');
    work.heard('closeJournal', { journal: 'j' }, ok(null));
    expect(work.journal()).toBeNull();
  });
});

describe('the log', () => {
  test.each([
    ["ENOENT: no such file, open '/home/jo doe/My Files/a b.json'", "ENOENT: no such file, open 'a b.json'"],
    ['at read (/home/jo/x/main.cjs:12:3)', 'at read (main.cjs:12:3)'],
    ['at file:///home/jo/x/main.cjs:12:3', 'at main.cjs:12:3'],
    ['C:\\Users\\jo\\x.json is held', 'x.json is held'],
    ['\\\\server\\share\\jo\\x.json', 'x.json'],
    ['/home/jo', '~'],
    ['3 of 4 and 1/2 in', '3 of 4 and 1/2 in'],
    ['two\nlines', 'two | lines'],
  ])('writes %j as %j', (told, written) => expect(withoutPaths(told, '/home/jo')).toBe(written));

  test('keeps messages short, whatever was thrown', () => {
    expect(logText('x'.repeat(9_000)).length).toBeLessThan(2_100);
    expect(logText(new TypeError('no screw'))).toMatch(/^TypeError: no screw \| +at /);
    expect(logText({ toString: () => 'odd' })).toBe('odd');
  });

  test('is a file of bounded size with three older ones, and no noise from what is off', () => {
    const log = startLog({ folder, packed: true, level: 'error', maxSize: 2_000 });
    log.info('not written');
    for (let i = 0; i < 60; i += 1) log.error(`fault ${i} in ${inFolder('private/name.json')}${' x'.repeat(100)}`);
    const names = readdirSync(folder).sort();
    expect(names).toEqual(['augerwright.1.log', 'augerwright.2.log', 'augerwright.3.log', logName]);
    const texts = names.map((name) => readFileSync(inFolder(name), 'utf8'));
    expect(Math.max(...texts.map(({ length }) => length))).toBeLessThan(2_600);
    expect(texts.join('')).toContain('fault 59 in name.json');
    expect(texts.join('')).not.toMatch(/not written|private/);
    startLog({ folder, packed: true, level: 'off' }).error('silent');
    expect(readFileSync(inFolder(logName), 'utf8')).not.toContain('silent');
  });
});
