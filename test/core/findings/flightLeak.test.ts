import { expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { predict } from '../../../core/prediction/predict.ts';
import { demoC } from '../../helpers/edgeProjects.ts';
import { expectOk } from '../../helpers/projects.ts';

const leaking = (radialClearanceMm: number) => {
  const project = demoC((revision) => {
    revision.screw.radialClearanceMm = radialClearanceMm;
  });
  const prediction = predict(expectOk(validateDesign(project, 'C')), { curvePoints: 0 });
  const { leakFlow, volumeFlow } = prediction.output;
  return { share: leakFlow / volumeFlow, finding: prediction.findings.find(({ code }) => code === 'flight-leaks') };
};

test('a wide flight clearance is told with the leak that it costs, a usual one is not', () => {
  const usual = leaking(0.1);
  expect(usual.share).toBeLessThan(0.2);
  expect(usual.finding).toBeUndefined();
  const wide = leaking(0.25);
  expect(wide.share).toBeGreaterThan(0.2);
  expect(wide.finding).toMatchObject({ severity: 'note', limit: 0.2 });
  expect(wide.finding?.value).toBeCloseTo(wide.share, 9);
});
