/**
 * Solution of the discrete flow: J = potential + load w is strictly convex for any law whose stress rises with rate, so a
 * Newton step with a search on its slope always comes down.
 */

import { type BandMatrix, bandMatrix, factorBand, solveBand } from '../../math/bandedCholesky.ts';
import { assemble, type Rheology, type Sums, type Workspace, workspace } from './assembly.ts';
import type { ChannelSpace } from './channelSpace.ts';

/** When to stop. */
export interface NewtonOptions {
  /** Largest last step, relative in the energy norm; what is left after that step is about its square. */
  readonly tolerance: number;
  readonly mostIterations: number;
  /** Called before each step. */
  readonly onStep?: (() => void) | undefined;
}

/** One solver with its scratch memory; it keeps the last factor for tangents. */
export interface FlowSolver {
  readonly space: ChannelSpace;
  readonly rheology: Rheology;
  readonly options: NewtonOptions;
  readonly factor: BandMatrix;
  readonly work: Workspace;
}

/** Where a solve ended. */
export interface SolveEnd extends Sums {
  /** Dimensionless load it ended with; differs from the start only when a flow was asked for. */
  readonly load: number;
  readonly converged: boolean;
  readonly iterations: number;
  /** Last step, relative in the energy norm. */
  readonly residual: number;
  /** Change of the half-section flow with load, negative. */
  readonly flowSlope: number;
  /** Change of the free unknowns with load. */
  readonly response: Float64Array;
}

/** Where a solve starts and what it seeks. */
export interface SolveGoal {
  /** Dimensionless load to start with. */
  readonly load: number;
  /** Half-section flow to meet by changing the load; null keeps the load. */
  readonly flow: number | null;
  /** The tangent is constant (Newtonian) and the solver's factor is that of an earlier solve. */
  readonly reuseFactor?: boolean;
}

/** Solver for a space and a law. */
export function flowSolver(space: ChannelSpace, rheology: Rheology, options: NewtonOptions): FlowSolver {
  const factor = bandMatrix(space.dofs, space.bandwidth);
  return { space, rheology, options, factor, work: workspace(space, factor) };
}

/** Adds a multiple of a step of the free unknowns to coefficients. */
export function moveCoefficients(space: ChannelSpace, coefs: Float64Array, step: Float64Array, by: number): void {
  for (let k = 0; k < coefs.length; k++) {
    const dof = space.dofOf[k];
    if (dof >= 0) coefs[k] += by * step[dof];
  }
}

/** The load vector of a unit load. */
function unitLoad(space: ChannelSpace): Float64Array {
  const out = new Float64Array(space.dofs);
  for (let k = 0; k < space.size; k++) {
    const dof = space.dofOf[space.size + k];
    if (dof >= 0) out[dof] += space.flux[k];
  }
  return out;
}

function product(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let k = 0; k < a.length; k++) sum += a[k] * b[k];
  return sum;
}

/**
 * Solves from the coefficients given, which are overwritten by the solution.
 */
export function solveFlow(solver: FlowSolver, coefs: Float64Array, goal: SolveGoal): SolveEnd {
  const { space, rheology, options, factor, work } = solver;
  const unit = unitLoad(space);
  const step = new Float64Array(space.dofs);
  const response = new Float64Array(space.dofs);
  let factored = goal.reuseFactor === true;
  let load = goal.load;
  let sums = assemble(space, rheology, coefs, load, work, factored ? 'residual' : 'newton');
  let residual = Number.POSITIVE_INFINITY;
  let flowSlope = Number.NaN;
  let iterations = 0;
  let converged = false;
  while (iterations < options.mostIterations && !converged) {
    iterations++;
    options.onStep?.();
    if (!factored && !factorBand(factor)) break;
    factored = false;
    solveBoth(solver, unit, step, response);
    flowSlope = product(unit, response);
    const shift = goal.flow === null ? 0 : (goal.flow - sums.flow - product(unit, step)) / flowSlope;
    load += shift;
    for (let k = 0; k < step.length; k++) {
      work.residual[k] += shift * unit[k];
      step[k] += shift * response[k];
    }
    const slope = product(work.residual, step);
    residual = Math.sqrt(Math.abs(slope) / Math.max(sums.dissipation, Number.MIN_VALUE));
    converged = residual < options.tolerance;
    sums = search(solver, coefs, load, step, slope, converged);
  }
  return { ...sums, load, converged, iterations, residual, flowSlope, response };
}

/** Newton step from the residual, and change with a unit of load, by the factor at hand. */
function solveBoth(solver: FlowSolver, unit: Float64Array, step: Float64Array, response: Float64Array): void {
  const { factor, work } = solver;
  for (let k = 0; k < step.length; k++) {
    step[k] = -work.residual[k];
    response[k] = -unit[k];
  }
  solveBand(factor, step);
  solveBand(factor, response);
}

/** Moves along a step until the slope of J along it is well below its start; returns the sums there. */
function search(
  solver: FlowSolver,
  coefs: Float64Array,
  load: number,
  step: Float64Array,
  slope: number,
  last: boolean,
): Sums {
  const { space, rheology, work } = solver;
  const mode = last ? 'residual' : 'newton';
  moveCoefficients(space, coefs, step, 1);
  let sums = assemble(space, rheology, coefs, load, work, mode);
  let [low, lowSlope, high, highSlope] = [0, slope, 1, product(work.residual, step)];
  let at = 1;
  for (let pass = 0; pass < 8 && Math.abs(highSlope) > 0.7 * Math.abs(slope) && highSlope > 0; pass++) {
    const next = Math.min(
      0.9 * high,
      Math.max(low + 0.1 * (high - low), low + ((high - low) * -lowSlope) / (highSlope - lowSlope)),
    );
    moveCoefficients(space, coefs, step, next - at);
    at = next;
    sums = assemble(space, rheology, coefs, load, work, mode);
    const here = product(work.residual, step);
    if (here < 0) {
      low = next;
      lowSlope = here;
      if (Math.abs(here) < 0.7 * Math.abs(slope)) break;
    } else {
      high = next;
      highSlope = here;
    }
  }
  return sums;
}
