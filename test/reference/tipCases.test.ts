/** Agreement with an independent finite-element solution (39 converged entries, test/reference/flow/caseC.json). */

import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { evaluateTipCase, TIP_CASE_LIMITS } from '../../core/reference/tipCases.ts';

const file = JSON.parse(readFileSync(new URL('./flow/caseC.json', import.meta.url), 'utf8')) as {
  entries: { inputs: Record<string, unknown>; outputs: Record<string, unknown> }[];
};

describe('flow between tip and nozzle against case C', () => {
  it.each(file.entries.map((entry, i) => [i, entry] as const))('entry %i', (_i, entry) => {
    const rows = evaluateTipCase(entry);
    expect(rows.length).toBe(7);
    expect(rows.filter((row) => !row.pass)).toEqual([]);
  });

  it('asks no less than was promised', () => {
    expect(TIP_CASE_LIMITS).toEqual({ pressureDrop: 0.01, fractionOver3: 0.015, eddyLength: 0.05, outletAge: 0.01 });
  });

  it('fails an entry whose numbers are wrong', () => {
    const [entry] = file.entries;
    const wrong = { inputs: entry.inputs, outputs: { dp_total_Pa: 1.02 * Number(entry.outputs.dp_total_Pa) } };
    const failed = evaluateTipCase(wrong, { fineness: 1.5 }).filter((row) => !row.pass);
    expect(failed.map((row) => row.quantity)).toEqual(['dp_total_Pa (relative)']);
  });

  it('names what an entry lacks or what cannot be solved', () => {
    const { inputs } = file.entries[0];
    const text = (changed: unknown): string => evaluateTipCase({ inputs: changed, outputs: {} })[0].quantity;
    expect(text({ ...inputs, land_m: 'long' })).toContain('land_m');
    expect(text({ ...inputs, tip: 'star' })).toContain('unknown tip');
    expect(text({ ...inputs, material: { model: 'slime' } })).toContain('unknown law');
    expect(text({ ...inputs, R_root_m: 0.00395, gap_m: -0.001 })).toContain('tip');
    expect(text(undefined)).toContain('no number');
  });

  it('reads any tip angle and law in that format', () => {
    const { inputs } = file.entries[0];
    const material = { model: 'carreau_yasuda', eta0: 1000, lambda: 0.1, a: 2, n: 0.4 };
    const entry = { inputs: { ...inputs, tip: 'cone_75.5deg', material }, outputs: {} };
    expect(evaluateTipCase(entry, { fineness: 1.5 })).toMatchObject([
      { quantity: 'converged', pass: true },
      { pass: true },
    ]);
  });
});
