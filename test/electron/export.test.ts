import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { dayText } from '../../core/project/dayText.ts';
import { exportCommandOver } from '../../electron/cli/export.ts';
import { main } from '../../electron/cli/main.ts';
import { checkOut, writeOut } from '../../electron/services/writeOut.ts';

const demo = 'assets/examples/demo.json';
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'augerwright-export-'));
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

function listener() {
  const results: string[] = [];
  const problems: string[] = [];
  const result = (text: string) => void results.push(text);
  const problem = (text: string) => void problems.push(text);
  return { results, problems, output: { result, problem } };
}

async function run(...words: string[]) {
  const { results, problems, output } = listener();
  const status = await main(['export', ...words], output);
  return { status, results: results.join('\n'), problems: problems.join('\n') };
}

const quick = ['--option', 'part=nozzle', '--option', 'tolerance=0.5'];

describe('headless export', () => {
  test('writes the file with its facts and ends with 0', async () => {
    const out = join(folder, 'nozzle.stl');
    const { status, results } = await run(demo, '--to', 'stl', '--out', out, ...quick);
    expect(status).toBe(0);
    expect(results).toContain(out);
    expect(results).toMatch(/triangles: \d+/);
    expect(readFileSync(out).subarray(0, 7).toString()).toBe('unit mm');
  });

  test('several files get names of their own, in a folder or beside the name given', async () => {
    const pins = ['--option', 'split=lengthwise', '--option', 'pinDiameter=0'];
    const into = `${join(folder, 'parts')}/`;
    const { status, results } = await run(
      demo,
      '--to',
      'svg',
      '--out',
      `${folder}/`,
      '--option',
      'part=nozzle',
      '--option',
      'size=A4',
    );
    expect([status, results.match(/Scale of main views/g)?.length]).toEqual([0, 1]);
    expect((await run(demo, '--to', 'stl', '--out', into, ...quick, ...pins)).status).toBe(0);
    expect(readdirSync(into).every((name) => /nozzle-half-[12]\.stl$/.test(name))).toBe(true);
    expect((await run(demo, '--to', 'stl', '--out', join(folder, 'n.stl'), ...quick, ...pins)).status).toBe(0);
    expect(readdirSync(folder).filter((name) => /^n-[12]\.stl$/.test(name))).toHaveLength(2);
  });

  test('lists every kind with its options', async () => {
    const { status, results } = await run('--list');
    expect(status).toBe(0);
    for (const id of ['stl', '3mf']) expect(results).toMatch(new RegExp(`^${id} {2}`, 'm'));
    expect(results).toContain('--option tolerance=0.02');
  });

  test.each([
    [['--to', 'stl', '--out', 'x'], 'project file'],
    [[demo, '--out', 'x'], 'stl, '],
    [[demo, '--to', 'clay', '--out', 'x'], 'clay'],
    [[demo, '--to', 'stl'], '--out'],
    [[demo, '--to', 'stl', '--out', 'x', '--option', 'tolerance=9'], 'stl.tolerance'],
    [[demo, '--to', 'stl', '--out', 'x', '--option', 'tolerance'], 'name=value'],
    [[demo, '--to', 'stl', '--out', 'x', '--option', 'colour=red'], 'stl.colour'],
    [[demo, '--to', 'stl', '--out', 'x', '--revision', 'Q'], 'Q'],
    [[demo, '--to', 'stl', '--out', 'x', '--revision', 'A,B'], 'one revision'],
    [['missing.json', '--to', 'stl', '--out', 'x'], 'missing.json'],
  ])('bad input %j ends with 2 and is named', async (words, named) => {
    const { status, problems } = await run(...words);
    expect(status).toBe(2);
    expect(problems).toContain(named);
  });

  test('an invalid design ends with 2 and names the field', async () => {
    const project = JSON.parse(readFileSync(demo, 'utf8'));
    for (const revision of project.revisions) revision.screw.radialClearanceMm = 40;
    const path = join(folder, 'bad.json');
    writeFileSync(path, JSON.stringify(project));
    const { status, problems } = await run(path, '--to', 'stl', '--out', join(folder, 'bad.stl'), ...quick);
    expect(status).toBe(2);
    expect(problems).toMatch(/learance/);
  });

  test('a missing folder ends with 1, names path and cause, and writes nothing', async () => {
    const out = join(folder, 'nowhere', 'deep', 'x.stl');
    const { status, problems } = await run(demo, '--to', 'stl', '--out', out, ...quick);
    expect(status).toBe(1);
    expect(problems).toContain(out);
    expect(problems).toContain('folder');
  });

  test('a full disk leaves the file that was there whole and ends with 1', async () => {
    const out = join(folder, 'kept.stl');
    writeFileSync(out, 'the old one');
    const full = exportCommandOver(async (path) => ({
      ok: false,
      issues: [{ path: [path], code: 'file-enospc', message: 'The disk is full.', remedy: 'Free some space.' }],
    }));
    const { problems, output } = listener();
    expect(await full.run([demo, '--to', 'stl', '--out', out, ...quick], output, null)).toBe(1);
    expect(problems.join()).toContain('disk is full');
    expect(readFileSync(out, 'utf8')).toBe('the old one');
  });
});

// a prediction takes longer than the test may
test.runIf(existsSync('/proc/self'))(
  'a place that takes no files is told by path and cause, before predicting',
  async () => {
    const { status, problems } = await run(demo, '--to', 'controller', '--out', '/proc/x.csv');
    expect(status).toBe(1);
    expect(problems).toContain('/proc/x.csv');
    expect(problems).toMatch(/into the folder \/proc: .*ENOENT/);
    expect(problems).not.toContain('no such file');
  },
  4000,
);

test('looking at a place leaves nothing there, and finds a file in the way', async () => {
  const inside = join(folder, 'looked');
  mkdirSync(inside);
  expect(await checkOut(inside)).toMatchObject({ ok: true });
  expect(await checkOut(join(inside, 'new.csv'))).toMatchObject({ ok: true });
  expect(await checkOut(`${join(inside, 'new')}/`)).toMatchObject({ ok: true });
  expect(readdirSync(inside)).toEqual([]);
  writeFileSync(join(inside, 'a.txt'), 'a file');
  const way = join(inside, 'a.txt', 'x.csv');
  expect(await checkOut(way)).toMatchObject({ ok: false, issues: [{ path: [way], code: 'file-enotdir' }] });
});

test('a failure at a later file names those that were written', async () => {
  const files = ['one.stl', 'two.stl', 'three.stl'].map((name) => ({ name, bytes: new Uint8Array(1) }));
  const inside = join(folder, 'some');
  mkdirSync(inside);
  const issue = { path: ['two'], code: 'file-enospc', message: 'The disk is full.', remedy: 'Free some space.' };
  const written = await writeOut(inside, files, async (path) =>
    path.endsWith('two.stl') ? { ok: false, issues: [issue] } : { ok: true, value: null },
  );
  const message = written.ok ? '' : (written.issues[0]?.message ?? '');
  expect(message).toContain(`Written before it: ${join(inside, 'one.stl')}.`);
  expect(message).not.toContain('three');
});

test('the day of issue is the local one', () => {
  const zone = process.env.TZ;
  try {
    process.env.TZ = 'Pacific/Auckland';
    expect(dayText(new Date('2026-03-04T20:00:00Z'))).toBe('2026-03-05');
    process.env.TZ = 'America/Los_Angeles';
    expect(dayText(new Date('2026-03-04T03:00:00Z'))).toBe('2026-03-03');
  } finally {
    process.env.TZ = zone;
  }
});

test('a write that fails leaves neither a half file nor leavings beside it', async () => {
  const inside = join(folder, 'taken');
  mkdirSync(join(inside, 'x.stl', 'full'), { recursive: true });
  // a folder of that name with something in it cannot be replaced by a file
  const written = await writeOut(inside, [{ name: 'x.stl', bytes: new Uint8Array(9) }]);
  expect(written).toMatchObject({ ok: false, issues: [{ path: [join(inside, 'x.stl')] }] });
  expect(readdirSync(inside)).toEqual(['x.stl']);
});
