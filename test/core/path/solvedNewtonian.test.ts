import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { createFieldCache } from '../../../core/path/fieldCache.ts';
import { predict } from '../../../core/prediction/predict.ts';
import type { Project, Revision } from '../../../core/project/schema.ts';
import { demoC, flightedAt } from '../../helpers/edgeProjects.ts';
import { expectOk } from '../../helpers/projects.ts';

const solved = { fields: 'solved', curvePoints: 0 } as const;

/** A melt of constant viscosity and a motor that never limits. */
function makeNewtonian(revision: Revision, project: Project, viscosity: number): void {
  for (const material of project.materials) {
    material.rheology = {
      model: 'newtonian',
      viscosityPaS: { value: viscosity, source: 'made up for a test', status: 'invented' },
      shift: { kind: 'none' },
    };
    delete material.filler;
  }
  revision.drive.motorCurve = [
    { speedRpm: 0, torqueNm: 900 },
    { speedRpm: 20000, torqueNm: 900 },
  ];
}

describe('Newtonian melt', () => {
  test('everything scales with the screw speed, and nothing is solved twice', () => {
    const cache = createFieldCache();
    const at = (rpm: number) => {
      const project = demoC((revision, changed) => {
        makeNewtonian(revision, changed, 100);
        changed.process.screwSpeedRpm = rpm;
      });
      return predict(expectOk(validateDesign(project, 'C')), solved, undefined, cache);
    };
    const slow = at(6);
    const misses = [cache.channel.misses, cache.head.misses];
    const fast = at(7);
    expect([cache.channel.misses, cache.head.misses]).toEqual(misses);
    expect(slow.limit).toBe('pumping');
    // not exactly: more melt is molten a little later
    expect(Math.abs(fast.output.volumeFlow / slow.output.volumeFlow / (7 / 6) - 1)).toBeLessThan(0.01);
    expect(slow.residence.mean / fast.residence.mean).toBeCloseTo(7 / 6, 1);
  });

  test('a constant screw pumps as the independent helical solution says (test/reference/flow/caseD.json)', () => {
    const { entries } = JSON.parse(readFileSync(new URL('../../reference/flow/caseD.json', import.meta.url), 'utf8'));
    const { inputs, rows } = entries[1];
    const project = demoC((revision, changed) => {
      makeNewtonian(revision, changed, 60);
      const bore = 1e3 * inputs.D_barrel_m;
      revision.screw.radialClearanceMm = 0;
      const section = flightedAt(revision, 0);
      const [lead, root] = [1e3 * inputs.pitch_m, 1e3 * inputs.D_root_m];
      const shape = { leadStartMm: lead, leadEndMm: lead, rootDiameterStartMm: root, rootDiameterEndMm: root };
      revision.screw.sections = [
        { ...section, ...shape, lengthMm: 160, flightWidthMm: 1e3 * inputs.flight_axial_width_m, rootFilletMm: 0 },
      ];
      revision.screw.tip = { kind: 'flat', pinDiameterMm: 0, pinLengthMm: 0 };
      revision.barrel.boreDiameterMm = bore;
      for (const segment of revision.nozzle.segments) {
        segment.startDiameterMm = Math.min(segment.startDiameterMm, bore);
        segment.endDiameterMm = Math.min(segment.endDiameterMm, bore);
      }
      for (const material of changed.materials) {
        for (const size of ['d10Mm', 'd50Mm', 'd90Mm'] as const) material.grain[size].value /= 3;
      }
    });
    const prediction = predict(expectOk(validateDesign(project, 'C')), solved, undefined, createFieldCache());
    const { axial, stations, output } = prediction;
    const end = stations.count - 1;
    const slope = (axial.pressure[end] - axial.pressure[end - 4]) / (stations.z[end] - stations.z[end - 4]);
    const speed = output.screwSpeed / inputs.N_rev_per_s;
    const closed = rows[0].dpdz_axial_Pa_per_m * speed * (60 / inputs.material.eta);
    const expected = rows[rows.length - 1].Q_m3_per_s * speed * (1 - slope / closed);
    expect(slope).toBeGreaterThan(0.02 * closed);
    expect(Math.abs(output.volumeFlow / expected - 1)).toBeLessThan(0.01);
  });
});
