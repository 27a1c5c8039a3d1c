import { describe, expect, test } from 'vitest';
import { createReach, type ReachShape, solveReach } from '../../../core/flow/reach.ts';
import type { ViscosityLaw } from '../../../core/material/viscosityLaw.ts';
import { newtonian, powerLaw } from '../../helpers/textbookScrew.ts';
import caseD from '../../reference/flow/caseD.json' with { type: 'json' };

const shape = (parts: Partial<ReachShape> = {}): ReachShape => ({
  flighted: true,
  rootRadius: 0.004,
  barrelRadius: 0.007,
  depth: 0.003,
  starts: 1,
  helixBarrel: Math.atan(0.014 / (2 * Math.PI * 0.007)),
  helixMean: Math.atan(0.014 / (2 * Math.PI * 0.0055)),
  widthBarrel: 0.0114,
  widthMean: 0.0111,
  land: 0.0019,
  clearance: 0.0001,
  ...parts,
});
const cross: ViscosityLaw = { model: 'cross', zeroShearViscosity: 4000, criticalStress: 8e4, index: 0.25 };
const flow = 4e-8;

test('free flow of a Newtonian melt grows in proportion to speed and does not know its viscosity', () => {
  const at = (speed: number, viscosity: number) =>
    solveReach(createReach(shape()), newtonian(viscosity), speed, 0).openFlow;
  expect(at(2, 100) / at(1, 100)).toBeCloseTo(2, 6);
  expect(at(1, 1) / at(1, 1e4)).toBeCloseTo(1, 6);
});

test('size: all lengths doubled, speed and viscosity kept, give eight times the flow at the same pressure per turn', () => {
  const double = Object.fromEntries(
    Object.entries(shape()).map(([key, value]) =>
      typeof value === 'number' && !['starts', 'helixBarrel', 'helixMean'].includes(key)
        ? [key, 2 * value]
        : [key, value],
    ),
  ) as unknown as ReachShape;
  const one = solveReach(createReach(shape()), cross, 0.5, flow);
  const two = solveReach(createReach(double), cross, 0.5, 8 * flow);
  expect(two.openFlow / one.openFlow).toBeCloseTo(8, 4);
  expect((2 * two.gradient) / one.gradient).toBeCloseTo(1, 3);
});

test('more flow always means less pressure built', () => {
  for (const law of [newtonian(800), powerLaw(8000, 0.3), cross]) {
    const reach = createReach(shape());
    const gradients = [0, 1e-8, 3e-8, 6e-8, 1e-7, 2e-7].map((q) => solveReach(reach, law, 0.5, q).gradient);
    for (let i = 1; i < gradients.length; i++) expect(gradients[i]).toBeLessThan(gradients[i - 1]);
  }
});

test('more clearance leaks more and builds less, down to none without clearance', () => {
  const solved = [0, 5e-5, 1e-4, 2e-4, 4e-4].map((clearance) =>
    solveReach(createReach(shape({ clearance })), cross, 0.5, flow),
  );
  expect(solved[0].leakFlow).toBe(0);
  expect(solved[0].landPower).toBe(0);
  for (let i = 1; i < solved.length; i++) {
    expect(solved[i].converged).toBe(true);
    expect(solved[i].leakFlow).toBeGreaterThan(solved[i - 1].leakFlow);
    expect(solved[i].gradient).toBeLessThan(solved[i - 1].gradient);
  }
});

test('a worn screw with a third of its depth as clearance still converges, at any load', () => {
  const reach = createReach(shape({ depth: 0.0003, clearance: 0.0001, rootRadius: 0.0067 }));
  for (const q of [0, 1e-10, 3e-9, 1e-8, 3e-8]) expect(solveReach(reach, cross, 0.17, q).converged).toBe(true);
});

test('two starts of half the width carry less than one: twice the walls', () => {
  const one = solveReach(createReach(shape({ clearance: 0 })), newtonian(500), 1, 0);
  const halves = { starts: 2, widthBarrel: 0.0057, widthMean: 0.00555, clearance: 0 };
  const two = solveReach(createReach(shape(halves)), newtonian(500), 1, 0);
  expect(two.openFlow).toBeLessThan(0.95 * one.openFlow);
});

test('a plain stretch only resists, the less the faster it turns', () => {
  const plain = shape({ flighted: false });
  const slow = solveReach(createReach(plain), cross, 0.01, flow);
  const fast = solveReach(createReach(plain), cross, 2, flow);
  expect(slow.gradient).toBeLessThan(fast.gradient);
  expect(fast.gradient).toBeLessThan(0);
  expect(fast.openFlow).toBe(0);
});

describe('against the helical channel, root to bore and pitch as given (independent finite elements, see README there)', () => {
  interface Entry {
    readonly inputs: {
      readonly D_barrel_m: number;
      readonly D_root_m: number;
      readonly pitch_m: number;
      readonly flight_axial_width_m: number;
      readonly N_rev_per_s: number;
      readonly material: Readonly<Record<string, string | number>>;
    };
    readonly rows: readonly { readonly dpdz_axial_Pa_per_m: number; readonly Q_m3_per_s: number }[];
  }
  const entries = caseD.entries as unknown as readonly Entry[];
  const newtonians = entries.filter(({ inputs }) => inputs.material.model === 'newtonian');

  test.each(newtonians.map((entry) => [entry.inputs.D_root_m / entry.inputs.D_barrel_m, entry] as const))(
    'root %s of the bore, Newtonian: free flow and closed pressure within 4 %%',
    (_, { inputs, rows }) => {
      const barrelRadius = inputs.D_barrel_m / 2;
      const rootRadius = inputs.D_root_m / 2;
      const helix = (r: number) => Math.atan(inputs.pitch_m / (2 * Math.PI * r));
      const width = (r: number) => (inputs.pitch_m - inputs.flight_axial_width_m) * Math.cos(helix(r));
      const mean = (barrelRadius + rootRadius) / 2;
      const reach = createReach({
        flighted: true,
        rootRadius,
        barrelRadius,
        depth: barrelRadius - rootRadius,
        starts: 1,
        helixBarrel: helix(barrelRadius),
        helixMean: helix(mean),
        widthBarrel: width(barrelRadius),
        widthMean: width(mean),
        land: 0,
        clearance: 0,
      });
      const law = newtonian(Number(inputs.material.eta));
      const solved = solveReach(reach, law, inputs.N_rev_per_s, 0);
      const free = rows.reduce((most, row) => Math.max(most, row.Q_m3_per_s), 0);
      const closed = rows.reduce((most, row) => Math.max(most, row.dpdz_axial_Pa_per_m), 0);
      expect(Math.abs(solved.openFlow / free - 1)).toBeLessThan(0.04);
      expect(Math.abs(solved.gradient / closed - 1)).toBeLessThan(0.04);
    },
  );
});
