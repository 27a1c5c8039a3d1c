import { describe, expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { regionIssues } from '../../../core/flow/tip/regionIssues.ts';
import { createFieldCache } from '../../../core/path/fieldCache.ts';
import { type HeadField, headField } from '../../../core/path/headField.ts';
import { headRegion } from '../../../core/path/headRegion.ts';
import { headOlder, headTimeAtoms, headTimeScale } from '../../../core/path/headTimes.ts';
import { drivenPoint } from '../../../core/prediction/drivenPoint.ts';
import { createMachine } from '../../../core/prediction/machine.ts';
import type { Project, Revision } from '../../../core/project/schema.ts';
import { meanTime } from '../../../core/residence/atoms.ts';
import { demoC } from '../../helpers/edgeProjects.ts';
import { exampleNames, expectOk, loadDesign, loadExample } from '../../helpers/projects.ts';

const changedC = (change: (revision: Revision, project: Project) => void) =>
  expectOk(validateDesign(demoC(change), 'C'));

/** Volume between the walls, over bore radius³, by straight pieces. */
function wallVolume(outer: readonly { z: number; r: number }[]): number {
  return outer.slice(1).reduce((sum, b, i) => {
    const a = outer[i] ?? b;
    return sum + (Math.PI * (b.z - a.z) * (a.r ** 2 + a.r * b.r + b.r ** 2)) / 3;
  }, 0);
}

describe('region', () => {
  for (const name of exampleNames) {
    for (const { id } of loadExample(name).revisions) {
      test(`${name} ${id}: can be solved`, () => {
        const design = loadDesign(name, id);
        const { region, unit, inlet } = headRegion(design);
        expect(regionIssues(region)).toEqual([]);
        const end = region.outer[region.outer.length - 1];
        const nozzle = design.nozzle.segments.reduce((sum, { length }) => sum + length, design.barrel.length);
        expect(inlet + (end?.z ?? 0) * unit).toBeCloseTo(nozzle, 9);
      });
    }
  }

  test('a pin, a blunted tip and a pin as thick as the body', () => {
    const withPin = (pinDiameterMm: number, pinLengthMm: number) =>
      headRegion(
        changedC((revision) => {
          revision.screw.tip = { kind: 'cone', includedAngleDeg: 90, pinDiameterMm, pinLengthMm };
        }),
      ).region;
    expect(withPin(3, 2).pin).toEqual({ radius: 3 / 14, length: expect.closeTo(2 / 7, 6) });
    expect(withPin(3, 0).pin?.length).toBeGreaterThan(0);
    const thick = withPin(10.4, 1);
    expect(thick.pin).toBeUndefined();
    expect(thick.tip.kind).toBe('flat');
    for (const region of [withPin(3, 2), withPin(3, 0), thick]) expect(regionIssues(region)).toEqual([]);
  });

  test('a last step gets a short cylinder', () => {
    const design = changedC((revision) => {
      revision.nozzle.segments.push({ name: 'lip', lengthMm: 0, startDiameterMm: 1.2, endDiameterMm: 1 });
    });
    const { region } = headRegion(design);
    expect(regionIssues(region)).toEqual([]);
    expect(region.outer[region.outer.length - 1]?.r).toBeCloseTo(1 / 14, 9);
  });
});

describe('solved head', () => {
  const newtonianHead = (rpm: number, cache = createFieldCache()) => {
    const design = changedC((revision, project) => {
      project.process.screwSpeedRpm = rpm;
      for (const material of project.materials) {
        material.rheology = {
          model: 'newtonian',
          viscosityPaS: { value: 200, source: 'made up for a test', status: 'invented' },
          shift: { kind: 'none' },
        };
        delete material.filler;
      }
      revision.drive.motorCurve = [
        { speedRpm: 0, torqueNm: 900 },
        { speedRpm: 20000, torqueNm: 900 },
      ];
    });
    const machine = createMachine(design, 8);
    const { state } = drivenPoint(machine).point;
    const head = headField(machine, state, cache);
    if (!('field' in head)) throw new Error(head.why);
    return { head, state, cache, machine };
  };

  test('Newtonian: one field for every speed, close to the formulas, and its ages scale with the flow', () => {
    const slow = newtonianHead(5);
    const fast = newtonianHead(10, slow.cache);
    expect(slow.cache.head.misses).toBe(1);
    expect(fast.head.pressureFactor).toBeCloseTo(slow.head.pressureFactor, 6);
    expect(Math.abs(slow.head.pressureFactor - 1)).toBeLessThan(0.05);
    expect(slow.head.timeUnit / fast.head.timeUnit).toBeCloseTo(fast.state.volumeFlow / slow.state.volumeFlow, 9);
  });

  test('volume is that between the walls; distribution keeps the mean; nothing is older than for ever', () => {
    const { head }: { head: HeadField } = newtonianHead(10);
    const { region } = head.region;
    const screw = region.annulusLength * Math.PI * region.screwRadius ** 2;
    const cone = (Math.PI * region.screwRadius ** 3) / Math.tan(Math.PI / 6) / 3;
    expect(head.field.volume).toBeCloseTo(wallVolume(region.outer) - screw - cone, 3);
    const atoms = headTimeAtoms(head, 12);
    expect(meanTime(atoms)).toBeCloseTo(12, 9);
    expect(atoms.share.reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
    const scale = headTimeScale(head, 12);
    expect(headOlder(head, scale, 0)).toBeCloseTo(1, 2);
    expect(headOlder(head, scale, 36)).toBeCloseTo(head.field.statistics?.fractionOver3 ?? 0, 2);
    expect(headOlder(head, scale, 1e6)).toBe(0);
  });
});
