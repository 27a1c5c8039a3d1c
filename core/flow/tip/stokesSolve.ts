/** Newton iteration with an exact line search for the flow of a generalised-Newtonian melt. */

import type { ViscosityLaw } from '../../material/viscosityLaw.ts';
import { evaluateElement, newElementWork, type StokesState } from './stokesElement.ts';
import {
  factorStokes,
  type Increment,
  pressureStep,
  type Residual,
  type StokesFactor,
  type StokesSystem,
  solveIncrement,
  stokesResidual,
} from './stokesSystem.ts';

/** How an iteration ended. */
export interface Convergence {
  readonly converged: boolean;
  /** Tangents factored */
  readonly iterations: number;
  /** Root mean square of |change| / (|velocity| + 0.01 U) in the last step */
  readonly residual: number;
  /** Sum of unbalanced flow of all triangles over the through flow */
  readonly imbalance: number;
}

/** When to stop. */
export interface StopRule {
  readonly tolerance: number;
  readonly maxIterations: number;
  /** Mean velocity in the bore, m/s */
  readonly speed: number;
  /** Flow over 2 pi, m3/s */
  readonly flux: number;
}

function addIncrement(system: StokesSystem, state: StokesState, increment: Increment, share: number): void {
  const { unknownOf } = system;
  for (let i = 0; i < unknownOf.length; i++)
    if (unknownOf[i] >= 0) state.velocity[i] += share * increment.nodal[unknownOf[i]];
  for (let i = 0; i < state.bubble.length; i++) state.bubble[i] += share * increment.bubble[i];
}

function slopeAlong(residual: Residual, increment: Increment): number {
  let sum = 0;
  for (let i = 0; i < residual.nodal.length; i++) sum += residual.nodal[i] * increment.nodal[i];
  for (let i = 0; i < residual.bubble.length; i++) sum += residual.bubble[i] * increment.bubble[i];
  return sum;
}

/** Moves the state along the increment to where the dissipation potential is least; the potential is convex. */
function lineSearch(
  system: StokesSystem,
  state: StokesState,
  law: ViscosityLaw,
  increment: Increment,
  start: number,
): Residual {
  let [lowAt, lowSlope] = [0, start];
  let at = 1;
  addIncrement(system, state, increment, 1);
  let residual = stokesResidual(system, state, law);
  for (let trial = 0; trial < 6; trial++) {
    const slope = slopeAlong(residual, increment);
    if (Math.abs(slope) <= 0.2 * Math.abs(start)) break;
    const guess = at - (slope * (at - lowAt)) / (slope - lowSlope);
    const next = Number.isFinite(guess) ? Math.max(0.1 * at, Math.min(3 * at, guess)) : 0.5 * at;
    if (slope < 0) [lowAt, lowSlope] = [at, slope];
    addIncrement(system, state, increment, next - at);
    at = next;
    residual = stokesResidual(system, state, law);
  }
  return residual;
}

/** p -= gamma W^-1 B u in every triangle. */
function updatePressure(system: StokesSystem, state: StokesState, law: ViscosityLaw): void {
  const work = newElementWork(system.components);
  const step = new Float64Array(3);
  for (let t = 0; t < system.mesh.triangleCount; t++) {
    evaluateElement(system.mesh, t, state, law, work, false);
    pressureStep(work, step);
    for (let k = 0; k < 3; k++) state.pressure[3 * t + k] -= step[k];
  }
}

function relativeChange(system: StokesSystem, state: StokesState, increment: Increment, speed: number): number {
  const { components: nc, unknownOf } = system;
  let sum = 0;
  let count = 0;
  for (let node = 0; node < unknownOf.length / nc; node++) {
    let change2 = 0;
    let size2 = 0;
    for (let c = 0; c < nc; c++) {
      const u = unknownOf[node * nc + c];
      if (u >= 0) change2 += increment.nodal[u] ** 2;
      size2 += state.velocity[node * nc + c] ** 2;
    }
    if (size2 === 0) continue;
    sum += change2 / (Math.sqrt(size2) + 0.01 * speed) ** 2;
    count++;
  }
  return Math.sqrt(sum / Math.max(1, count));
}

/** One step with a given factor: increment, line search if wanted, pressure. Returns the relative change. */
function advance(
  system: StokesSystem,
  state: StokesState,
  law: ViscosityLaw,
  factored: StokesFactor,
  rule: StopRule,
  search: boolean,
): number {
  const residual = stokesResidual(system, state, law);
  const increment = solveIncrement(system, factored, residual);
  if (search) lineSearch(system, state, law, increment, slopeAlong(residual, increment));
  else addIncrement(system, state, increment, 1);
  updatePressure(system, state, law);
  return relativeChange(system, state, increment, rule.speed);
}

/** Steps with an old factor as long as they pay: cheap, and they remove what is left of the divergence. */
function reuse(
  system: StokesSystem,
  state: StokesState,
  law: ViscosityLaw,
  factored: StokesFactor,
  rule: StopRule,
): number {
  let change = Number.POSITIVE_INFINITY;
  for (let pass = 0; pass < 8; pass++) {
    const last = change;
    change = advance(system, state, law, factored, rule, false);
    if (change < rule.tolerance || change > 0.3 * last) break;
  }
  return change;
}

const NEAR = 2e-3; // below this relative change Newton needs no line search and an old factor serves

/**
 * Brings a state with the wanted boundary values to equilibrium.
 * @param state start, overwritten by the solution
 * @param rule when to stop
 */
export function solveStokes(system: StokesSystem, state: StokesState, law: ViscosityLaw, rule: StopRule): Convergence {
  let iterations = 0;
  let change = Number.POSITIVE_INFINITY;
  while (iterations < rule.maxIterations && !(change < rule.tolerance)) {
    const factored = factorStokes(system, state, law);
    if (!factored.factor.sound) break;
    iterations++;
    const linear = law.model === 'newtonian';
    change = advance(system, state, law, factored, rule, !linear && change > NEAR);
    if ((linear || change < NEAR) && change >= rule.tolerance) change = reuse(system, state, law, factored, rule);
  }
  const imbalance = stokesResidual(system, state, law).imbalance / rule.flux;
  const converged = change < rule.tolerance && imbalance < 1e-4;
  return { converged, iterations, residual: change, imbalance };
}
