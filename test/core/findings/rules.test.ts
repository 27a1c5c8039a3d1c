import { describe, expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { findingRules } from '../../../core/findings/rules.ts';
import { predict } from '../../../core/prediction/predict.ts';
import type { Finding } from '../../../core/prediction/types.ts';
import type { Project, Revision } from '../../../core/project/schema.ts';
import { demoC } from '../../helpers/edgeProjects.ts';
import { expectOk, loadDesign } from '../../helpers/projects.ts';

/** The demo's revision C, changed: what is found. */
function foundIn(change: (revision: Revision, project: Project) => void): readonly Finding[] {
  return predict(expectOk(validateDesign(demoC(change), 'C')), { curvePoints: 6 }).findings;
}

const codes = (findings: readonly Finding[]) => findings.map(({ code }) => code);
const materialOf = (project: Project, revision: Revision) =>
  project.materials.find(({ id }) => id === revision.materialId) as Project['materials'][number];

const sound = foundIn(() => {});

describe('the table', () => {
  test('every code is there once, in kebab-case', () => {
    const all = findingRules.map(({ code }) => code);
    expect(new Set(all).size).toBe(all.length);
    for (const code of all) expect(code).toMatch(/^[a-z]+(-[a-z]+)*$/);
  });

  test('standing cautions are always given', () => {
    const cautions = sound.filter(({ severity }) => severity === 'caution').map(({ code }) => code);
    expect(cautions).toEqual([
      'caution-hot-melt',
      'caution-fumes',
      'caution-blocked-nozzle',
      'caution-turning-screw',
      'caution-mains-heaters',
      'caution-food',
    ]);
  });

  test('gravest first; each says what, why, what to change, and its number with its limit', () => {
    const order = ['stop', 'warn', 'note', 'caution'];
    const weights = sound.map(({ severity }) => order.indexOf(severity));
    expect(weights).toEqual([...weights].sort((a, b) => a - b));
    for (const finding of sound) {
      for (const words of [finding.saw, finding.why, finding.change, finding.where])
        expect(words.length).toBeGreaterThan(3);
      if (finding.limit !== null) expect(finding.value).not.toBeNull();
    }
  });
});

describe('a rule speaks when its limit is passed and is silent before', () => {
  const cases: readonly (readonly [string, (revision: Revision, project: Project) => void])[] = [
    ['grain-fit', (r, p) => Object.assign(materialOf(p, r).grain.d90Mm, { value: 4.5 })],
    ['hopper-arching', (r) => Object.assign(r.hopper, { outletDiameterMm: 5, agitation: 'none' })],
    ['opening-small', (r) => Object.assign(r.barrel.feedOpening, { widthMm: 4 })],
    ['granules-trickle', (r) => Object.assign(r.hopper, { gapMm: 4 })],
    ['runs-starved', (_, p) => Object.assign(p.process, { feed: { kind: 'starved', rateGPerMin: 0.5 } })],
    ['over-safe-temperature', (r, p) => Object.assign(r.nozzle, { setTempC: materialOf(p, r).maxSafeC.value + 5 })],
    ['outside-window', (r, p) => Object.assign(r.nozzle, { setTempC: materialOf(p, r).windowHighC.value + 3 })],
    ['nozzle-below-melting', (r, p) => Object.assign(r.nozzle, { setTempC: materialOf(p, r).meltingC.value - 10 })],
    [
      'softens-in-feed',
      (r) => {
        r.barrel.zones = r.barrel.zones.map((zone) =>
          zone.kind === 'cooled'
            ? { kind: 'insulated' as const, name: zone.name, startMm: zone.startMm, endMm: zone.endMm }
            : zone,
        );
        r.barrel.heatBreak = null;
      },
    ],
    [
      'heater-too-weak',
      (r) => {
        for (const zone of r.barrel.zones) if (zone.kind === 'heated') zone.maxPowerW = 1;
      },
    ],
    [
      'degrades',
      (r, p) => {
        materialOf(p, r).degradation.push({
          id: 'made-up-loss',
          observed: 'lost mass',
          order: 1,
          rateAtReferencePerS: { value: 1e-3, source: 'made up for a test', status: 'invented' },
          referenceC: 185,
          activationKJPerMol: { value: 100, source: 'made up for a test', status: 'invented' },
          validFromC: 150,
          validToC: 220,
        });
      },
    ],
    ['colour-shift', (_, p) => Object.assign(p.process, { acceptableDeltaE: 0.2 })],
    [
      'over-torque',
      (r) => {
        for (const point of r.drive.motorCurve) point.torqueNm *= 0.4;
      },
    ],
    ['over-motor-speed', (r, p) => Object.assign(p.process, { screwSpeedRpm: 1.2 * topSpeed(r) })],
    ['root-overstressed', (r) => Object.assign(r.screw.steel, { yieldMPa: 120 })],
    ['demand-not-met', (_, p) => Object.assign(p.print, { speedMmPerS: 400 })],
    ['far-above-demand', (_, p) => Object.assign(p.print, { speedMmPerS: 3 })],
    ['line-wider-than-high', (_, p) => Object.assign(p.print, { lineWidthMm: p.print.layerHeightMm * 0.8 })],
  ];

  /** Highest screw speed of a revision, rev/min. */
  const topSpeed = ({ drive }: Revision) =>
    (drive.motorCurve[drive.motorCurve.length - 1]?.speedRpm ?? 0) / drive.gearRatio;

  test.each(cases)('%s', (code, change) => {
    expect(codes(sound)).not.toContain(code);
    expect(codes(foundIn(change))).toContain(code);
  });

  test('a constant depth does not compress', () => {
    expect(codes(predict(loadDesign('demo', 'A'), { curvePoints: 0 }).findings)).toContain('no-compression');
  });

  test('thin wax drips', () => {
    expect(codes(predict(loadDesign('wax-head'), { curvePoints: 0 }).findings)).toContain('drips');
  });

  const coldZones = (revision: Revision, project: Project) => {
    for (const zone of revision.barrel.zones) {
      if (zone.kind === 'heated') zone.setTempC = materialOf(project, revision).meltingC.value - 20;
    }
  };

  test('walls and nozzle too cold to melt stop', () => {
    const cold = foundIn((revision, project) => {
      coldZones(revision, project);
      revision.nozzle.setTempC = materialOf(project, revision).meltingC.value - 20;
    });
    expect(cold.find(({ code }) => code === 'not-molten')?.severity).toBe('stop');
  });

  test('a nozzle that alone is hot leaves too few turns in the melt', () => {
    expect(codes(foundIn(coldZones))).toContain('flights-end-early');
  });

  test('where granules melt slower than the screw could pump, melting limits', () => {
    const slow = foundIn((revision, project) => {
      Object.assign(materialOf(project, revision).conductivityWPerMK, { value: 0.03 });
      revision.nozzle.segments = revision.nozzle.segments.map((segment) => ({
        ...segment,
        startDiameterMm: Math.max(segment.startDiameterMm, 4),
        endDiameterMm: Math.max(segment.endDiameterMm, 4),
      }));
      project.process.screwSpeedRpm = 40;
      for (const point of revision.drive.motorCurve) point.torqueNm *= 10;
    });
    expect(codes(slow)).toContain('melting-limits');
  });
});
