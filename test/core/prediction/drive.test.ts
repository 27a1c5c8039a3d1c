import { describe, expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { predict } from '../../../core/prediction/predict.ts';
import type { Prediction } from '../../../core/prediction/types.ts';
import { predictionJson } from '../../../core/present/json.ts';
import type { Project, Revision } from '../../../core/project/schema.ts';
import { demoC } from '../../helpers/edgeProjects.ts';
import { nonFinite } from '../../helpers/finite.ts';
import { expectOk } from '../../helpers/projects.ts';

const changed = (change: (revision: Revision, project: Project) => void): Prediction =>
  predict(expectOk(validateDesign(demoC(change), 'C')), { curvePoints: 0 });
const torqueTimes = (factor: number) => (revision: Revision) => {
  for (const point of revision.drive.motorCurve) point.torqueNm *= factor;
};
const finding = ({ findings }: Prediction, code: string) => findings.find((each) => each.code === code);

describe('a drive that cannot turn the screw', () => {
  test.each([
    ['no torque', torqueTimes(0)],
    ['a thirtieth of it', torqueTimes(1 / 30)],
  ])('%s: stands, delivers nothing and says so', (_, change) => {
    const prediction = changed(change);
    const { output, drive, heat, print } = prediction;
    expect(output).toMatchObject({ flows: false, volumeFlow: 0, screwSpeed: 0, headPressure: 0 });
    expect(prediction.limit).toBe('torque');
    expect(drive.power).toBe(0);
    expect(drive.motorSpeed).toBe(0);
    expect(heat.dissipation).toBeLessThan(0.05);
    expect(print.margin).toBe(0);
    expect(finding(prediction, 'over-torque')?.saw).toContain('cannot turn the screw at any useful speed');
    expect(nonFinite(predictionJson(prediction))).toEqual([]);
  });
});

test('held by torque, the output does not depend on how much faster the screw is set', () => {
  const outputs = [15, 20, 30, 45].map((rpm) => {
    const prediction = changed((revision, project) => {
      // the same torque at every speed, so that only the set speed differs
      for (const point of revision.drive.motorCurve) point.torqueNm = 0.14;
      project.process.screwSpeedRpm = rpm;
    });
    expect(prediction.limit).toBe('torque');
    return prediction.output.volumeFlow;
  });
  for (const output of outputs) expect(Math.abs(output / outputs[0] - 1)).toBeLessThan(0.01);
});

describe('back pressure above what the screw can build', () => {
  const against = (factor: number) =>
    changed((revision, project) => {
      torqueTimes(factor)(revision);
      project.process.backPressureMPa = 50;
    });

  test.each([1, 10])('is named as the reason, whether the drive would limit too or not (torque x %d)', (factor) => {
    const prediction = against(factor);
    expect(prediction.limit).toBe('pumping');
    expect(prediction.output.flows).toBe(false);
    expect(prediction.output.headPressure).toBe(50e6);
    expect(prediction.drive.thrust).toBeGreaterThan(0);
    expect(finding(prediction, 'cannot-pump')?.saw).toContain('50 MPa');
  });
});

describe('pressure at which the motor stalls', () => {
  test('lies between running and blocked, and at running where the motor has nothing to spare', () => {
    // a motor between what running and what blocking asks for
    const { drive, output } = changed((revision) => {
      torqueTimes(0.6)(revision);
      revision.drive.usableTorqueShare = 0.9;
    });
    expect(drive.stallPressure ?? 0).toBeGreaterThan(output.headPressure);
    expect(drive.stallPressure ?? 0).toBeLessThan(drive.blockedPressure);
    const tight = changed((revision) => {
      torqueTimes(0.41)(revision);
      revision.drive.usableTorqueShare = 1;
    });
    expect(tight.limit).toBe('torque');
    const spare = (tight.drive.stallPressure ?? 0) / tight.output.headPressure;
    expect(spare).toBeGreaterThanOrEqual(1);
    expect(spare).toBeLessThan(1.02);
  });

  test('there is none where the motor holds the blocked pressure', () => {
    const strong = changed(torqueTimes(100));
    expect(strong.drive.stallPressure).toBeNull();
    expect(finding(strong, 'blocked-pressure')?.saw).toContain('the motor holds it');
  });
});
