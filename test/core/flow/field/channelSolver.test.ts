import { expect, test } from 'vitest';
import { barrelForce } from '../../../../core/flow/field/barrelStress.ts';
import { halfGrid } from '../../../../core/flow/field/channelGrid.ts';
import type { FlatSection, HelicalSection } from '../../../../core/flow/field/channelSection.ts';
import { channelCurve, solveChannel, solveChannelForFlow } from '../../../../core/flow/field/channelSolver.ts';
import { prepareChannel } from '../../../../core/flow/field/prepared.ts';
import type { ViscosityLaw } from '../../../../core/material/viscosityLaw.ts';

const newtonian: ViscosityLaw = { model: 'newtonian', viscosity: 1000 };
const thinning = (index: number): ViscosityLaw => ({
  model: 'powerLaw',
  consistency: 1e4,
  index,
  regularisingRate: 6.25e-3,
});
const flat = (change: Partial<FlatSection> = {}): FlatSection => ({
  kind: 'flat',
  depth: 2e-3,
  width: 8e-3,
  helixAngle: 0.308,
  rootFillet: 0,
  flankAngle: 0,
  ...change,
});
const helical = (change: Partial<HelicalSection> = {}): HelicalSection => ({
  kind: 'helical',
  barrelRadius: 4e-3,
  rootRadius: 2.25e-3,
  lead: 8e-3,
  starts: 1,
  flightAxialWidth: 1e-3,
  flankAngle: 0,
  rootFillet: 0,
  ...change,
});
const motion = { barrelSpeed: 0.0125 };

/** F_d and F_p of a rectangular channel (Rowell & Finlayson 1928; Tadmor & Klein 1970; from memory, derived again). */
function shapeFactors(ratio: number): { drag: number; pressure: number } {
  let [drag, pressure] = [0, 0];
  for (let i = 1; i < 400; i += 2) {
    drag += Math.tanh((i * Math.PI * ratio) / 2) / i ** 3;
    pressure += Math.tanh((i * Math.PI) / (2 * ratio)) / i ** 5;
  }
  return { drag: (16 * drag) / (Math.PI ** 3 * ratio), pressure: 1 - (192 * ratio * pressure) / Math.PI ** 5 };
}

test.each([0.02, 0.1, 0.3, 1, 2])('Newtonian drag and pressure flow at H/W = %d follow the series', (ratio) => {
  const section = flat({ width: 2e-3 / ratio });
  const { drag, pressure } = shapeFactors(ratio);
  const state = solveChannel(section, newtonian, motion, 0);
  const area = section.depth * section.width;
  const along = motion.barrelSpeed * Math.cos(section.helixAngle);
  expect(state.flowRate / ((area * along) / 2) / drag).toBeCloseTo(1, 3);
  expect((-state.flowSlope * 12 * 1000) / (area * section.depth ** 2) / pressure).toBeCloseTo(1, 3);
});

test('drag flow is linear in speed (Newtonian)', () => {
  const slow = solveChannel(helical(), newtonian, { barrelSpeed: 0.01 }, 0);
  const fast = solveChannel(helical(), newtonian, { barrelSpeed: 0.07 }, 0);
  expect(fast.flowRate / slow.flowRate).toBeCloseTo(7, 8);
});

test.each([flat({ rootFillet: 5e-4, flankAngle: 0.2 }), helical({ rootFillet: 4e-4, flankAngle: 0.2 })])(
  'similar channels at the same shear rate have flow by size cubed and gradient by 1/size: $kind',
  (section) => {
    const lengths = ['depth', 'width', 'rootFillet', 'barrelRadius', 'rootRadius', 'lead', 'flightAxialWidth'];
    const doubled = Object.entries(section).map(([key, value]) => [
      key,
      lengths.includes(key) ? 2 * Number(value) : value,
    ]);
    const big: typeof section = Object.fromEntries(doubled);
    const one = solveChannel(section, thinning(0.4), motion, 2e7);
    const two = solveChannel(big, thinning(0.4), { barrelSpeed: 0.025 }, 1e7);
    expect(two.flowRate / one.flowRate).toBeCloseTo(8, 6);
    expect(two.dissipation / one.dissipation).toBeCloseTo(4, 6);
  },
);

test('two starts carry twice the flow and power of one such channel', () => {
  const one = solveChannel(helical({ lead: 0.016, flightAxialWidth: 9e-3 }), thinning(0.5), motion, 2e7);
  const two = solveChannel(helical({ lead: 0.016, starts: 2 }), thinning(0.5), motion, 2e7);
  expect(two.flowRate / one.flowRate).toBeCloseTo(2, 9);
  expect(two.barrelPower / one.barrelPower).toBeCloseTo(2, 9);
});

test('a shallow helical channel tends to the unwrapped one', () => {
  const lead = 0.05;
  const radius = 0.05;
  const depth = 2e-4;
  const angle = Math.atan(lead / (2 * Math.PI * radius));
  const section = { barrelRadius: radius, rootRadius: radius - depth, lead, flightAxialWidth: 0.045 };
  const wound = solveChannelForFlow(helical(section), thinning(0.5), motion, 0);
  const width = 0.005 * Math.cos(angle);
  const plain = solveChannelForFlow(flat({ depth, width, helixAngle: angle }), thinning(0.5), motion, 0);
  // axial gradient = down-channel gradient / sin(angle)
  expect((wound.gradient * Math.sin(angle)) / plain.gradient).toBeCloseTo(1, 1);
});

test('closed discharge has no flow, and its gradient stops the flow', () => {
  const closed = solveChannelForFlow(flat(), thinning(0.3), motion, 0, { tolerance: 1e-5 });
  expect(closed.converged).toBe(true);
  const open = solveChannel(flat(), thinning(0.3), motion, 0);
  expect(Math.abs(closed.flowRate / open.flowRate)).toBeLessThan(1e-9);
  const again = solveChannel(flat(), thinning(0.3), motion, closed.gradient, { tolerance: 1e-5 });
  expect(Math.abs(again.flowRate / open.flowRate)).toBeLessThan(1e-5);
});

test('a wanted flow is met by its gradient', () => {
  const wanted = solveChannelForFlow(helical(), thinning(0.5), motion, 3e-8);
  expect(wanted.flowRate / 3e-8).toBeCloseTo(1, 6);
  const at = solveChannel(helical(), thinning(0.5), motion, wanted.gradient);
  expect(at.flowRate / 3e-8).toBeCloseTo(1, 3);
});

test('the slope of the curve is that of neighbouring points', () => {
  const options = { tolerance: 1e-6 };
  const [low, middle, high] = channelCurve(flat(), thinning(0.5), motion, [2.49e7, 2.5e7, 2.51e7], options);
  const slope = (high.flowRate - low.flowRate) / 2e5;
  expect(middle.flowSlope / slope).toBeCloseTo(1, 3);
});

test.each<[string, ViscosityLaw]>([
  ['power law n = 0.2', thinning(0.2)],
  ['power law n = 1.4', { model: 'powerLaw', consistency: 1e3, index: 1.4, regularisingRate: 0 }],
  [
    'Carreau-Yasuda',
    {
      model: 'carreauYasuda',
      zeroShearViscosity: 1500,
      infiniteShearViscosity: 0,
      timeConstant: 0.64,
      transition: 0.8,
      index: 0.35,
    },
  ],
  ['Cross', { model: 'cross', zeroShearViscosity: 3000, criticalStress: 2e4, index: 0.25 }],
])('%s converges from pumping help over closed discharge to back flow, flow falling all the way', (_, law) => {
  const section = flat({ width: 2e-2, rootFillet: 4e-4, flankAngle: 0.15 });
  const closed = solveChannelForFlow(section, law, motion, 0);
  const gradients = [-1, 0, 0.5, 1, 1.5, 4].map((part) => part * closed.gradient);
  const curve = channelCurve(section, law, motion, gradients);
  expect(curve.map((state) => state.converged)).toEqual(gradients.map(() => true));
  for (let k = 1; k < curve.length; k++) expect(curve[k].flowRate).toBeLessThan(curve[k - 1].flowRate);
  expect(curve[5].flowRate).toBeLessThan(0);
});

test('a solve cut short says so', () => {
  const state = solveChannel(flat(), thinning(0.3), motion, 1e7, { mostIterations: 2 });
  expect(state.converged).toBe(false);
  expect(state.residual).toBeGreaterThan(1e-3);
});

test.each([flat({ width: 2e-2 }), flat({ rootFillet: 8e-4, flankAngle: 0.3 }), helical({ rootFillet: 8e-4 })])(
  'the standard mesh agrees with one twice finer within 0.3 %%, n = 0.4: case %#',
  (section) => {
    const law = thinning(0.4);
    const fine = prepareChannel(section, { coarseness: 0.5 });
    const gradient = solveChannelForFlow(fine, law, motion, 0).gradient;
    const standard = channelCurve(section, law, motion, [0, gradient / 2]);
    const exact = channelCurve(fine, law, motion, [0, gradient / 2]);
    for (const k of [0, 1]) expect(standard[k].flowRate / exact[k].flowRate).toBeCloseTo(1, 2.4);
  },
);

test('torque power of the barrel equals dissipation plus pump work (n = 0.2, corner strips of 1e-4 H left out)', () => {
  for (const section of [flat(), helical()]) {
    const state = solveChannel(section, thinning(0.2), motion, 1e7, { coarseness: 0.5, tolerance: 1e-6 });
    const force = barrelForce(state, 2e-7);
    const power =
      section.kind === 'flat'
        ? motion.barrelSpeed *
          (force.along * Math.cos(section.helixAngle) + force.across * Math.sin(section.helixAngle))
        : (motion.barrelSpeed * force.along * 2 * Math.PI * section.barrelRadius) / section.lead;
    expect(power / state.barrelPower).toBeCloseTo(1, 1);
  }
});

test('the grid follows barrel speed on the barrel and rest on the walls', () => {
  const state = solveChannel(helical({ rootFillet: 5e-4 }), thinning(0.5), motion, 3e7);
  const half = halfGrid(state, 2);
  const middle = (half.columns - 1) * half.rows;
  expect(half.along[middle + half.rows - 1]).toBeCloseTo(motion.barrelSpeed, 9);
  expect(half.across[middle + half.rows - 1]).toBeCloseTo(0, 9);
  expect(Math.abs(half.speed[middle])).toBeLessThan(1e-12);
  // the fillet is held by springs: a trace of slip is left
  for (let j = 0; j < half.rows - 1; j++) expect(Math.abs(half.speed[j])).toBeLessThan(0.02 * motion.barrelSpeed);
});
