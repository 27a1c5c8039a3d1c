/** One worked-out machine whose results tests may replace. */

import type { Design } from '../../../core/design/types.ts';
import type { FindingContext, FindingRule, Found } from '../../../core/findings/context.ts';
import { drivenPoint } from '../../../core/prediction/drivenPoint.ts';
import { createMachine } from '../../../core/prediction/machine.ts';
import { predict } from '../../../core/prediction/predict.ts';
import type { Prediction } from '../../../core/prediction/types.ts';
import { loadDesign } from '../../helpers/projects.ts';

/** Design and results of an example, as rules see them. */
export function contextOf(name: string, revision?: string): FindingContext {
  const design = loadDesign(name, revision);
  const machine = createMachine(design, 4);
  const prediction = predict(design, { curvePoints: 0, stationsPerTurn: 4 });
  return { design, machine, driven: drivenPoint(machine), prediction };
}

/** The context with other results of one stage. */
export function withResult<K extends 'drive' | 'print' | 'output'>(
  context: FindingContext,
  stage: K,
  change: Partial<Prediction[K]>,
): FindingContext {
  const { prediction } = context;
  return { ...context, prediction: { ...prediction, [stage]: { ...prediction[stage], ...change } } };
}

/** The context with parts of its design replaced. */
export const withDesign = (context: FindingContext, change: Partial<Design>): FindingContext => ({
  ...context,
  design: { ...context.design, ...change },
});

/** What one rule of a list says; fails where the list does not have it. */
export function said(rules: readonly FindingRule[], code: string, context: FindingContext): Found | null {
  const rule = rules.find((each) => each.code === code);
  if (!rule) throw new Error(`no rule ${code}`);
  return rule.check(context);
}
