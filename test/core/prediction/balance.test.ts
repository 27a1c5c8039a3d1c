import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { predict } from '../../../core/prediction/predict.ts';
import type { Prediction } from '../../../core/prediction/types.ts';
import type { Project, Revision } from '../../../core/project/schema.ts';
import { pinned } from '../../helpers/arbitraries.ts';
import { demoC } from '../../helpers/edgeProjects.ts';
import { expectOk } from '../../helpers/projects.ts';

/** The demo's revision C with ten times the torque, so that the drive never limits, changed. */
const strong = (change: (revision: Revision, project: Project) => void): Prediction =>
  predict(
    expectOk(
      validateDesign(
        demoC((revision, project) => {
          for (const point of revision.drive.motorCurve) point.torqueNm *= 10;
          change(revision, project);
        }),
        'C',
      ),
    ),
    { curvePoints: 0 },
  );

/** Its last cone and land narrowed to a diameter, mm. */
const narrowed = (diameter: number) => (revision: Revision) => {
  const { segments } = revision.nozzle;
  const [cone, land] = segments.slice(-2);
  cone.endDiameterMm = diameter;
  land.startDiameterMm = diameter;
  land.endDiameterMm = diameter;
};

describe('balance of screw and head', () => {
  test('holds down to orifices that let out next to nothing: no more than the blocked pressure, flow always falling', () => {
    let above = Number.POSITIVE_INFINITY;
    for (const diameter of [0.4, 0.25, 0.15, 0.12, 0.1, 0.07, 0.05]) {
      const { output, drive, converged } = strong(narrowed(diameter));
      expect(converged).toBe(true);
      expect(output.headPressure).toBeLessThan(1.02 * drive.blockedPressure);
      expect(output.headPressure).toBeGreaterThan(0.7 * drive.blockedPressure);
      expect(output.volumeFlow).toBeLessThan(above);
      expect(output.volumeFlow).toBeGreaterThan(0);
      above = output.volumeFlow;
    }
  });

  test('what is left over where the melt begins is under 2 % of the head’s pressure', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.06, max: 1, noNaN: true }),
        fc.double({ min: 2, max: 40, noNaN: true }),
        (diameter, rpm) => {
          const { output, drive, converged, axial } = strong((revision, project) => {
            narrowed(diameter)(revision);
            project.process.screwSpeedRpm = rpm;
          });
          const first = axial.molten.indexOf(1);
          expect(converged).toBe(true);
          expect(axial.pressure[first]).toBeLessThan(axial.pressure[first + 1] + 0.02 * output.headPressure);
          expect(axial.pressure[first]).toBeLessThan(0.05 * output.headPressure);
          expect(output.headPressure).toBeLessThan(1.02 * drive.blockedPressure);
        },
      ),
      pinned(12),
    );
  });
});
