/** One candidate: changed, validated, predicted. */

import { validateDesign } from '../design/validate.ts';
import type { FieldCache } from '../path/fieldCache.ts';
import { predict } from '../prediction/predict.ts';
import type { Prediction } from '../prediction/types.ts';
import { capacityNames } from '../present/groups.ts';
import type { Project } from '../project/schema.ts';
import type { Issue } from '../result.ts';
import { withChanges } from './changes.ts';
import { figuresOf } from './figures.ts';
import type { Evaluated, SearchChange } from './types.ts';

/** How a candidate is evaluated. */
export interface EvaluateOptions {
  readonly fields: Prediction['options']['fields'];
}

/** An issue without its place in the file, which a candidate has none of. */
const reasonOf = ({ message, value, allowed }: Issue): string =>
  [message, value && `Found: ${value}.`, allowed && `Allowed: ${allowed}.`].filter(Boolean).join(' ');

const refused = (changes: readonly SearchChange[], fields: Evaluated['fields'], hole: string): Evaluated => ({
  changes,
  figures: {},
  findings: null,
  limit: null,
  hole,
  fields,
});

/**
 * Evaluates one candidate.
 * @param changes to the revision, units of the file
 * @param options estimate by formulas (about a tenth of a second) or solved fields (seconds)
 * @param cache solved fields kept by the caller from run to run
 * @returns figures (SI), or the reason why there are none; never throws
 */
export function evaluateCandidate(
  project: Project,
  revisionId: string,
  changes: readonly SearchChange[],
  { fields }: EvaluateOptions,
  cache?: FieldCache,
): Evaluated {
  const made = validateDesign(withChanges(project, revisionId, changes), revisionId);
  if (!made.ok) return refused(changes, fields, made.issues.slice(0, 2).map(reasonOf).join(' '));
  try {
    const prediction = predict(made.value, { fields, curvePoints: 0 }, undefined, cache);
    return {
      changes,
      figures: figuresOf(prediction, made.value),
      findings: prediction.findings.filter(({ severity }) => severity === 'stop' || severity === 'warn').length,
      limit: prediction.limit,
      hole: prediction.output.flows ? null : `Nothing comes out; limited by ${capacityNames[prediction.limit]}.`,
      fields,
    };
  } catch (fault) {
    // one design at the edge of a model must not cost a search of hundreds
    return refused(changes, fields, `The prediction broke off: ${fault instanceof Error ? fault.message : fault}`);
  }
}
