/** Checks of the width factors of a channel and of melt conveying between plates. */

import { createPlateSolver, type PlateDirection, solvePlate } from '../flow/plate.ts';
import { pressureShapeFactor, widthFactors } from '../flow/shapeFactors.ts';
import { gaussLegendre } from '../math/gaussLegendre.ts';
import { newtonian, powerLaw } from './textbookScrew.ts';
import type { Check } from './types.ts';

const torsionTable =
  'Torsion constant k₁ of rectangular bars, structural-analysis manual, “Rectangular Sections” (as Timoshenko & Goodier); F = 3 k₁ by the membrane analogy, table rounded to 0.001';

const torsion = (name: string, longOverShort: number, k1: number): Check => ({
  id: `channel.widthFactor${name}`,
  stage: 'channel',
  quantity:
    longOverShort === 1
      ? 'Width factor of pressure flow in a square channel'
      : `Width factor of pressure flow, channel ${longOverShort} times as wide as deep`,
  unit: '',
  expected: Number((3 * k1).toFixed(3)),
  limit: 0.002,
  measure: 'absolute',
  kind: 'published',
  source: torsionTable,
  got: () => pressureShapeFactor(1 / longOverShort),
});

const gap = 0.003;
const speed = 0.1;
const consistency = 1000;
const still: PlateDirection = { wallSpeed: 0, given: 'flow', value: 0 };
const gradientUnit = (index: number) => (consistency * speed ** index) / gap ** (index + 1);
const helix = Math.atan(1 / Math.PI);

/** Gradient at no flow, power-law melt that is dragged across as well, lead of one bore; in units of K V^n/H^(n+1). */
function closedCoupled(index: number): number {
  const down: PlateDirection = { wallSpeed: speed * Math.cos(helix), given: 'flow', value: 0 };
  const cross: PlateDirection = { ...still, wallSpeed: speed * Math.sin(helix) };
  const { gradient } = solvePlate(createPlateSolver(), powerLaw(consistency, index), gap, down, cross).down;
  return gradient / gradientUnit(index);
}

/** Flow over plate speed and gap at a gradient of one unit, no cross flow. */
function planeFlow(index: number): number {
  const down: PlateDirection = { wallSpeed: speed, given: 'gradient', value: gradientUnit(index) };
  const solver = createPlateSolver(gaussLegendre(60));
  return solvePlate(solver, powerLaw(consistency, index), gap, down, still).down.flow / (speed * gap);
}

const coupled =
  'Problem of Griffith 1962, solved by two other methods (shooting on the stress constants; finite differences), computed';

const wide = (id: string, index: number, expected: number): Check => ({
  id,
  stage: 'channel',
  quantity: `Closed gradient of a wide channel with cross flow, n = ${index}, in units of K Vⁿ/Hⁿ⁺¹`,
  unit: '',
  expected,
  limit: 1e-3,
  measure: 'relative',
  kind: 'independent',
  source: coupled,
  got: () => closedCoupled(index),
});

/** Checks of width factors and plates. */
export const widthChecks: readonly Check[] = [
  torsion('OfSquare', 1, 0.141),
  torsion('At1To2Half', 2.5, 0.249),
  torsion('At1To5', 5, 0.291),
  torsion('At1To10', 10, 0.312),
  {
    id: 'channel.dragFactorOfSquare',
    stage: 'channel',
    quantity: 'Width factor of drag flow in a square channel',
    unit: '',
    expected: 0.5,
    limit: 1e-6,
    measure: 'relative',
    kind: 'exact',
    source: 'Four lids, each turned by a quarter, add up to uniform flow',
    got: () => widthFactors(1, 1).drag,
  },
  wide('channel.closedGradientWideN5', 0.5, 3.5441),
  wide('channel.closedGradientWideN3', 0.3, 2.8797),
  {
    id: 'channel.planeFlowN5',
    stage: 'channel',
    quantity: 'Flow between plates against a gradient of one K Vⁿ/Hⁿ⁺¹, n = 0.5, over speed and gap',
    unit: '',
    expected: 0.340427,
    limit: 1e-5,
    measure: 'relative',
    kind: 'exact',
    source: 'Closed form 1 − (1/4 + 2c/3 + c²/2), c = (√(11/3) − 1)/2, derived',
    got: () => planeFlow(0.5),
  },
  {
    id: 'channel.crossFlowTurns',
    stage: 'channel',
    quantity: 'Height over the root at which flow across the channel turns, over the depth',
    unit: '',
    expected: 0.666667,
    limit: 1e-5,
    measure: 'relative',
    kind: 'exact',
    source: 'Mohr, Saxton & Jepson 1957, as reviewed in Polymers 17 (2025) 2959; derived again',
    got: () => {
      const { cross } = solvePlate(createPlateSolver(), newtonian(100), 0.004, still, { ...still, wallSpeed: 0.05 });
      return (-2 * cross.rootStress) / cross.gradient / 0.004;
    },
  },
];
