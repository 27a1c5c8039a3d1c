import { describe, expect, test } from 'vitest';
import { newtonian, powerLaw } from '../../../core/checks/textbookScrew.ts';
import { createReach, type ReachShape, solveReach } from '../../../core/flow/reach.ts';
import { localIndex, type ViscosityLaw } from '../../../core/material/viscosityLaw.ts';
import { bracketedRoot } from '../../../core/math/roots.ts';
import caseA from '../../reference/flow/caseA.json' with { type: 'json' };
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

  const solve = ({ inputs, rows }: Entry) => {
    const barrelRadius = inputs.D_barrel_m / 2;
    const rootRadius = inputs.D_root_m / 2;
    const helix = (r: number) => Math.atan(inputs.pitch_m / (2 * Math.PI * r));
    const width = (r: number) => (inputs.pitch_m - inputs.flight_axial_width_m) * Math.cos(helix(r));
    const mean = (barrelRadius + rootRadius) / 2;
    const { material } = inputs;
    const law =
      material.model === 'newtonian'
        ? newtonian(Number(material.eta))
        : powerLaw(Number(material.m), Number(material.n));
    const reach = createReach(
      {
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
      },
      false,
      material.model === 'newtonian' ? 1 : Number(material.n),
    );
    const solved = solveReach(reach, law, inputs.N_rev_per_s, 0);
    const free = rows.reduce((most, row) => Math.max(most, row.Q_m3_per_s), 0);
    const closed = rows.reduce((most, row) => Math.max(most, row.dpdz_axial_Pa_per_m), 0);
    return { free: solved.openFlow / free - 1, closed: solved.gradient / closed - 1 };
  };

  test.each(newtonians.map((entry) => [entry.inputs.D_root_m / entry.inputs.D_barrel_m, entry] as const))(
    'root %s of the bore, Newtonian: free flow and closed pressure within 4 %%',
    (_, entry) => {
      expect(Math.abs(solve(entry).free)).toBeLessThan(0.04);
      expect(Math.abs(solve(entry).closed)).toBeLessThan(0.04);
    },
  );

  test('n = 0.5 at a root of 0.56 of the bore: within 12 % of free flow and closed pressure', () => {
    for (const entry of entries.filter(({ inputs }) => inputs.material.model !== 'newtonian')) {
      expect(Math.abs(solve(entry).free)).toBeLessThan(0.12);
      expect(Math.abs(solve(entry).closed)).toBeLessThan(0.12);
    }
  });
});

describe('against the unrolled channel with side walls (independent finite elements, see README there)', () => {
  interface Entry {
    readonly inputs: {
      readonly H_m: number;
      readonly W_m: number;
      readonly H_over_W: number;
      readonly phi_deg: number;
      readonly V_barrel_m_per_s: number;
      readonly material: Readonly<Record<string, string | number>>;
    };
    readonly rows: readonly { readonly G_Pa_per_m: number; readonly Q_m3_per_s: number }[];
  }
  const lawOf = (material: Entry['inputs']['material']): ViscosityLaw => {
    const number = (key: string) => Number(material[key] ?? 0);
    if (material.model === 'newtonian') return newtonian(number('eta'));
    if (material.model === 'power_law') return powerLaw(number('m'), number('n'));
    return {
      model: 'carreauYasuda',
      zeroShearViscosity: number('eta0'),
      infiniteShearViscosity: 0,
      timeConstant: number('lambda_s'),
      transition: number('a'),
      index: number('n'),
    };
  };
  /** Largest error of the flow over the loads, as a share of the free flow. */
  const worst = ({ inputs, rows }: Entry): number => {
    const barrelRadius = 0.05;
    const helix = (inputs.phi_deg * Math.PI) / 180;
    const law = lawOf(inputs.material);
    const reach = createReach(
      {
        flighted: true,
        rootRadius: barrelRadius - inputs.H_m,
        barrelRadius,
        depth: inputs.H_m,
        starts: 1,
        helixBarrel: helix,
        helixMean: helix,
        widthBarrel: inputs.W_m,
        widthMean: inputs.W_m,
        land: 0,
        clearance: 0,
      },
      false,
      localIndex(law, inputs.V_barrel_m_per_s / inputs.H_m),
    );
    const speed = inputs.V_barrel_m_per_s / (2 * Math.PI * barrelRadius);
    const free = rows.reduce((most, row) => Math.max(most, row.Q_m3_per_s), 0);
    return rows.reduce((most, row) => {
      const wanted = row.G_Pa_per_m / Math.sin(helix);
      const miss = (q: number) => solveReach(reach, law, speed, q).gradient - wanted;
      const got = bracketedRoot(miss, -2 * free, 3 * free, { tolerance: 1e-6 * free }).x;
      return Math.max(most, Math.abs(got - row.Q_m3_per_s) / free);
    }, 0);
  };
  const entries = caseA.entries as unknown as readonly Entry[];
  const named = entries.map((entry) => {
    const { H_over_W, phi_deg, material } = entry.inputs;
    return [`H/W ${H_over_W}, ${phi_deg} degrees, ${material.model} ${material.n ?? ''}`, entry] as const;
  });

  /** Power laws at 17.66 degrees made the fit of the width factors; 30 degrees and Carreau-Yasuda are new to it. */
  test.each(named.filter(([, { inputs }]) => inputs.H_over_W <= 0.3))(
    '%s: within 3 % of the free flow at any load',
    (_, entry) => {
      expect(worst(entry)).toBeLessThan(entry.inputs.material.model === 'newtonian' ? 1e-4 : 0.03);
    },
  );

  test.each(named.filter(([, { inputs }]) => inputs.H_over_W > 0.3 && inputs.H_over_W < 0.7))(
    '%s: within 9 % of the free flow',
    (_, entry) => {
      expect(worst(entry)).toBeLessThan(entry.inputs.material.model === 'newtonian' ? 1e-4 : 0.09);
    },
  );
});
