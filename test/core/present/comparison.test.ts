import { describe, expect, test } from 'vitest';
import { comparePredictions } from '../../../core/compare/compare.ts';
import { predict } from '../../../core/prediction/predict.ts';
import { comparisonJson, comparisonTable } from '../../../core/present/comparison.ts';
import { nonFinite } from '../../helpers/finite.ts';
import { loadDesign } from '../../helpers/projects.ts';

const designs = ['A', 'C'].map((id) => loadDesign('demo', id));
const predictions = designs.map((design) => predict(design, { curvePoints: 3 }));
const comparison = comparePredictions(predictions);
const json = comparisonJson(comparison, predictions, designs);

describe('a comparison for other programs', () => {
  test('states values in the unit of their row, the same that the text shows', () => {
    const flow = json.rows.find(({ id }) => id === 'volumeFlow');
    expect(flow?.unit).toBe('mm³/s');
    expect(flow?.values[1]?.value).toBeCloseTo((predictions[1]?.output.volumeFlow ?? 0) * 1e9, 3);
    for (const { unit, values } of json.rows) {
      for (const { value, text } of values) {
        if (value === null) continue;
        expect(Number.parseFloat(text)).toBeCloseTo(Number(value.toPrecision(3)), 6);
        if (unit !== '') expect(text.endsWith(unit)).toBe(true);
      }
    }
    expect(nonFinite(json)).toEqual([]);
  });

  test('says what it rests on and what is invented, in text too', () => {
    expect(json.projectInvented).toBe(true);
    expect(json.revisions.map(({ fields, material }) => [fields, material?.invented])).toEqual([
      ['formula', true],
      ['formula', true],
    ]);
    const text = comparisonTable(comparison, predictions, designs);
    for (const note of json.notes) expect(text).toContain(note);
    expect(json.notes.filter((note) => note.startsWith('Formula estimate'))).toHaveLength(1);
    expect(json.notes[0]).toMatch(/invented/);
  });
});
