/** What a prediction rests on, in words: solved fields or formulas, invented data or not. */

import type { Design } from '../design/types.ts';
import type { Prediction } from '../prediction/types.ts';

/** Whether the numbers rest on solved fields; where nothing flows there are none, whatever was asked for. */
export const fieldsOf = (prediction: Prediction): 'solved' | 'formula' =>
  prediction.options.fields === 'solved' && prediction.fields !== null ? 'solved' : 'formula';

/** What the numbers rest on, and what that leaves out. */
export function fieldsNote(prediction: Prediction): string {
  const { output, options } = prediction;
  if (fieldsOf(prediction) === 'solved') return 'Fields solved in channel, tip and nozzle.';
  const estimate = 'Formula estimate: corners, tip and nozzle are not looked into.';
  if (!output.flows) return `Nothing flows: what melt would do cannot be said. ${estimate}`;
  return options.fields === 'solved' ? `No field could be solved. ${estimate}` : estimate;
}

/** Sentences that must stand wherever figures of invented machines or materials are shown; none where all is real. */
export function inventedNotes(designs: readonly Design[]): readonly string[] {
  const materials = new Set(designs.filter((d) => d.material.invented).map((d) => d.material.name));
  return [
    ...(designs.some((d) => d.invented) ? ['This project is invented: no such machine was built or measured.'] : []),
    ...[...materials].map((name) => `Invented material data: ${name}.`),
  ];
}

/** Whether weighed trials have set factors on the model, and which; one sentence. */
export function calibrationNote({ calibration }: Prediction): string {
  if (calibration === null) return 'Not calibrated: the model as it stands.';
  const { name, trials } = calibration;
  const count = `${trials.length} trial${trials.length === 1 ? '' : 's'}`;
  return `Calibrated by “${name}”, ${count}${trials.length > 0 ? `: ${trials.join(', ')}` : ''}.`;
}
