/** What a prediction rests on, in words: solved fields or formulas, invented data or not. */

import type { Design } from '../design/types.ts';
import type { Prediction } from '../prediction/types.ts';

/** Whether the numbers rest on solved fields; where nothing flows there are none, whatever was asked for. */
export const fieldsOf = (prediction: Prediction): 'solved' | 'formula' =>
  prediction.options.fields === 'solved' && prediction.fields !== null ? 'solved' : 'formula';

/** One sentence about fieldsOf. */
export function fieldsNote(prediction: Prediction): string {
  if (fieldsOf(prediction) === 'solved') return 'Fields solved in channel, tip and nozzle.';
  return prediction.options.fields === 'solved'
    ? 'Nothing flows, so no fields were solved.'
    : 'Formula estimate: corners, tip and nozzle are not looked into.';
}

/** Sentences that must stand wherever figures of invented machines or materials are shown; none where all is real. */
export function inventedNotes(designs: readonly Design[]): readonly string[] {
  const materials = new Set(designs.filter((d) => d.material.invented).map((d) => d.material.name));
  return [
    ...(designs.some((d) => d.invented) ? ['This project is invented: no such machine was built or measured.'] : []),
    ...[...materials].map((name) => `Invented material data: ${name}.`),
  ];
}
