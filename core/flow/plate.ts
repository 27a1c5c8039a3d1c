/**
 * Flow between two parallel plates with both velocity components in one viscosity: the unwrapped channel of infinite
 * width. y runs from the resting plate (root) to the moving plate (barrel).
 *
 * The shear stress of each component is linear in y, so the four numbers (mean stress and gradient of each component)
 * are the whole solution. They are the minimum of a convex function (the complementary energy), found by Newton.
 * Source: Griffith 1962 (coupled down- and cross-channel flow); the variational form is Hill 1956.
 */

import { type ViscosityLaw, viscosityAt } from '../material/viscosityLaw.ts';
import { gaussLegendre, type QuadratureRule } from '../math/gaussLegendre.ts';
import { solveSmall } from '../math/smallSolve.ts';
import { addPlateSums, createPlateSums, type PlateSums } from './plateSums.ts';

/** One direction: how fast the moving plate goes and what is prescribed of the pressure flow. */
export interface PlateDirection {
  /** speed of the moving plate, m/s */
  readonly wallSpeed: number;
  /** prescribed: volume flow per width (m²/s) or pressure gradient (Pa/m, positive where pressure grows) */
  readonly given: 'flow' | 'gradient';
  readonly value: number;
}

/** What the plates carry in one direction. */
interface PlateComponent {
  /** volume flow per width, m²/s */
  readonly flow: number;
  /** pressure gradient, Pa/m */
  readonly gradient: number;
  /** shear stress at the resting and at the moving plate, Pa */
  readonly rootStress: number;
  readonly lidStress: number;
}

/** The solved flow between the plates. */
export interface PlateFlow {
  readonly down: PlateComponent;
  readonly cross: PlateComponent;
  /** mean over the gap of the shear rate, 1/s */
  readonly shearRate: number;
  /** heat made per plate area, W/m² */
  readonly dissipation: number;
  readonly converged: boolean;
  readonly iterations: number;
}

/** Working memory and last solution, reused so that a neighbouring problem starts warm. */
export interface PlateSolver {
  readonly sums: PlateSums;
  /** mean stress down, slope down, mean stress cross, slope cross; in units of the scale stress */
  readonly unknowns: Float64Array;
  readonly trial: Float64Array;
  /** wanted values of the sums */
  readonly targets: Float64Array;
  readonly matrix: Float64Array;
  readonly step: Float64Array;
  warm: boolean;
}

/** Twelve points across the gap give about 1e-4 of the flow. */
const acrossGap = gaussLegendre(12);

/**
 * A solver with its own working memory.
 * @param rule points across the gap
 */
export function createPlateSolver(rule: QuadratureRule = acrossGap): PlateSolver {
  return {
    sums: createPlateSums(rule),
    unknowns: new Float64Array(4),
    trial: new Float64Array(4),
    targets: new Float64Array(4),
    matrix: new Float64Array(16),
    step: new Float64Array(4),
    warm: false,
  };
}

const restingFlow: PlateFlow = {
  down: { flow: 0, gradient: 0, rootStress: 0, lidStress: 0 },
  cross: { flow: 0, gradient: 0, rootStress: 0, lidStress: 0 },
  shearRate: 0,
  dissipation: 0,
  converged: true,
  iterations: 0,
};

interface Scaled {
  readonly rate: number;
  readonly stress: number;
  /** which unknowns are free */
  readonly free: readonly number[];
}

/**
 * Solves the flow between two plates.
 * @param solver working memory; its last solution is the starting point
 * @param law isothermal viscosity law
 * @param gap distance of the plates, m, > 0
 * @param down, cross what is prescribed in each direction
 * @returns both components; converged = false where the residual stayed above 1e-6
 */
export function solvePlate(
  solver: PlateSolver,
  law: ViscosityLaw,
  gap: number,
  down: PlateDirection,
  cross: PlateDirection,
): PlateFlow {
  const rate = rateScale(law, gap, down, cross);
  if (!(rate > 0)) return restingFlow;
  const scaled = scale(solver, law, gap, rate, down, cross);
  const ended = iterate(solver, law, scaled);
  solver.warm = ended.converged;
  return readOut(solver, scaled, gap, down, cross, ended);
}

/** A shear rate of the right size: walls, prescribed flows and, where only gradients drive, the stress they make. */
function rateScale(law: ViscosityLaw, gap: number, down: PlateDirection, cross: PlateDirection): number {
  let rate = Math.hypot(down.wallSpeed, cross.wallSpeed) / gap;
  for (const side of [down, cross])
    if (side.given === 'flow') rate = Math.max(rate, (4 * Math.abs(side.value)) / gap ** 2);
  if (rate > 0) return rate;
  const stress = (Math.hypot(down.value, cross.value) * gap) / 2;
  let guess = stress > 0 ? 1 : 0;
  for (let pass = 0; pass < 40 && guess > 0; pass++) guess = Math.sqrt((guess * stress) / viscosityAt(law, guess));
  return guess;
}

/** Free unknowns by what is prescribed down and cross. */
const freeUnknowns = {
  flow: { flow: [0, 1, 2, 3], gradient: [0, 1, 2] },
  gradient: { flow: [0, 2, 3], gradient: [0, 2] },
} as const;

function scale(
  solver: PlateSolver,
  law: ViscosityLaw,
  gap: number,
  rate: number,
  down: PlateDirection,
  cross: PlateDirection,
): Scaled {
  const stress = viscosityAt(law, rate) * rate;
  prepare(solver, 0, down, rate, stress, gap);
  prepare(solver, 2, cross, rate, stress, gap);
  return { rate, stress, free: freeUnknowns[down.given][cross.given] };
}

function prepare(
  solver: PlateSolver,
  at: number,
  side: PlateDirection,
  rate: number,
  stress: number,
  gap: number,
): void {
  const { unknowns, targets } = solver;
  targets[at] = side.wallSpeed / (rate * gap);
  const flowing = side.given === 'flow';
  targets[at + 1] = flowing ? (side.wallSpeed / 2 - side.value / gap) / (rate * gap) : 0;
  if (!flowing) unknowns[at + 1] = (side.value * gap) / stress;
  if (solver.warm) return;
  unknowns[at] = targets[at];
  if (flowing) unknowns[at + 1] = 12 * targets[at + 1];
}

interface Ended {
  readonly converged: boolean;
  readonly iterations: number;
}

function iterate(solver: PlateSolver, law: ViscosityLaw, scaled: Scaled): Ended {
  const { sums, unknowns, trial, step } = solver;
  const { free } = scaled;
  addPlateSums(sums, law, scaled, unknowns, !solver.warm);
  let residual = residualOf(solver, free);
  for (let pass = 1; pass <= 60; pass++) {
    if (residual < 1e-7) return { converged: true, iterations: pass };
    if (!newtonStep(solver, free)) break;
    let share = 1;
    let next = Number.POSITIVE_INFINITY;
    for (let cut = 0; cut < 12 && !(next < residual); cut++) {
      trial.set(unknowns);
      for (let i = 0; i < free.length; i++) trial[free[i]] += share * step[i];
      addPlateSums(sums, law, scaled, trial, false);
      next = residualOf(solver, free);
      share /= 2;
    }
    if (!(next < residual)) break;
    unknowns.set(trial);
    residual = next;
  }
  return { converged: residual < 1e-6, iterations: 60 };
}

function residualOf(solver: PlateSolver, free: readonly number[]): number {
  let square = 0;
  for (const k of free) square += (solver.sums.gradient[k] - solver.targets[k]) ** 2 * (k % 2 === 0 ? 1 : 12);
  return Math.sqrt(square);
}

/** Fills solver.step; false where the Hessian is not positive definite. */
function newtonStep(solver: PlateSolver, free: readonly number[]): boolean {
  const { sums, targets, matrix, step } = solver;
  const size = free.length;
  for (let i = 0; i < size; i++) {
    step[i] = targets[free[i]] - sums.gradient[free[i]];
    for (let j = 0; j < size; j++) matrix[i * size + j] = sums.hessian[4 * free[i] + free[j]];
  }
  return solveSmall(matrix, step, size);
}

function readOut(
  solver: PlateSolver,
  scaled: Scaled,
  gap: number,
  down: PlateDirection,
  cross: PlateDirection,
  ended: Ended,
): PlateFlow {
  const { sums, unknowns } = solver;
  const component = (side: PlateDirection, c: number): PlateComponent => ({
    flow:
      side.given === 'flow' ? side.value : gap * (side.wallSpeed / 2 - sums.gradient[2 * c + 1] * scaled.rate * gap),
    gradient: (unknowns[2 * c + 1] * scaled.stress) / gap,
    rootStress: (unknowns[2 * c] - unknowns[2 * c + 1] / 2) * scaled.stress,
    lidStress: (unknowns[2 * c] + unknowns[2 * c + 1] / 2) * scaled.stress,
  });
  return {
    down: component(down, 0),
    cross: component(cross, 1),
    shearRate: sums.meanRate * scaled.rate,
    dissipation: sums.work * scaled.rate * scaled.stress * gap,
    converged: ended.converged,
    iterations: ended.iterations,
  };
}
