/** Goal seek: batches of candidates, global first, then from the best ones step by step. */

import { directBatches } from './direct.ts';
import { compareMerit, type Merit, meritOf, objectiveScale, penalised } from './merit.ts';
import { onStepWithin } from './steps.ts';
import type { Evaluated, SearchChange, SeekBatch, SeekInput, SeekSpec } from './types.ts';

/** Share of the budget for the global phase. */
const globalShare = 0.65;

/** Iterations without a new candidate after which the global phase has nothing more to ask within makeable steps. */
const idleIterations = 6;

/** Places that the local phase starts from. */
const starts = 3;

/** First stride of the local phase, as a share of an input's range. */
const firstStride = 1 / 9;

/** What is known of a candidate. */
interface Known {
  readonly values: readonly number[];
  readonly merit: Merit;
}

/** Candidates by their values, and how many may still be evaluated. */
interface Ledger {
  readonly spec: SeekSpec;
  readonly scale: number;
  readonly known: Map<string, Known>;
  left: number;
}

type Seek<T> = Generator<SeekBatch, T, readonly Evaluated[]>;

const keyOf = (values: readonly number[]): string => values.join(' ');

/** Values at a point of the unit cube, on makeable steps. */
const valuesAt = (inputs: readonly SeekInput[], at: readonly number[]): readonly number[] =>
  inputs.map(({ low, high, step }, i) => onStepWithin(low + (at[i] ?? 0) * (high - low), step, low, high));

const changesOf = (inputs: readonly SeekInput[], values: readonly number[]): readonly SearchChange[] =>
  inputs.map(({ input }, i) => ({ input, value: values[i] ?? 0 }));

/** Evaluates those that are new, within the budget; false where the budget ended before all were. */
function* learn(ledger: Ledger, phase: SeekBatch['phase'], points: readonly (readonly number[])[]): Seek<boolean> {
  const fresh = new Map<string, readonly number[]>();
  for (const values of points) if (!ledger.known.has(keyOf(values))) fresh.set(keyOf(values), values);
  const wanted = [...fresh.values()];
  const taken = wanted.slice(0, ledger.left);
  if (taken.length > 0) {
    const found = yield { phase, candidates: taken.map((values) => changesOf(ledger.spec.inputs, values)) };
    ledger.left -= taken.length;
    taken.forEach((values, i) => {
      const design = found[i];
      if (design) ledger.known.set(keyOf(values), { values, merit: meritOf(ledger.spec, ledger.scale, design) });
    });
  }
  return taken.length === wanted.length;
}

/** Divides the whole range until its share of the budget is spent or nothing new is asked for. */
function* searchWide(ledger: Ledger, reserve: number): Seek<void> {
  const { inputs } = ledger.spec;
  const batches = directBatches(inputs.length);
  let asked = batches.next().value;
  for (let idle = 0; idle < idleIterations && ledger.left > reserve; ) {
    const before = ledger.known.size;
    const points = asked.map((at) => valuesAt(inputs, at));
    if (!(yield* learn(ledger, 'global', points))) return;
    idle = ledger.known.size === before ? idle + 1 : 0;
    const cost = (values: readonly number[]) => {
      const known = ledger.known.get(keyOf(values));
      return known ? penalised(known.merit) : 0;
    };
    asked = batches.next(points.map(cost)).value;
  }
}

/** Distance of two candidates: the largest share of a range that an input differs by. */
export const apart = (inputs: readonly SeekInput[], a: readonly number[], b: readonly number[]): number =>
  Math.max(...inputs.map(({ low, high }, i) => Math.abs((a[i] ?? 0) - (b[i] ?? 0)) / (high - low || 1)));

/** The best candidates that lie apart from each other. */
function bestApart({ spec, known }: Ledger, count: number, distance: number): readonly Known[] {
  const ranked = [...known.values()].sort((a, b) => compareMerit(a.merit, b.merit));
  const chosen: Known[] = [];
  for (const one of ranked) {
    if (chosen.length === count || !Number.isFinite(one.merit.beyond)) break;
    if (chosen.every((other) => apart(spec.inputs, one.values, other.values) >= distance)) chosen.push(one);
  }
  return chosen;
}

/** Neighbours of a candidate at strides of whole steps, one input at a time, and both ways along the last move. */
function neighbours(
  inputs: readonly SeekInput[],
  at: readonly number[],
  strides: readonly number[],
): readonly (readonly number[])[] {
  return inputs.flatMap(({ low, high, step }, i) =>
    [-1, 1].map((way) =>
      at.map((value, k) => (k === i ? onStepWithin(value + way * (strides[i] ?? 1) * step, step, low, high) : value)),
    ),
  );
}

/** Walks from a candidate to the best neighbour until no neighbour one step away is better. */
function* walk(ledger: Ledger, start: Known): Seek<void> {
  const { inputs } = ledger.spec;
  let here = start;
  let strides = inputs.map(({ low, high, step }) => Math.max(1, Math.round((firstStride * (high - low)) / step)));
  for (;;) {
    const around = neighbours(inputs, here.values, strides);
    if (!(yield* learn(ledger, 'local', around))) return;
    const found = around.flatMap((values) => ledger.known.get(keyOf(values)) ?? []);
    const best = found.reduce((a, b) => (compareMerit(b.merit, a.merit) < 0 ? b : a), here);
    if (best !== here) {
      const ahead = inputs.map(({ low, high, step }, i) => {
        const move = (best.values[i] ?? 0) - (here.values[i] ?? 0);
        return onStepWithin((best.values[i] ?? 0) + move, step, low, high);
      });
      here = best;
      if (!(yield* learn(ledger, 'local', [ahead]))) return;
      const further = ledger.known.get(keyOf(ahead));
      if (further && compareMerit(further.merit, here.merit) < 0) here = further;
    } else if (strides.every((stride) => stride === 1)) return;
    else strides = strides.map((stride) => Math.max(1, Math.floor(stride / 2)));
  }
}

/**
 * A goal seek as batches of candidates. All of a batch may be evaluated at once, in any order and place; what is asked
 * next depends on the values alone, so that the result is the same for any number of workers.
 * @param base the present design, evaluated
 * @yields batches; takes the designs in the batch's order. Ends when the budget is spent or nothing better is a step away.
 * Global phase: DIRECT with an exact penalty; local phase: pattern search on makeable steps (Hooke and Jeeves 1961).
 */
export function* seekGoal(spec: SeekSpec, base: Evaluated): Seek<void> {
  const ledger: Ledger = { spec, scale: objectiveScale(spec, base), known: new Map(), left: spec.budget };
  // the present design first, where it lies within the bounds
  const here = spec.inputs.map(({ value, low, high, step }) => onStepWithin(value, step, low, high));
  if (!(yield* learn(ledger, 'global', [here]))) return;
  yield* searchWide(ledger, Math.floor((1 - globalShare) * spec.budget));
  for (const start of bestApart(ledger, starts, 0.15)) yield* walk(ledger, start);
}
