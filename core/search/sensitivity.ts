/** What a maker's step on each varied input does to a candidate. */

import { figureOf } from './figures.ts';
import { limitStates } from './merit.ts';
import type { Evaluated, SearchChange, SeekSpec, SensitivityRow } from './types.ts';

const moved = (changes: readonly SearchChange[], input: string, by: number): readonly SearchChange[] =>
  changes.map((change) =>
    change.input === input ? { input, value: Number((change.value + by).toPrecision(10)) } : change,
  );

/** Candidates to be evaluated: for every input of a search one step down, then one step up. */
export const sensitivityCandidates = (spec: SeekSpec, design: Evaluated): readonly (readonly SearchChange[])[] =>
  spec.inputs.flatMap(({ input, step }) => [-step, step].map((by) => moved(design.changes, input, by)));

/**
 * The table.
 * @param found designs of sensitivityCandidates, in their order
 */
export function sensitivityRows(
  spec: SeekSpec,
  design: Evaluated,
  found: readonly Evaluated[],
): readonly SensitivityRow[] {
  const { figure } = spec.objective;
  const here = design.figures[figure] ?? null;
  // a figure may be limited from both sides, so that the limit counts and not the figure
  const kept = limitStates(spec.limits, design).map(({ beyond }) => beyond === 0);
  const sideOf = (one: Evaluated | undefined, input: string): SensitivityRow['sides'][number] => {
    const value = one?.changes.find((change) => change.input === input)?.value ?? Number.NaN;
    const objective = one?.figures[figure] ?? null;
    const change = objective !== null && here !== null && here !== 0 ? objective / here - 1 : null;
    const states = one && one.hole === null ? limitStates(spec.limits, one) : [];
    const breaks = states.filter(({ beyond }, i) => beyond !== 0 && kept[i]);
    return {
      value,
      hole: one?.hole ?? null,
      objective,
      change,
      breaks: breaks.map((state) => figureOf(state.figure).label),
    };
  };
  return spec.inputs.map(({ input, label, unit, step }, i) => ({
    input,
    label,
    unit,
    step,
    sides: [sideOf(found[2 * i], input), sideOf(found[2 * i + 1], input)],
  }));
}
