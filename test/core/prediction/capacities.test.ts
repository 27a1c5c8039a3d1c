import { expect, test } from 'vitest';
import { predict } from '../../../core/prediction/predict.ts';
import { predictionTable } from '../../../core/present/table.ts';
import { loadDesign } from '../../helpers/projects.ts';

test('where granules do not enter, the drive is not told as a limit of its own', () => {
  const prediction = predict(loadDesign('pla-pellet-misfit'), { curvePoints: 0 });
  expect(prediction.limit).toBe('grainFit');
  for (const { kind, volumeFlow, basis } of prediction.capacities.filter(({ kind }) =>
    /torque|motorSpeed/.test(kind),
  )) {
    expect(volumeFlow, kind).toBe(Number.POSITIVE_INFINITY);
    expect(basis.doubt).toContain('not known');
  }
  const text = predictionTable(prediction);
  expect(text).not.toContain('back with 0 N');
  expect(text).not.toContain('while it runs');
  expect(text).not.toContain('-8.8');
});
