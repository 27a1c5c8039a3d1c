import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { main } from '../../electron/cli/main.ts';
import { type SweepThread, shareOut } from '../../electron/cli/sweepAll.ts';
import { readAxis, takeAxes } from '../../electron/cli/sweepAxes.ts';

const demo = 'assets/examples/demo.json';
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'augerwright-sweep-'));
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs a sweep and collects what it wrote. */
async function sweep(...words: string[]) {
  const results: string[] = [];
  const problems: string[] = [];
  const output = {
    result: (text: string) => void results.push(text),
    problem: (text: string) => void problems.push(text),
  };
  const status = await main(['sweep', ...words], output);
  return { status, results: results.join('\n'), problems };
}

test('axes are typed with a space or an equals sign, evenly or in even ratios', () => {
  expect(takeAxes(['f', '--vary', 'a=1:2:3', '--json', '--vary=b=1:2:3', '--vary'])).toEqual({
    texts: ['a=1:2:3', 'b=1:2:3'],
    rest: ['f', '--json', '--vary'],
  });
  const axis = { input: 'screw.sections[1].lengthMm', from: 1, to: 2.5, steps: 4 };
  expect(readAxis('screw.sections[1].lengthMm=1:2.5:4')).toEqual({ ok: true, value: { ...axis, scale: 'linear' } });
  expect(readAxis('screw.sections[1].lengthMm=1:2.5:4:log')).toEqual({ ok: true, value: { ...axis, scale: 'log' } });
});

describe('bad input exits with 2, says what and where, and computes nothing', () => {
  const speed = 'process.screwSpeedRpm=5:20:2';
  test.each([
    [[demo, '--json'], /varies one or two inputs.*--vary PATH=FROM:TO:STEPS/],
    [[demo, '--vary', speed], /Nothing says where the result goes.*--out/],
    [[demo, '--json', '--vary'], /--vary needs a value/],
    [[demo, '--json', '--vary', 'speed'], /--vary: .*not typed in full.*Found: speed/],
    [[demo, '--json', '--vary', 'a=1:b:2'], /"b" is not a number/],
    [[demo, '--json', '--vary', 'a=1:2:3:cubic'], /no such way of stepping/],
    [[demo, '--json', '--vary', 'screw.speedRpm=1:2:3'], /screw\.speedRpm: .*no number of this name.*such as/],
    [[demo, '--json', '--vary', 'process.screwSpeedRpm=5:9000:3'], /Found: 9000.*Allowed: 0\.01 to 3000 rpm/],
    [[demo, '--json', '--vary', speed, '--revision', 'Z'], /no such revision.*Found: Z/],
    [
      [demo, '--vary', speed, '--out', 'no/such/folder.csv'],
      /no\/such\/folder\.csv: The folder to write into does not exist/,
    ],
    [['nowhere.json', '--json', '--vary', speed], /nowhere\.json: There is no such file/],
  ])('%j', async (words, message) => {
    const { status, results, problems } = await sweep(...words);
    expect(status).toBe(2);
    expect(results).toBe('');
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatch(message);
  });
});

test('a table has a row for every design, units in its heads, and the reason of what cannot be made', async () => {
  const out = join(folder, 'roots.csv');
  const { status, results, problems } = await sweep(demo, '--vary', 'joint.meteringRoot=9.4:13.4:2', '--out', out);
  expect(status).toBe(0);
  expect(results).toMatch(/^2 designs written to .*roots\.csv; /);
  expect(problems.at(-1)).toBe('2 of 2 designs');
  const [head = '', first = '', second = '', ...rest] = readFileSync(out, 'utf8').split('\n');
  expect(rest).toEqual(['']);
  expect(head).toMatch(/^joint\.meteringRoot \[mm\],Melt output \[mm³\/s\],Supply over demand,/);
  expect(head).toMatch(/Limited by,Fields,Why there is nothing$/);
  expect(first).toMatch(/^9\.4,\d+\.\d+,.*,estimate by formulas,$/);
  // the fillet of 1.2 mm does not fit a channel of 0.2 mm
  expect(second).toMatch(/^13\.4,,,.*estimate by formulas,"?.*fillet/);
});

test('two inputs come out as rows of pairs, as JSON too', async () => {
  const axes = ['--vary', 'process.screwSpeedRpm=8:10:2', '--vary', 'joint.lead=14:15:2'];
  const { status, results } = await sweep(demo, ...axes, '--json', '--revision', 'C');
  expect(status).toBe(0);
  const found = JSON.parse(results);
  expect(found).toMatchObject({
    revision: 'C',
    inputs: [
      { unit: 'rpm', now: 10 },
      { unit: 'mm', now: 14 },
    ],
  });
  expect(found.designs.map(({ values }: { values: number[] }) => values)).toEqual([
    [8, 14],
    [10, 14],
    [8, 15],
    [10, 15],
  ]);
  expect(found.designs[1].figures.volumeFlow).toBeGreaterThan(found.designs[0].figures.volumeFlow);
  expect(found.designs[0].hole).toBeNull();
});

test('one thread that fails stops the others, and all are ended', async () => {
  let asked = 0;
  let ended = 0;
  const thread = (fails: boolean): SweepThread => ({
    ask: async ({ index, changes }) => {
      asked++;
      await new Promise((wake) => setTimeout(wake, fails ? 1 : 5));
      if (fails) throw new Error('out of memory');
      const none = { figures: {}, findings: null, limit: null, hole: 'invented', fields: 'formula' } as const;
      return { index, design: { changes, ...none } };
    },
    end: async () => void ended++,
  });
  const candidates = Array.from({ length: 20 }, () => []);
  const heard: number[] = [];
  const work = shareOut(candidates, [thread(false), thread(true)], (count) => void heard.push(count));
  await expect(work).rejects.toThrow('out of memory');
  await new Promise((wake) => setTimeout(wake, 30));
  expect([asked, ended, heard]).toEqual([2, 2, []]);
  const all = await shareOut(candidates, [thread(false), thread(false)], () => undefined);
  expect(all).toHaveLength(20);
});
