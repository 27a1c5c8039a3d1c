/** How good a candidate is: its objective, and how far beyond its limits it lies. */

import { figureOf } from './figures.ts';
import type { Evaluated, LimitState, SeekLimit, SeekSpec } from './types.ts';

/**
 * Cost of a limit whose figure has no number, relative to its bound: beyond anything measured, below a hole. It orders
 * candidates and is never shown.
 */
const unknownCost = 1e6;

/** Weight of going beyond a limit against the objective; 1 = a whole objective lost for a whole limit. */
const penaltyWeight = 10;

/**
 * What a design that is refused or delivers nothing costs: above every penalty, as those grow with the logarithm alone
 * (ten limits without a number come to 10 log(1 + 1e7) = 161).
 */
const holeCost = 250;

/** A limit closer than this to its figure binds, relative to the bound. */
const bindingShare = 0.03;

/** Relative distance of a figure beyond its bound; 0 where it is kept, null where there is no number to tell by. */
function beyondOf({ figure, sense, bound }: SeekLimit, value: number | null): number | null {
  if (value === null) return figureOf(figure).noneKeeps ? 0 : null;
  const over = sense === 'atMost' ? value - bound : bound - value;
  return over > 0 ? over / (Math.abs(bound) || 1) : 0;
}

/** Kept with room, kept but only just, or not kept. A bound of nothing cannot be approached in proportion. */
function stateOf(bound: number, value: number | null, beyond: number | null): LimitState['state'] {
  if (beyond !== 0) return 'unmet';
  const room = value === null || bound === 0 ? 1 : Math.abs(value / bound - 1);
  return room <= bindingShare ? 'binds' : 'kept';
}

/** Every limit of a search at a design. */
export function limitStates(limits: readonly SeekLimit[], design: Evaluated): readonly LimitState[] {
  return limits.map((limit) => {
    const { label, unit } = figureOf(limit.figure);
    const value = design.figures[limit.figure] ?? null;
    const beyond = beyondOf(limit, value);
    return { ...limit, label, unit, value, beyond, state: stateOf(limit.bound, value, beyond) };
  });
}

/** A design's standing. Less is better in both. */
export interface Merit {
  /** sum of the relative distances beyond limits; 0 = all are kept; a million for each that has no number; infinite for a hole */
  readonly beyond: number;
  /** relative to the present design, sign turned where most is wanted; infinite where unknown */
  readonly objective: number;
}

/** Scale of an objective: the present design's, or 1. */
export const objectiveScale = ({ objective }: SeekSpec, base: Evaluated): number =>
  Math.abs(base.figures[objective.figure] ?? 0) || 1;

/** Standing of a design in a search. */
export function meritOf(spec: SeekSpec, scale: number, design: Evaluated): Merit {
  if (design.hole !== null) return { beyond: Number.POSITIVE_INFINITY, objective: Number.POSITIVE_INFINITY };
  const value = design.figures[spec.objective.figure] ?? null;
  const beyond = limitStates(spec.limits, design).reduce((sum, { beyond: by }) => sum + (by ?? unknownCost), 0);
  if (value === null) return { beyond, objective: Number.POSITIVE_INFINITY };
  return { beyond, objective: ((spec.objective.sense === 'most' ? -1 : 1) * value) / scale };
}

/**
 * One number to minimise: the objective with what lies beyond limits added. Close to a limit it grows in proportion
 * (exact penalty: Nocedal and Wright, Numerical Optimization, 17.2: the minimum is that of the limited problem where the
 * weight is large enough; candidates are ranked by `compareMerit` all the same, so that a weight too small only costs
 * evaluations). Further off it grows with the logarithm, so that there is a slope at any distance and the worst design
 * that runs still costs less than one that does not.
 */
export function penalised({ beyond, objective }: Merit): number {
  if (!Number.isFinite(beyond)) return holeCost;
  // a present design near nothing must not blow the objective up beyond every limit
  const known = Number.isFinite(objective) ? Math.sign(objective) * Math.log1p(Math.abs(objective)) : 10;
  return Math.min(holeCost - 1, known + penaltyWeight * Math.log1p(beyond));
}

/** Orders by limits first, then by the objective. */
export function compareMerit(a: Merit, b: Merit): number {
  const closer = (p: number, q: number) => (p === q ? 0 : p < q ? -1 : 1);
  return closer(a.beyond, b.beyond) || closer(a.objective, b.objective);
}
