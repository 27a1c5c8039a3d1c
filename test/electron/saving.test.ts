import { execFileSync } from 'node:child_process';
import { chmodSync, linkSync, mkdirSync, readlinkSync, renameSync, rmSync, statSync, symlinkSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { replaceFile } from '../../electron/services/keep/replaceFile.ts';
import { endOfSave, fresh, old } from './endOfSave.ts';
import { faultyDisk, type Plan } from './faultyDisk.ts';
import { issueIn, opened, scratch, valueIn } from './keepHelp.ts';

const place = scratch();
const { at, host, names, put, read } = place;

describe('a save', () => {
  test('flushes the bytes before they take the place of the old ones, and the folder after', async () => {
    put('mine.json', old);
    const { disk, calls } = faultyDisk();
    const { save } = await opened(host({ disk }), 'w', at('mine.json'));
    calls.length = 0;
    valueIn(await save(fresh));
    const where = (name: string, ending: string) => calls.findIndex((c) => c.name === name && c.path.endsWith(ending));
    const order = [
      where('file.write', '.new'),
      where('file.sync', '.new'),
      where('file.close', '.new'),
      where('rename', '.new'),
      calls.findIndex((c, i) => i > where('rename', '.new') && c.name === 'file.sync' && c.path === at('')),
    ];
    expect(order.every((place) => place >= 0)).toBe(true);
    expect([...order].sort((a, b) => a - b)).toEqual(order);
    expect(read('mine.json')).toBe(fresh);
    expect(names()).toEqual(['.mine.json.lock', '.mine.json.previous', 'mine.json']);
  });

  test('keeps permissions and the link that was opened, and what another name of the old bytes holds', async () => {
    mkdirSync(at('far'));
    put('far/mine.json', old);
    chmodSync(at('far/mine.json'), 0o640);
    symlinkSync('far/mine.json', at('link.json'));
    linkSync(at('far/mine.json'), at('copy.json'));
    const { save } = await opened(host(), 'w', at('link.json'));
    valueIn(await save(fresh));
    expect(readlinkSync(at('link.json'))).toBe('far/mine.json');
    expect(read('far/mine.json')).toBe(fresh);
    expect(statSync(at('far/mine.json')).mode & 0o777).toBe(0o640);
    expect(read('copy.json')).toBe(old);
  });

  test('goes on until a drive that takes few bytes at a time has taken all', async () => {
    put('mine.json', old);
    const { disk, calls } = faultyDisk(({ name, path }) =>
      name === 'file.write' && path.endsWith('.new') ? 700 : null,
    );
    valueIn(await (await opened(host({ disk }), 'w', at('mine.json'))).save(fresh));
    expect(read('mine.json')).toBe(fresh);
    expect(calls.filter(({ name }) => name === 'file.write').length).toBeGreaterThan(5);
  });

  test('makes a deleted file anew; says which folder is gone, and that nothing in the window is', async () => {
    mkdirSync(at('far'));
    put('far/mine.json', old);
    const { save, version, api, handle } = await opened(host(), 'w', at('far/mine.json'));
    rmSync(at('far/mine.json'));
    expect(valueIn(await api.lookAtFile({ handle, version }))).toEqual({ state: 'gone', version: null, holder: null });
    valueIn(await save(fresh));
    expect(read('far/mine.json')).toBe(fresh);
    renameSync(at('far'), at('away'));
    const { code, message } = issueIn(await save('{}'));
    expect(code).toBe('file-folder-gone');
    expect(message).toContain(at('far'));
    expect(message).toContain('still in the window');
    expect(valueIn(await api.lookAtFile({ handle, version })).state).toBe('unreachable');
  });

  test('writes the last of several asked for at once, each whole', async () => {
    put('mine.json', old);
    const { save } = await opened(host(), 'w', at('mine.json'));
    const all = await Promise.all(['{"n":1}', '{"n":2}', '{"n":3}'].map((text) => save(text)));
    expect(all.map(({ ok }) => ok)).toEqual([true, true, true]);
    expect(read('mine.json')).toBe('{"n":3}');
  });
});

describe('somebody else', () => {
  test('who changed the file is not written over, unless that is asked for', async () => {
    put('mine.json', old);
    const { save, version, api, handle } = await opened(host(), 'w', at('mine.json'));
    put('mine.json', '{"now":"theirs"}');
    expect(valueIn(await api.lookAtFile({ handle, version })).state).toBe('changed');
    expect(issueIn(await save(fresh)).code).toBe('file-changed-outside');
    expect(read('mine.json')).toBe('{"now":"theirs"}');
    valueIn(await save(fresh, { evenIfChanged: true }));
    expect(read('mine.json')).toBe(fresh);
    expect(valueIn(await api.openPrevious({ handle })).text).toBe('{"now":"theirs"}');
  });

  test('is no surprise where the window only read the file again without taking it in', async () => {
    put('mine.json', old);
    const services = host();
    const { save } = await opened(services, 'w', at('mine.json'));
    put('mine.json', '{"now":"theirs"}');
    await opened(services, 'w', at('mine.json'));
    expect(issueIn(await save(fresh)).code).toBe('file-changed-outside');
  });

  test('who changes it at the last moment is not written over', async () => {
    put('mine.json', old);
    const late: Plan = ({ name, path }) => {
      if (name === 'file.sync' && path.endsWith('.new')) put('mine.json', '{"now":"late"}');
      return null;
    };
    const { save } = await opened(host(faultyDisk(late)), 'w', at('mine.json'));
    expect(issueIn(await save(fresh)).code).toBe('file-changed-outside');
    expect(read('mine.json')).toBe('{"now":"late"}');
    expect(names()).toEqual(['.mine.json.lock', 'mine.json']);
  });

  test('is not seen in a save of our own whose answer never came', async () => {
    put('mine.json', old);
    const { save } = await opened(host(), 'w', at('mine.json'));
    valueIn(await save(fresh));
    valueIn(await save('{"now":"newer"}'));
    expect(read('mine.json')).toBe('{"now":"newer"}');
  });
});

test('a drive that does not confirm a save is told of; the file is no stranger’s then', async () => {
  put('mine.json', old);
  let folders = 0;
  const plan: Plan = ({ name, path }) => (name === 'file.sync' && path === at('') && folders++ === 0 ? 'EIO' : null);
  const { save, api, handle, version } = await opened(host(faultyDisk(plan)), 'w', at('mine.json'));
  expect(issueIn(await save(fresh)).code).toBe('file-not-confirmed');
  expect(valueIn(await api.lookAtFile({ handle, version })).state).toBe('same');
  valueIn(await save(fresh));
});

test('the version before the latest save is kept hidden beside, and opened without a handle', async () => {
  put('mine.json', old);
  const { save, api, handle } = await opened(host(), 'w', at('mine.json'));
  expect(issueIn(await api.openPrevious({ handle })).code).toBe('file-no-previous');
  valueIn(await save(fresh));
  // the same again is no new version
  valueIn(await save(fresh));
  expect(valueIn(await api.openPrevious({ handle }))).toMatchObject({ handle: null, name: 'mine.json', text: old });
});

test.each(['EPERM', 'ENOTSUP', 'EMLINK'])(
  'a drive without second names (%s) gets a copy as the previous one',
  async (code) => {
    put('mine.json', old);
    const plan: Plan = ({ name }) => (name === 'link' ? code : null);
    const { save, api, handle } = await opened(host(faultyDisk(plan)), 'w', at('mine.json'));
    valueIn(await save(fresh));
    expect(valueIn(await api.openPrevious({ handle })).text).toBe(old);
    expect(names()).toEqual(['.mine.json.lock', '.mine.json.previous', 'mine.json']);
  },
);

// every call in turn, with every fault: test/electron/long/faults.test.ts
test('a fault at every third call of a save leaves the old file whole, says so, and no litter', async () => {
  const ends = { failed: 0, passed: 0 };
  for (let i = 0; ; i += 3) {
    const end = await endOfSave(place, (_call, index) => (index === i ? (['EIO', 'ENOSPC'][i % 2] ?? null) : null));
    if (end === 'never') break;
    ends[end] += 1;
  }
  // permissions, locks and previous versions are given up before the save is; the rest stops it
  expect(ends.failed).toBeGreaterThan(2);
  expect(ends.passed).toBeGreaterThan(2);
});

test('a file that nobody may write is not replaced behind its back', async () => {
  put('mine.json', old);
  chmodSync(at('mine.json'), 0o444);
  const { save } = await opened(host(), 'w', at('mine.json'));
  expect(issueIn(await save(fresh))).toMatchObject({
    code: 'file-eacces',
    message: expect.stringMatching(/may not write/),
  });
  expect(read('mine.json')).toBe(old);
  chmodSync(at('mine.json'), 0o644);
  valueIn(await save(fresh));
});

test('another program that holds the file for a moment is waited for where the system needs that', async () => {
  put('mine.json', old);
  let refusals = 2;
  const { disk } = faultyDisk(({ name }) => (name === 'rename' && refusals-- > 0 ? 'EBUSY' : null));
  await replaceFile(at('mine.json'), fresh, { disk, patience: 3 });
  expect(read('mine.json')).toBe(fresh);
  refusals = 2;
  await expect(replaceFile(at('mine.json'), old, { disk, patience: 1 })).rejects.toThrow('EBUSY');
  expect(names()).toEqual(['mine.json']);
});

test.runIf(process.platform !== 'win32')('a pipe, which might never end, is not opened', async () => {
  execFileSync('mkfifo', [at('pipe.json')]);
  expect(issueIn(await host().open('w', at('pipe.json'))).code).toBe('file-not-plain');
});

test.each([
  ['EIO', /drive failed/],
  ['ENOSPC', /drive is full/],
  ['EDQUOT', /share of the drive/],
  ['EACCES', /may not write/],
  ['EPERM', /does not permit/],
  ['EROFS', /read-only/],
  ['EBUSY', /another program holds/],
  ['EMFILE', /too many files/],
  ['ENAMETOOLONG', /too long/],
  ['ELOOP', /circle/],
  ['ESTALE', /drive is not connected/],
  ['EWEIRD', /refused \(EWEIRD\)/],
])('%s is told in words', async (code, words) => {
  put('mine.json', old);
  const plan: Plan = ({ name, path }) => (name === 'open' && path.endsWith('.new') ? code : null);
  const saved = await (await opened(host(faultyDisk(plan)), 'w', at('mine.json'))).save(fresh);
  const issue = saved.ok ? null : saved.issues[0];
  expect(issue?.message).toMatch(words);
  expect(issue?.message).toContain('Your work is still in the window.');
  expect(issue?.path).toEqual([at('mine.json')]);
  expect(issue?.remedy).toMatch(/save|Save/);
});
