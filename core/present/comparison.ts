/** A comparison for reading and for other programs: with units, what it rests on, and what is invented. */

import { type Comparison, compareTable } from '../compare/compare.ts';
import { comparedQuantities } from '../compare/quantities.ts';
import type { Design } from '../design/types.ts';
import type { Prediction } from '../prediction/types.ts';
import { fromSi } from '../units.ts';
import { fieldsNote, fieldsOf, inventedNotes } from './foundation.ts';
import type { ComparisonJson } from './jsonTypes.ts';
import { orNull, rounded } from './shown.ts';

/** What every prediction rests on, once where it is the same for all. */
const notesOf = (predictions: readonly Prediction[]): readonly string[] => {
  const notes = predictions.map(fieldsNote);
  return new Set(notes).size === 1 ? notes.slice(0, 1) : predictions.map((p, i) => `${p.revisionId}: ${notes[i]}`);
};

/**
 * The comparison as plain JSON: values in the unit of their row.
 * @param predictions in the order of comparison.revisions
 * @param designs of the predictions
 */
export function comparisonJson(
  comparison: Comparison,
  predictions: readonly Prediction[],
  designs: readonly Design[],
): ComparisonJson {
  return {
    revisions: comparison.revisions.map((revision, i) => {
      const [prediction, design] = [predictions[i], designs[i]];
      return {
        ...revision,
        fields: prediction ? fieldsOf(prediction) : 'formula',
        flows: prediction?.output.flows ?? false,
        converged: prediction?.converged ?? false,
        material: design
          ? { id: design.material.id, name: design.material.name, invented: design.material.invented }
          : null,
      };
    }),
    projectInvented: designs.some(({ invented }) => invented),
    notes: [...inventedNotes(designs), ...notesOf(predictions)],
    rows: comparison.rows.map((row) => {
      const unit = comparedQuantities.find(({ id }) => id === row.id)?.unit ?? '';
      const show = (si: number) => rounded(unit === '' ? si : fromSi(si, unit));
      return {
        id: row.id,
        label: row.label,
        unit,
        modelError: row.modelError,
        values: row.values.map(({ value, change, ...rest }) => ({
          ...rest,
          value: orNull(value, show),
          change: orNull(change),
        })),
      };
    }),
    account: comparison.account,
    answer: comparison.answer,
  };
}

/** The comparison as text for a terminal, with what it rests on and what is invented. */
export const comparisonTable = (
  comparison: Comparison,
  predictions: readonly Prediction[],
  designs: readonly Design[],
): string => [...inventedNotes(designs), ...notesOf(predictions), '', compareTable(comparison)].join('\n');
