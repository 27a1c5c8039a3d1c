/**
 * Files, tables and typed texts from hands that mean no good: seeded cases over every reader of core, and the cases that
 * once broke one. `npm run fuzz` runs many more. HOSTILE_SEED chooses other cases.
 */

import { describe, expect, test } from 'vitest';
import { z } from 'zod';
import { benchContext } from '../../core/bench/csvTypes.ts';
import { readBenchCsv } from '../../core/bench/readBenchCsv.ts';
import { readOptionWords } from '../../core/handover/check.ts';
import { handoverModules } from '../../core/handover/registry.ts';
import { mostIssues } from '../../core/project/excess.ts';
import { parseProject } from '../../core/project/parse.ts';
import type { Project } from '../../core/project/schema.ts';
import { checkSchema } from '../../core/project/schemaIssues.ts';
import { channelCaseResults } from '../../core/reference/channelCases.ts';
import { readReference } from '../../core/reference/readReference.ts';
import { parseQuantity } from '../../core/units.ts';
import { assetText } from '../helpers/assets.ts';
import { assertTarget, busyMs } from '../helpers/hostile/assertTarget.ts';
import { projectTargets } from '../helpers/hostile/projectTargets.ts';
import { checkIssues } from '../helpers/hostile/sound.ts';
import { tableTargets } from '../helpers/hostile/tableTargets.ts';
import { changedDemo, codesOf, loadExample } from '../helpers/projects.ts';

/** Cases of each reader, and how many of them lie between two that are predicted. */
const cases: Readonly<Record<string, readonly [count: number, deepEvery: number]>> = {
  project: [110, 55],
  'project, numbers at their ends': [35, 35],
  'project of version 0': [60, 60],
  material: [140, 4],
  'table of trials': [110, 8],
  'table of viscosities': [150, 10],
  'typed quantity': [600, 1],
  'reference file': [140, 1],
  'pixels of a picture': [60, 1],
};

describe('hostile cases', () => {
  test.each([...projectTargets, ...tableTargets].map((target) => [target.name, target] as const))(
    '%s: refused with reasons, or sound',
    async (name, target) => {
      const [count, deepEvery] = cases[name];
      await assertTarget(target, count, deepEvery);
    },
  );
});

/** Text of the demo with anything done to its data. */
const demoText = (change: (project: Record<string, unknown>) => void): string => {
  const data = JSON.parse(assetText('examples/demo.json')) as Record<string, unknown>;
  change(data);
  return JSON.stringify(data);
};

/** Codes of a refusal whose issues are sound and whose reading took no two seconds. */
async function refusal(text: string): Promise<readonly string[]> {
  let codes: readonly string[] = [];
  const ms = await busyMs(() => {
    const result = parseProject(text);
    if (!result.ok) checkIssues(result.issues);
    codes = codesOf(result);
  });
  expect(ms).toBeLessThan(2000);
  return codes;
}

describe('files that once took minutes, or all memory', () => {
  test.each([
    ['a million empty lines', '\n'.repeat(1e6), ['bad-json']],
    ['a number of a million digits', `{"format":1${'0'.repeat(1e6)}}`, ['not-a-project']],
    ['a hundred thousand brackets', '['.repeat(1e5), ['too-deep']],
    ['six thousand keys', `{${Array.from({ length: 6000 }, (_, i) => `"k${i}":0`).join()}}`, ['too-much']],
    ['a key of three thousand letters, twice', `{${`"${'k'.repeat(3000)}":0,`.repeat(2)}"a":0}`, ['too-much']],
    ['two million values and more', `[${'0,'.repeat(2.1e6)}0]`, ['too-much']],
    ['more than 16 MB', ' '.repeat(17e6), ['too-large']],
  ])('%s', async (_, text, codes) => {
    expect(await refusal(text)).toEqual(codes);
  });

  test('a hundred thousand revisions, each the next one’s child', async () => {
    const revisions = Array.from({ length: 1e5 }, (_, i) => ({ id: `r${i}`, parent: `r${i + 1}` }));
    expect(await refusal(demoText((p) => Object.assign(p, { revisions })))).toContain('out-of-range');
  });

  test('a hundred thousand sections are refused for their number, not one by one', async () => {
    const text = demoText((p) => {
      const [{ screw }] = (p as unknown as Project).revisions;
      screw.sections = Array.from({ length: 1e5 }, () => ({ kind: 'plain' }) as never);
    });
    const result = parseProject(text);
    const issues = result.ok ? [] : result.issues;
    expect(issues.length).toBeLessThan(mostIssues);
    expect(issues[0]).toMatchObject({
      path: ['revisions', 0, 'screw', 'sections'],
      allowed: 'a list, at least 1 entry, at most 40 entries',
    });
  });

  test('more faults than a list can carry end in an issue, not in an exception', () => {
    const list = z.array(z.number());
    expect(
      codesOf(
        checkSchema(
          list,
          Array.from({ length: 2000 }, () => 'fast'),
        ),
      ),
    ).toHaveLength(mostIssues + 1);
    // what the schema does at some hundred thousand, which would take seconds here
    const overflowing = {
      safeParse: () => {
        throw new RangeError('Maximum call stack size exceeded');
      },
    } as unknown as z.ZodType;
    const checked = checkSchema(overflowing, {}, ['drive']);
    expect(checked).toMatchObject({ ok: false, issues: [{ code: 'too-many-faults', path: ['drive'] }] });
  });

  test('an id of a megabyte is not said in full', async () => {
    const id = 'x'.repeat(1e6);
    expect(await refusal(demoText((p) => Object.assign((p as unknown as Project).revisions[0], { id })))).toContain(
      'unknown-id',
    );
  });
});

describe('ways to write a file', () => {
  const demo = assetText('examples/demo.json');

  test('a byte order mark and either line break are read', () => {
    expect(codesOf(parseProject(`\uFEFF${demo}`))).toEqual([]);
    expect(codesOf(parseProject(demo.replaceAll('\n', '\r\n')))).toEqual([]);
  });

  test('two bytes a letter are refused for what they are', () => {
    expect(codesOf(parseProject(demo.slice(0, 99).replace(/[ -~]/g, '$&\0')))).toEqual(['not-text']);
  });

  test('a number beyond all computing is named where no schema knows it: saving would lose it', () => {
    const text = demo.replace('{', '{"mine": {"deep": [0, 1e999]},');
    expect(parseProject(text)).toMatchObject({
      ok: false,
      issues: [{ path: ['mine', 'deep', 1], code: 'out-of-range', allowed: 'a number from -1.8e308 to 1.8e308' }],
    });
  });

  test.each(['__proto__', 'constructor', 'prototype', '\\u005f_proto__'])(
    'the key %s is refused at any depth',
    (key) => {
      for (const text of [`{"${key}":{}}`, `[[{"a":{"${key}":1}}]]`])
        expect(codesOf(parseProject(text))).toEqual(['forbidden-key']);
    },
  );
});

describe('tables', () => {
  const context = benchContext(loadExample('demo'), 'A', '2026-01-01');
  const head = 'date;rpm;temperature;time (s);mass (g)\n';
  test.each([
    ['a cell with fifty thousand spaces', `${head}2026-02-12;10;175${' '.repeat(5e4)}x;120;8,1\n`],
    ['a million temperatures in one cell', `${head}2026-02-12;10;${'175/'.repeat(1e6)};120;8,1\n`],
    ['half a million quoted pieces', `${head}${'"a"'.repeat(5e5)}\n`],
    ['a million columns', `${';'.repeat(1e6)}\n${head}`],
    ['a hundred thousand lines', head + 'x;y\n'.repeat(1e5)],
  ])('%s', async (_, text) => {
    let shown = 0;
    const ms = await busyMs(() => {
      const read = readBenchCsv(text, context);
      shown = read.ok ? Math.max(...read.value.preview.map(({ cells }) => cells.length)) : 0;
      if (!read.ok) checkIssues(read.issues);
    });
    expect(ms).toBeLessThan(2000);
    expect(shown).toBeLessThanOrEqual(200);
  });

  test('a quotation mark is no separator, whatever the file says', () => {
    const read = readBenchCsv(`sep="\n${head}2026-02-12;10;175;120;8,1\n`, context);
    expect(read).toMatchObject({ ok: true, value: { delimiter: ';' } });
  });
});

describe('reference files', () => {
  const file = (change: (inputs: Record<string, unknown>) => void): string => {
    const inputs: Record<string, unknown> = {
      ...{ D_barrel_m: 0.008, D_root_m: 0.003, pitch_m: 0.008, flight_axial_width_m: 0.001, N_rev_per_s: 0.5 },
      material: { model: 'newtonian', eta: 1000 },
    };
    change(inputs);
    return JSON.stringify({ case: 'D', entries: [{ inputs, rows: [{ dpdz_axial_Pa_per_m: 0, Q_m3_per_s: 1e-8 }] }] });
  };

  test('an entry in order is read', () => expect(codesOf(readReference(file(() => undefined)))).toEqual([]));

  test.each([
    ['D_root_m', 0.0081, 'reference-size'],
    ['D_root_m', 0, 'reference-number'],
    ['pitch_m', 1e300, 'reference-number'],
    ['N_rev_per_s', '1', 'reference-number'],
    ['flight_axial_width_m', 0.02, 'reference-size'],
    ['starts', 1.5, 'reference-size'],
    ['material', { model: '__proto' }, 'reference-law'],
  ])('%s of %j is refused where it stands', (key, value, code) => {
    const result = readReference(file((inputs) => Object.assign(inputs, { [key]: value })));
    expect(result).toMatchObject({
      ok: false,
      issues: [{ code, path: ['entries', 0, 'inputs', key, ...(key === 'material' ? ['model'] : [])] }],
    });
    if (!result.ok) checkIssues(result.issues);
  });

  test('no case is looked up among what all objects have', () => {
    expect(channelCaseResults({ case: 'constructor', entries: [] })).toBeNull();
    expect(codesOf(readReference('{"case":"toString","entries":[{}]}'))).toEqual(['reference-file']);
  });
});

test('an option of the name of a prototype is refused by its name', () => {
  const [module] = handoverModules;
  expect(codesOf(readOptionWords(module, ['__proto__=1']))).toEqual(['handover-option-unknown']);
});

test.each(['1e400', '1/0', '0/0', 'Infinity', '٣ mm', '1e5e5 mm', '9'.repeat(79)])(
  'the quantity %s is a finite number or refused',
  (text) => {
    const read = parseQuantity(text, 'length');
    if (read.ok) expect(Number.isFinite(read.value)).toBe(true);
    else checkIssues(read.issues);
  },
);

test('a minus zero, the least number and the ends of whole numbers do no harm where a range lets them in', () => {
  const project = changedDemo((p) => Object.assign(p.process, { backPressureMPa: -0, ambientC: 5e-324 }));
  expect(codesOf(parseProject(JSON.stringify(project)))).toEqual([]);
  const text = assetText('examples/demo.json').replace('"starts": 1', '"starts": 9007199254740993');
  expect(codesOf(parseProject(text))).toContain('out-of-range');
});
