import { execFileSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, describe, expect, test } from 'vitest';
import { endOfSave } from '../endOfSave.ts';
import { issueIn, one, opened, scratch, valueIn } from '../keepHelp.ts';

const place = scratch();

describe('a fault at every call of a save in turn', () => {
  test.each(['EIO', 'ENOSPC', 'EACCES', 'EROFS', 'EBUSY', 'EMFILE'])(
    '%s leaves the old file whole, says so, and no litter',
    async (code) => {
      const ends = { failed: 0, passed: 0 };
      for (let i = 0; ; i += 1) {
        const end = await endOfSave(place, (_call, index) => (index === i ? code : null));
        if (end === 'never') break;
        ends[end] += 1;
      }
      // permissions, locks and previous versions are given up before the save is; the rest stops it
      expect(ends.failed).toBeGreaterThan(8);
      expect(ends.passed).toBeGreaterThan(5);
    },
  );

  test('from which on the drive is lost for good leaves the old file whole, or the new one', async () => {
    for (let i = 0; ; i += 1) {
      const end = await endOfSave(place, (_call, index) => (index >= i ? 'EIO' : null), true);
      if (end === 'never') break;
    }
  });
});

/** A drive of 256 KiB in memory; false where the system lets nobody mount one. */
function mounted(folder: string): boolean {
  mkdirSync(folder, { recursive: true });
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', 'size=256k', 'tmpfs', folder], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
}

describe('a real small drive', () => {
  let drive = '';
  afterEach(() => {
    if (drive) execFileSync('umount', ['-l', drive], { stdio: 'ignore' });
    drive = '';
  });
  const project = (kib: number, word: string) => JSON.stringify({ word, pad: 'x'.repeat(kib * 1024) });

  test('that is full keeps the old file, says so, and takes the save once there is room', async (context) => {
    if (!mounted(place.at('drive'))) return context.skip();
    drive = place.at('drive');
    const file = join(drive, 'mine.json');
    writeFileSync(file, project(60, 'old'));
    writeFileSync(join(drive, 'ballast'), Buffer.alloc(100 * 1024));
    const { save, version } = await opened(place.host(), 'w', file);
    const large = await save(project(120, 'new'));
    expect(issueIn(large)).toMatchObject({ code: 'file-enospc', message: expect.stringContaining('drive is full') });
    expect(readFileSync(file, 'utf8')).toBe(project(60, 'old'));
    expect(readdirSync(drive).sort()).toEqual(['.mine.json.lock', 'ballast', 'mine.json']);
    rmSync(join(drive, 'ballast'));
    valueIn(await save(project(120, 'new'), { version }));
    expect(readFileSync(file, 'utf8')).toBe(project(120, 'new'));
  });

  test('that is full under the journal: said once, what is kept stays, and keeping goes on once there is room', async (context) => {
    if (!mounted(place.at('drive'))) return context.skip();
    drive = place.at('drive');
    const services = place.host({ stateFolder: join(drive, 'state') });
    const api = services.apiFor('w');
    const entry = (kib: number, step: string) => ({
      journal: one,
      entry: { handle: null, name: 'new', text: project(kib, step), step, drafts: {} },
    });
    valueIn(await api.writeJournal(entry(10, 'first')));
    writeFileSync(join(drive, 'ballast'), Buffer.alloc(200 * 1024));
    expect(issueIn(await api.writeJournal(entry(90, 'second'))).code).toBe('journal-unwritable');
    valueIn(await api.writeJournal(entry(90, 'third')));
    expect(valueIn(await api.readRecovery({ id: one }))).toMatchObject({ text: project(10, 'first'), edits: 1 });
    rmSync(join(drive, 'ballast'));
    valueIn(await api.writeJournal(entry(20, 'fourth')));
    expect(valueIn(await api.readRecovery({ id: one }))).toMatchObject({ text: project(20, 'fourth'), edits: 2 });
    await services.close();
  });

  test('that is read-only opens its files without a lock, and refuses the save in words', async (context) => {
    if (!mounted(place.at('drive'))) return context.skip();
    drive = place.at('drive');
    const file = join(drive, 'mine.json');
    writeFileSync(file, project(1, 'old'));
    execFileSync('mount', ['-o', 'remount,ro', drive]);
    const { save, holder } = await opened(place.host(), 'w', file);
    expect(holder).toBeNull();
    expect(issueIn(await save(project(1, 'new')))).toMatchObject({
      code: 'file-erofs',
      message: expect.stringContaining('read-only'),
    });
    expect(readFileSync(file, 'utf8')).toBe(project(1, 'old'));
  });
});
