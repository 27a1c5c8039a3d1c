import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { main } from '../../electron/cli/main.ts';
import { readWords } from '../../electron/cli/options.ts';
import { predictAll } from '../../electron/cli/predictAll.ts';

const demo = 'assets/examples/demo.json';
let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'augerwright-cli-'));
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs a command line and collects what it wrote. */
async function run(...words: string[]) {
  const results: string[] = [];
  const problems: string[] = [];
  const output = {
    result: (text: string) => void results.push(text),
    problem: (text: string) => void problems.push(text),
  };
  const status = await main(words, output);
  return { status, results: results.join('\n'), problems };
}

/** A copy of the demo with something changed, written to a file. */
function changedDemo(name: string, change: (project: Record<string, never>) => void): string {
  const project = JSON.parse(readFileSync(demo, 'utf8'));
  change(project);
  const path = join(folder, name);
  writeFileSync(path, JSON.stringify(project));
  return path;
}

describe('words of a command line', () => {
  const shape = { usage: 'x', about: [], flags: ['json'], values: ['revision'], words: [1, 2] as const };

  test('options may stand anywhere and take their value after a space or an equals sign', () => {
    const expected = {
      ok: true,
      value: { bare: ['f'], flags: new Set(['json']), values: new Map([['revision', 'B']]), many: new Map() },
    };
    expect(readWords(shape, ['--revision', 'B', 'f', '--json'])).toEqual(expected);
    expect(readWords(shape, ['f', '--json', '--revision=B'])).toEqual(expected);
  });

  test.each([
    [['f', '--colour'], 'option-unknown'],
    [['f', '--json=yes'], 'option-unknown'],
    [['f', '--revision'], 'option-value'],
    [['f', '--revision='], 'option-value'],
    [['f', '--revision', 'A', '--revision=B'], 'option-repeated'],
    [['f', '-x'], 'option-unknown'],
    [[], 'word-count'],
    [['f', 'g', 'h'], 'word-count'],
  ])('%j is refused', (words, code) => {
    expect(readWords(shape, words)).toMatchObject({ ok: false, issues: [{ code }] });
  });
});

describe('bad input', () => {
  test.each([
    [['dance'], /no such command.*predict/i],
    [[], /Usage: npm run -s predict.*Usage: npm run -s compare.*Usage: npm run -s reference/s],
    [['predict', 'a.json', 'b.json'], /Allowed: exactly 1\./],
    [['predict'], /npm run -s predict -- FILE/],
    [['predict', demo, '--colour'], /no such option.*--json, --solved, --revision/i],
    [['predict', 'nowhere.json'], /nowhere\.json: There is no such file/],
    [['predict', 'assets'], /assets: This is a folder/],
    [['predict', demo, '--revision', 'Z'], /demo\.json: revision: .*no such revision.*Found: Z.*Allowed: A, B, C/],
    [['compare', demo, 'A'], /npm run -s compare/],
    [['compare', demo, 'A', 'B', 'A'], /named twice.*Found: A/],
    [['compare', demo, 'A', 'Z', 'Y'], /no such revision.*Found: Z/],
  ])('%j exits with 2 and says why', async (words, message) => {
    const { status, results, problems } = await run(...words);
    expect(status).toBe(2);
    expect(results).toBe('');
    expect(problems.join('\n')).toMatch(message);
  });

  test('each unknown revision has its own message', async () => {
    expect((await run('compare', demo, 'Y', 'Z')).problems).toHaveLength(2);
  });

  test('a file that is no project exits with 2', async () => {
    writeFileSync(join(folder, 'broken.json'), '{"format": "augerwright-project", ');
    writeFileSync(join(folder, 'other.json'), '[1, 2]');
    expect((await run('predict', join(folder, 'broken.json'))).status).toBe(2);
    expect((await run('predict', join(folder, 'other.json'))).status).toBe(2);
  });

  test('every wrong field is named in one run', async () => {
    const path = changedDemo('wrong.json', (project: Record<string, Record<string, unknown>>) => {
      project.process.screwSpeedRpm = -5;
      project.print.lineWidthMm = 'wide';
    });
    const { status, problems } = await run('predict', path);
    expect(status).toBe(2);
    expect(problems.join('\n')).toMatch(/process\.screwSpeedRpm/);
    expect(problems.join('\n')).toMatch(/print\.lineWidthMm/);
  });

  test('a wrong field does not hide a machine that cannot be, and every message names the file once', async () => {
    type Loose = { process: { screwSpeedRpm: number }; revisions: { barrel: { outerDiameterMm: number } }[] };
    const path = changedDemo('hidden.json', (project: unknown) => {
      const { process, revisions } = project as Loose;
      process.screwSpeedRpm = -1;
      for (const { barrel } of revisions) barrel.outerDiameterMm = 13;
    });
    const { status, problems } = await run('predict', path);
    expect(status).toBe(2);
    expect(problems).toHaveLength(4);
    for (const problem of problems) expect(problem.split(path)).toHaveLength(2);
    expect(problems.join('\n')).toMatch(/process\.screwSpeedRpm.*revisions\[2\]\.barrel\.outerDiameterMm/s);
  });

  test('a fault that revisions share is told once', async () => {
    const path = changedDemo('shares.json', (project: Record<string, Record<string, unknown>>) =>
      Object.assign(project.print ?? {}, { travelShare: 0.7, idleShare: 0.7 }),
    );
    expect((await run('compare', path, 'A', 'B')).problems).toHaveLength(1);
  });
});

describe('help', () => {
  test.each([['--help'], ['-h']])('%s prints every usage, and of a command its own, with status 0', async (word) => {
    const all = await run(word);
    expect(all).toMatchObject({ status: 0, problems: [] });
    for (const name of ['predict', 'compare', 'reference']) expect(all.results).toContain(`npm run -s ${name} --`);
    const one = await run('predict', demo, word);
    expect(one).toMatchObject({ status: 0, problems: [] });
    expect(one.results).toContain('--solved');
    expect(one.results).not.toContain('npm run -s compare');
  });
});

describe('several revisions', () => {
  const project = JSON.parse(readFileSync(demo, 'utf8'));
  const tasks = ['A', 'B', 'C'].map((revisionId) => ({ project, revisionId, fields: 'solved' as const }));
  const worker = (name: string, body: string) => {
    const path = join(folder, name);
    writeFileSync(path, `import { parentPort, threadId } from 'node:worker_threads';\n${body}`);
    return path;
  };

  test('are predicted on several threads and come back in order', async () => {
    const path = worker(
      'echo.mjs',
      `parentPort.on('message', ({ revisionId }) => setTimeout(
        () => parentPort.postMessage({ revisionId, threadId }), revisionId === 'A' ? 300 : 1));`,
    );
    const found = (await predictAll(tasks, path, 2)) as unknown as { revisionId: string; threadId: number }[];
    expect(found.map(({ revisionId }) => revisionId)).toEqual(['A', 'B', 'C']);
    expect(new Set(found.map(({ threadId }) => threadId)).size).toBe(2);
  });

  test('fail where a thread fails or ends', async () => {
    const throwing = worker('throwing.mjs', `parentPort.on('message', () => { throw new Error('lost'); });`);
    await expect(predictAll(tasks, throwing, 2)).rejects.toThrow('lost');
    const ending = worker('ending.mjs', `parentPort.on('message', () => process.exit(7));`);
    await expect(predictAll(tasks, ending, 2)).rejects.toThrow('status 7');
  });

  test('are predicted on this thread where there is no bundle', async () => {
    const quick = tasks.slice(0, 2).map((task) => ({ ...task, fields: 'formula' as const }));
    const found = await predictAll(quick, join(folder, 'missing.mjs'), 2);
    expect(found.map(({ revisionId }) => revisionId)).toEqual(['A', 'B']);
  });
});

describe('predict', () => {
  test('estimates from formulas unless solved fields are asked for, and says which', async () => {
    const solved = JSON.parse((await run('predict', demo, '--json', '--solved')).results);
    const quick = JSON.parse((await run('predict', demo, '--json')).results);
    expect([solved.fields, quick.fields]).toEqual(['solved', 'formula']);
    expect(solved.dead.spots.length).toBeGreaterThan(0);
    expect(solved.output.volumeFlow_mm3_s).not.toBe(quick.output.volumeFlow_mm3_s);
    const table = (await run('predict', demo)).results;
    expect(table).toMatch(/corners, tip and nozzle are not looked into/);
    expect(table).toContain('Add --solved');
  }, 60_000);

  test('prints the contract of the JSON output', async () => {
    const { status, results, problems } = await run('predict', demo, '--revision', 'A', '--json');
    expect(problems).toEqual([]);
    expect(status).toBe(0);
    expect(JSON.parse(results)).toMatchObject({
      revision: 'A',
      limit: expect.any(String),
      output: {
        volumeFlow_mm3_s: expect.any(Number),
        massFlow_g_min: expect.any(Number),
        screwSpeed_rpm: expect.any(Number),
      },
      pressure: { head_MPa: expect.any(Number) },
      torque_Nm: expect.any(Number),
      power_W: expect.any(Number),
      residence: {
        mean_s: expect.any(Number),
        min_s: expect.any(Number),
        t50_s: expect.any(Number),
        t95_s: expect.any(Number),
        t99_s: expect.any(Number),
      },
      dead: { fractionOver3: expect.any(Number), fractionOver5: expect.any(Number), spots: expect.any(Array) },
      colour: { dE00_mean: expect.anything(), dE00_worst: expect.anything(), srgb: expect.anything() },
      print: { demand_mm3_s: expect.any(Number), margin: expect.any(Number), stepsPerMm3: expect.any(Number) },
      findings: expect.any(Array),
    });
  });

  test('takes the active revision and prints a table without --json', async () => {
    const { status, results } = await run('predict', demo);
    expect(status).toBe(0);
    expect(results.split('\n').length).toBeGreaterThan(5);
  });
});

test('compare sets the revisions side by side', async () => {
  const { status, results } = await run('compare', demo, 'A', 'B', 'C');
  expect(status).toBe(0);
  for (const id of ['A', 'B', 'C']) expect(results).toMatch(new RegExp(`\\b${id}\\b`));
  expect((await run('compare', demo, 'A', 'B', '--json')).status).toBe(0);
});
