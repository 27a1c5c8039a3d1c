/** One revision to predict, as plain data that can be sent to a thread: a design carries functions and cannot be sent. */

import {
  type FieldCache,
  issueText,
  type Prediction,
  type Project,
  predict,
  validateDesign,
} from '../../core/index.ts';

/** A revision of a project, and whether fields are solved. */
export interface PredictTask {
  readonly project: Project;
  readonly revisionId: string;
  readonly fields: Prediction['options']['fields'];
}

/** Predicts a revision that has been validated before; throws where it is not valid after all. */
export function predictTask({ project, revisionId, fields }: PredictTask, cache: FieldCache): Prediction {
  const design = validateDesign(project, revisionId);
  if (!design.ok) throw new Error(design.issues.map(issueText).join('\n'));
  return predict(design.value, { fields, warmUp: true }, undefined, cache);
}
