import { strFromU8, unzipSync } from 'fflate';
import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { csvModule, dataModule, jsonModule } from '../../../core/handover/data/dataModules.ts';
import { runHandover } from '../../../core/handover/run.ts';
import type { HandoverModule } from '../../../core/handover/types.ts';
import { fromSi } from '../../../core/units.ts';
import { expectOk } from '../../helpers/projects.ts';
import { predictedSource } from './source.ts';
import { solidTools } from './tools.ts';

function read(text: string, delimiter = ','): string[][] {
  const rows: string[][] = [];
  Papa.parse(text.trimEnd(), { delimiter, step: ({ data }) => rows.push([...data]) });
  return rows;
}

async function written(module: HandoverModule, values: Record<string, unknown> = {}, revisions = ['B']) {
  const [file] = expectOk(await runHandover(module, await predictedSource('demo', revisions), values, solidTools));
  return file?.bytes ?? new Uint8Array();
}

const prediction = async () => (await predictedSource('demo', ['B'])).subjects[0]?.prediction;

describe('CSV', () => {
  test('holds one table in display units, with a unit in every heading that needs one', async () => {
    const text = strFromU8(await written(csvModule, { table: 'over-speed' })).replace('\ufeff', '');
    const [heading = [], ...rows] = read(text);
    const curve = (await prediction())?.curve;
    expect(heading[0]).toBe('Screw speed (rpm)');
    expect(rows).toHaveLength(curve?.screwSpeed.length ?? -1);
    expect(Number(rows[3]?.[0])).toBeCloseTo(fromSi(curve?.screwSpeed[3] ?? 0, 'rpm'), 4);
    expect(Number(rows[3]?.[1])).toBeCloseTo(fromSi(curve?.volumeFlow[3] ?? 0, 'mm³/s'), 4);
    expect(text).not.toMatch(/NaN|Infinity|undefined/);
  });

  test('writes decimal commas with semicolons', async () => {
    const text = strFromU8(await written(csvModule, { table: 'residence', decimal: 'comma' }));
    const rows = read(text.replace('\ufeff', ''), ';');
    expect(rows.every((row) => row.length === 3)).toBe(true);
    expect(rows.some((row) => /^\d+,\d+$/.test(row[1] ?? ''))).toBe(true);
  });

  test('stacks all tables, the comparison first where there are two revisions', async () => {
    const text = strFromU8(await written(csvModule, {}, ['B', 'A']));
    const titles = [...text.matchAll(/^# (?:[AB]: )?([A-Z][^,\r\n:]*)\r$/gm)].map((found) => found[1]);
    expect(titles).toContain('Comparison of revisions');
    expect(titles.filter((title) => title === 'Dead spots')).toHaveLength(2);
    expect(text).toContain('invented');
  });
});

test('the zip holds every table of its list of contents, each square, and the same as JSON', async () => {
  const entries = unzipSync(await written(dataModule, {}, ['B', 'A']));
  const contents = strFromU8(entries['contents.txt'] ?? new Uint8Array());
  const names = Object.keys(entries).filter((name) => name.endsWith('.csv'));
  expect(names).toHaveLength(23);
  for (const name of names) {
    expect(contents).toContain(name);
    const rows = read(strFromU8(entries[name] ?? new Uint8Array()).replace('\ufeff', ''));
    expect(rows.length).toBeGreaterThan(0);
    expect(new Set(rows.map((row) => row.length)).size, name).toBe(1);
  }
  const json = JSON.parse(strFromU8(entries['numbers.json'] ?? new Uint8Array()));
  expect(json.revisions.map((revision: { id: string }) => revision.id)).toEqual(['B', 'A']);
  expect(json.comparison.rows.length).toBeGreaterThan(5);
});

test('the same source gives the same bytes', async () => {
  expect(await written(dataModule)).toEqual(await written(dataModule));
  expect(JSON.parse(strFromU8(await written(jsonModule))).date).toBe('2026-05-04');
});
