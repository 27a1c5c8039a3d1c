/** Newton iteration with an exact line search for the flow of a generalised-Newtonian melt. */

import type { ViscosityLaw } from '../../material/viscosityLaw.ts';
import { evaluateElement, newElementWork } from './stokesElement.ts';
import type { StokesState } from './stokesState.ts';
import {
  factorStokes,
  type Increment,
  type StokesFactor,
  type StokesSystem,
  solveIncrement,
  stokesResidual,
} from './stokesSystem.ts';
import { updateStress } from './stressUpdate.ts';

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
  /** Called between steps */
  readonly onStep?: (() => void) | undefined;
  /** Mean velocity in the bore, m/s */
  readonly speed: number;
  /** Shear rate typical of the bore, 1/s */
  readonly rate: number;
  /** Flow over 2 pi, m3/s */
  readonly flux: number;
}

function addIncrement(system: StokesSystem, state: StokesState, increment: Increment): void {
  const { unknownOf } = system;
  for (let i = 0; i < unknownOf.length; i++) if (unknownOf[i] >= 0) state.velocity[i] += increment.nodal[unknownOf[i]];
  for (let i = 0; i < state.bubble.length; i++) state.bubble[i] += increment.bubble[i];
}

/** p -= gamma W^-1 B u in every triangle. */
function updatePressure(system: StokesSystem, state: StokesState): void {
  const work = newElementWork(system.components);
  for (let t = 0; t < system.mesh.triangleCount; t++) {
    evaluateElement(system, t, state, work, false);
    for (let k = 0; k < 3; k++) state.pressure[3 * t + k] -= work.pressureStep[k];
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

/** One step with a given factor: velocity, then pressure. Returns the relative change. */
function advance(system: StokesSystem, state: StokesState, factored: StokesFactor, rule: StopRule): number {
  const increment = solveIncrement(system, factored, stokesResidual(system, state));
  addIncrement(system, state, increment);
  updatePressure(system, state);
  return relativeChange(system, state, increment, rule.speed);
}

/** Solves the present linearisation; further steps with the same factor remove what is left of the divergence. */
function solveLinear(
  system: StokesSystem,
  state: StokesState,
  factored: StokesFactor,
  rule: StopRule,
): { first: number; last: number } {
  rule.onStep?.();
  const first = advance(system, state, factored, rule);
  const aim = Math.max(rule.tolerance, 1e-2 * first);
  let change = first;
  for (let pass = 0; pass < 6 && change > aim; pass++) change = advance(system, state, factored, rule);
  return { first, last: change };
}

/**
 * Brings a state with the wanted boundary values to equilibrium.
 * @param state start, overwritten by the solution
 * @param rule when to stop
 */
export function solveStokes(system: StokesSystem, state: StokesState, law: ViscosityLaw, rule: StopRule): Convergence {
  const linear = law.model === 'newtonian';
  let iterations = 0;
  let change = Number.POSITIVE_INFINITY;
  updateStress(system, state, law, rule.rate, true);
  while (iterations < rule.maxIterations && !(change < rule.tolerance)) {
    rule.onStep?.();
    const factored = factorStokes(system, state, rule.onStep);
    if (!factored.factor.sound) break;
    iterations++;
    const { first, last } = solveLinear(system, state, factored, rule);
    change = linear ? last : first;
    if (!linear) updateStress(system, state, law, rule.rate, false);
  }
  const imbalance = stokesResidual(system, state).imbalance / rule.flux;
  const converged = change < rule.tolerance && imbalance < 1e-4;
  return { converged, iterations, residual: change, imbalance };
}
