import { describe, expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { findingRules, findingsOf } from '../../../core/findings/rules.ts';
import { drivenPoint } from '../../../core/prediction/drivenPoint.ts';
import { createMachine } from '../../../core/prediction/machine.ts';
import { predict } from '../../../core/prediction/predict.ts';
import type { Finding } from '../../../core/prediction/types.ts';
import type { Project, Revision } from '../../../core/project/schema.ts';
import { demoC } from '../../helpers/edgeProjects.ts';
import { expectOk, loadDesign } from '../../helpers/projects.ts';

/** The demo's revision C, changed: what is found. */
function foundIn(change: (revision: Revision, project: Project) => void): readonly Finding[] {
  return predict(expectOk(validateDesign(demoC(change), 'C')), { curvePoints: 6, warmUp: false }).findings;
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
      'caution-fire',
      'caution-material',
      'caution-blocked-nozzle',
      'caution-hot-release',
      'caution-cold-start',
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
    ['flight-gap-narrow', (r) => Object.assign(r.screw.sections[0], { starts: 3, rootFilletMm: 0 })],
    ['grain-blocked', (r) => Object.assign(r.barrel.feedOpening, { lengthMm: 1 })],
    ['grain-blocked', (r) => Object.assign(r.hopper, { outletDiameterMm: 1.5 })],
    ['hopper-slow', (r) => Object.assign(r.hopper, { outletDiameterMm: 4.4 })],
    ['feed-soft', (r, p) => Object.assign(p.process, { feedC: materialOf(p, r).softeningC.value + 1 })],
    ['no-clearance', (r) => Object.assign(r.screw, { radialClearanceMm: 0 })],
    ['no-clearance', (r) => Object.assign(r.screw, { radialClearanceMm: 0.003 })],
    ['cannot-pump', (_, p) => Object.assign(p.process, { backPressureMPa: 50 })],
    [
      'shallow-before-melt',
      (r) => {
        const [feed, compression] = r.screw.sections;
        feed.lengthMm = 32;
        compression.lengthMm = 8;
        for (const section of r.screw.sections) if (section.kind === 'flighted') section.rootFilletMm = 0;
        compression.rootDiameterEndMm = 12.8;
        Object.assign(r.screw.sections[2], { lengthMm: 120, rootDiameterStartMm: 12.8, rootDiameterEndMm: 12.8 });
      },
    ],
    ['screw-ends-early', (r) => Object.assign(r.barrel, { lengthMm: r.barrel.lengthMm + 2 * r.barrel.boreDiameterMm })],
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

  test('the demo’s drive has reserve; a smaller usable share is nearly used up', () => {
    expect(codes(sound)).not.toContain('torque-tight');
    const { torque, torquePullout } = predict(loadDesign('demo', 'C'), { curvePoints: 0 }).drive;
    const usableTorqueShare = torque / torquePullout / 0.93;
    expect(codes(foundIn((r) => Object.assign(r.drive, { usableTorqueShare })))).toContain('torque-tight');
  });

  test('a constant depth does not compress', () => {
    expect(codes(predict(loadDesign('demo', 'A'), { curvePoints: 0 }).findings)).toContain('no-compression');
  });

  test('thin wax drips', () => {
    expect(codes(predict(loadDesign('wax-head'), { curvePoints: 0 }).findings)).toContain('drips');
  });

  const coldZones = (revision: Revision, project: Project, below: number) => {
    for (const zone of revision.barrel.zones) {
      if (zone.kind === 'heated') zone.setTempC = materialOf(project, revision).meltingC.value - below;
    }
  };

  test('walls and nozzle too cold to melt stop', () => {
    const cold = foundIn((revision, project) => {
      coldZones(revision, project, 20);
      revision.nozzle.setTempC = materialOf(project, revision).meltingC.value - 20;
    });
    expect(cold.find(({ code }) => code === 'not-molten')?.severity).toBe('stop');
  });

  test('a nozzle that alone is hot leaves too few turns in the melt', () => {
    const late = foundIn((revision, project) => coldZones(revision, project, 10));
    expect(late.find(({ code }) => code === 'flights-end-early')?.saw).toContain('because melting is so late');
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

  test('a blocked nozzle that builds little is not worth a warning; one that builds much is', () => {
    const wax = predict(loadDesign('wax-head'), { curvePoints: 0 }).findings;
    expect(codes(wax)).not.toContain('blocked-pressure');
    expect(wax.find(({ code }) => code === 'caution-blocked-nozzle')?.saw).toContain('little pressure');
    expect(codes(sound)).toContain('blocked-pressure');
  });

  test('where weight and skin outweigh the screw, as in thin wax, that is said', () => {
    const wax = predict(loadDesign('wax-head'), { curvePoints: 0 }).findings;
    expect(wax.find(({ code }) => code === 'weight-and-skin')?.saw).toMatch(/Pa; .*Pa, and the skin/);
    expect(codes(sound)).not.toContain('weight-and-skin');
  });

  test('an iteration that did not end, and a wide spread of residence, are said', () => {
    const design = loadDesign('demo', 'C');
    const prediction = predict(design, { curvePoints: 0 });
    const machine = createMachine(design, 8);
    const context = { design, machine, driven: drivenPoint(machine), prediction };
    expect(codes(findingsOf(context))).not.toContain('not-converged');
    expect(codes(findingsOf(context))).not.toContain('wide-residence');
    const { residence } = prediction;
    const worse = { ...prediction, converged: false, residence: { ...residence, t99: 4.1 * residence.mean } };
    expect(codes(findingsOf({ ...context, prediction: worse }))).toEqual(
      expect.arrayContaining(['not-converged', 'wide-residence']),
    );
  });
});

describe('what the words say', () => {
  const wordsOf = (code: string, findings: readonly Finding[]) => findings.find((finding) => finding.code === code);

  test('a narrow hopper holds the output down to what it lets out', () => {
    const slow = predict(
      expectOk(
        validateDesign(
          demoC((r) => Object.assign(r.hopper, { outletDiameterMm: 4.4 })),
          'C',
        ),
      ),
    );
    expect(slow.limit).toBe('feed');
    expect(wordsOf('hopper-slow', slow.findings)?.saw).toContain('would take');
    expect(wordsOf('runs-starved', slow.findings)?.change).toContain('hopper');
  });

  test('nothing comes out: no print speed is offered', () => {
    const none = predict(loadDesign('pla-pellet-misfit'), { curvePoints: 0 }).findings;
    expect(wordsOf('demand-not-met', none)?.change).not.toMatch(/\d/);
    expect(wordsOf('grain-fit', none)?.change).toMatch(/larger bore or smaller granules.*would leave a root of only/);
  });

  test('hot melt is cautioned at the hottest of set, wall and melt', () => {
    const hot = foundIn((_, project) => {
      project.process.screwSpeedRpm = 46;
    });
    const value = wordsOf('caution-hot-melt', hot)?.value ?? 0;
    expect(value).toBeGreaterThanOrEqual(wordsOf('caution-hot-melt', sound)?.value ?? 0);
    expect(value).toBeGreaterThanOrEqual(188 + 273.15);
  });

  test('ratios are ratios', () => {
    const saw = wordsOf('no-compression', predict(loadDesign('demo', 'A'), { curvePoints: 0 }).findings)?.saw;
    expect(saw).toMatch(/times that at the end/);
  });
});
