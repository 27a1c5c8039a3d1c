import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { nozzleMesh } from '../../../core/geometry/nozzleMesh.ts';
import type { Project, Revision, SectionInput } from '../../../core/project/schema.ts';
import { issueText, pathText } from '../../../core/result.ts';
import { anyProject, pinned } from '../../helpers/arbitraries.ts';
import { meshVolume } from '../../helpers/meshFacts.ts';
import { changedDemo, codesOf, expectOk, loadDesign, loadExample, revisionAt } from '../../helpers/projects.ts';

type Flighted = Extract<SectionInput, { kind: 'flighted' }>;

/** `place: code` of every issue of revision C after a change to it. */
function faultsAfter(change: (revision: Revision, project: Project) => void): readonly string[] {
  const project = changedDemo((p) => change(revisionAt(p, 2), p));
  const result = validateDesign(project, 'C');
  return result.ok ? [] : result.issues.map((i) => `${pathText(i.path).replace('revisions[2].', '')}: ${i.code}`);
}

const section = (revision: Revision, index: number): Flighted => revision.screw.sections[index] as Flighted;

describe('a valid design', () => {
  it('is in SI', () => {
    const design = loadDesign('demo', 'C');
    expect(design.barrel).toMatchObject({ boreDiameter: 0.014, length: 0.162 });
    expect(design.barrel.zones.map((z) => z.kind)).toEqual(['cooled', 'insulated', 'heated', 'heated']);
    expect(design.barrel.zones[3]).toMatchObject({ start: 0.108, end: 0.162, setTemperature: 458.15, maxPower: 120 });
    expect(design.screw.sections[1]).toEqual({
      kind: 'flighted',
      length: 0.055,
      leadStart: 0.014,
      leadEnd: 0.014,
      rootDiameterStart: 0.0064,
      rootDiameterEnd: 0.0104,
      starts: 1,
      flightWidth: 0.002,
      flankAngle: 0,
      rootFillet: 0.0012,
    });
    expect(design.screw.tip.includedAngle).toBeCloseTo(Math.PI / 3, 12);
    expect(design.screw.steel).toMatchObject({ yieldStress: 900e6, young: 196e9, expansion: 11e-6 });
    expect(design.drive.motorCurve[1]).toEqual({ speed: 1, torque: 0.551 });
    expect(design.process).toMatchObject({ starvedRate: null, ambient: 295.15, backPressure: 0 });
    expect(design.print.speed).toBe(0.03);
  });

  it('of a flat tip carries a straight angle, of a hemisphere none', () => {
    expect(loadDesign('demo', 'A').screw.tip.includedAngle).toBe(Math.PI);
    const project = changedDemo(
      (p) => (revisionAt(p, 0).screw.tip = { kind: 'hemisphere', pinDiameterMm: 0, pinLengthMm: 0 }),
    );
    revisionAt(project, 0).barrel.lengthMm = 168;
    expect(expectOk(validateDesign(project, 'A')).screw.tip.includedAngle).toBe(0);
  });

  it('of a metered feed carries kg/s', () => {
    const project = changedDemo((p) => (p.process.feed = { kind: 'starved', rateGPerMin: 6 }));
    expect(expectOk(validateDesign(project, 'A')).process.starvedRate).toBeCloseTo(1e-4, 15);
  });

  it('comes out of every generated project, for each of its revisions', () => {
    fc.assert(
      fc.property(anyProject, (project) => {
        for (const { id } of project.revisions) {
          const { screw, barrel } = expectOk(validateDesign(project, id));
          const flight = barrel.boreDiameter - 2 * screw.radialClearance;
          for (const s of screw.sections) {
            expect(Math.max(s.rootDiameterStart, s.rootDiameterEnd)).toBeLessThan(flight);
          }
        }
      }),
      pinned(80),
    );
  });

  it('may have sections that step, a ledge or a pocket in the bore, and a cone tip inside the entry', () => {
    expect(faultsAfter((r) => (section(r, 1).rootDiameterStartMm = 9))).toEqual([]);
    expect(faultsAfter((r) => ((r.nozzle.segments[0] as { startDiameterMm: number }).startDiameterMm = 13))).toEqual(
      [],
    );
    expect(faultsAfter((r) => ((r.nozzle.segments[0] as { startDiameterMm: number }).startDiameterMm = 16))).toEqual(
      [],
    );
    expect(faultsAfter((r) => (r.barrel.lengthMm = 162))).toEqual([]);
  });
});

describe('a screw that cannot be', () => {
  it.each<[string, (r: Revision, p: Project) => void, string]>([
    [
      'root as thick as the flight',
      (r) => (section(r, 2).rootDiameterEndMm = 13.8),
      'screw.sections[2].rootDiameterEndMm: root-too-thick',
    ],
    [
      'clearance of half the depth',
      (r) => (section(r, 2).rootDiameterEndMm = 13.6),
      'screw.sections[2].rootDiameterEndMm: clearance-too-wide',
    ],
    ['flights that meet', (r) => (section(r, 0).flightWidthMm = 14), 'screw.sections[0].flightWidthMm: flights-meet'],
    [
      'flanks that meet at the root',
      (r) => Object.assign(section(r, 2), { flankAngleDeg: 60, starts: 2, rootFilletMm: 0 }),
      'screw.sections[2].flightWidthMm: flights-meet',
    ],
    [
      'a fillet with no room beside six starts',
      (r) => (section(r, 2).starts = 6),
      'screw.sections[2].rootFilletMm: fillet-too-large',
    ],
    [
      'starts that leave no channel',
      (r) => Object.assign(section(r, 2), { starts: 6, flightWidthMm: 2.4 }),
      'screw.sections[2].flightWidthMm: flights-meet',
    ],
    [
      'flight without thickness',
      (r) => (section(r, 2).flightWidthMm = 0),
      'screw.sections[2].flightWidthMm: flight-too-thin',
    ],
    [
      'fillet higher than the flight',
      (r) => (section(r, 2).rootFilletMm = 1.8),
      'screw.sections[2].rootFilletMm: fillet-too-large',
    ],
    ['pin thicker than its body', (r) => (r.screw.tip.pinDiameterMm = 11), 'screw.tip.pinDiameterMm: pin-too-thick'],
    ['pin without diameter', (r) => (r.screw.tip.pinLengthMm = 2), 'screw.tip.pinDiameterMm: pin-without-diameter'],
    ['screw longer than its barrel', (r) => (section(r, 2).lengthMm = 53), 'screw.sections: screw-too-long'],
    [
      'tip through the entry',
      (r) => (r.screw.tip = { kind: 'cone', includedAngleDeg: 20, pinDiameterMm: 0, pinLengthMm: 0 }),
      'screw.tip: tip-touches',
    ],
    [
      'pin out of the nozzle',
      (r) => Object.assign(r.screw.tip, { pinDiameterMm: 1, pinLengthMm: 60 }),
      'screw.tip: tip-touches',
    ],
    [
      'flight against the shoulder',
      (r) => {
        Object.assign(r.barrel, { lengthMm: 160, zones: r.barrel.zones.slice(0, 3) });
        r.nozzle.segments.unshift({ name: 'shoulder', lengthMm: 0, startDiameterMm: 14, endDiameterMm: 12 });
      },
      'screw.sections[2].lengthMm: flight-touches',
    ],
  ])('%s', (_, change, expected) => {
    expect(faultsAfter(change)).toEqual([expected]);
  });
});

describe('a barrel, nozzle or drive that cannot be', () => {
  it.each<[string, (r: Revision, p: Project) => void, string]>([
    [
      'no wall',
      (r) => Object.assign(r.barrel, { outerDiameterMm: 14, heatBreak: null }),
      'barrel.outerDiameterMm: barrel-without-wall',
    ],
    [
      'feed past the barrel',
      (r) => Object.assign(r.barrel.feedOpening, { startMm: 140 }),
      'barrel.feedOpening.lengthMm: feed-outside',
    ],
    [
      'feed over a plain section',
      (r) => (r.screw.sections[0] = { kind: 'plain', lengthMm: 55, rootDiameterStartMm: 8, rootDiameterEndMm: 8 }),
      'barrel.feedOpening.startMm: feed-without-flight',
    ],
    [
      'feed wider than the barrel',
      (r) => (r.barrel.feedOpening.widthMm = 30),
      'barrel.feedOpening.widthMm: feed-too-wide',
    ],
    [
      'heat break past the barrel',
      (r) => Object.assign(r.barrel.heatBreak as object, { startMm: 150 }),
      'barrel.heatBreak.lengthMm: heat-break-outside',
    ],
    [
      'heat break thicker than the barrel',
      (r) => Object.assign(r.barrel.heatBreak as object, { wallMm: 7.5 }),
      'barrel.heatBreak.wallMm: heat-break-too-thick',
    ],
    [
      'zone past the barrel',
      (r) => Object.assign(r.barrel.zones[3] as object, { endMm: 170 }),
      'barrel.zones[3].endMm: zone-outside',
    ],
    [
      'nozzle narrower than the bore it closes',
      (r) => (r.nozzle.outerDiameterMm = 4),
      'nozzle.outerDiameterMm: nozzle-without-wall',
    ],
    [
      'nozzle narrower than a pocket in it',
      (r) => Object.assign(r.nozzle.segments[1] as object, { startDiameterMm: 17.8 }),
      'nozzle.outerDiameterMm: nozzle-without-wall',
    ],
    [
      'nozzle that begins wider than the barrel',
      (r) => {
        r.nozzle.outerDiameterMm = 40;
        Object.assign(r.nozzle.segments[0] as object, { startDiameterMm: 28 });
      },
      'nozzle.segments[0].startDiameterMm: nozzle-entry-open',
    ],
    [
      'wall too thin to be turned',
      (r) => Object.assign(r.barrel, { outerDiameterMm: 14.3, heatBreak: null }),
      'barrel.outerDiameterMm: barrel-without-wall',
    ],
    [
      'shares of time that leave none for printing',
      (_, p) => Object.assign(p.print, { travelShare: 0.6, idleShare: 0.4 }),
      'print.idleShare: shares-fill-time',
    ],
    [
      'motor curve out of order',
      (r) => Object.assign(r.drive.motorCurve[1] as object, { speedRpm: 0 }),
      'drive.motorCurve[1].speedRpm: motor-curve-order',
    ],
    ['number outside its range', (r) => (r.hopper.wallFriction = Number.NaN), 'hopper.wallFriction: wrong-type'],
    ['process outside its range', (_, p) => (p.process.screwSpeedRpm = -1), 'process.screwSpeedRpm: out-of-range'],
    ['material without a name', (r) => (r.materialId = ''), 'materialId: unknown-id'],
    ['material that is not there', (r) => (r.materialId = 'gone'), 'materialId: unknown-id'],
    [
      'material without sense',
      (_, p) => Object.assign(p.materials[0]?.windowHighC as object, { value: 160 }),
      'materials[0].windowLowC.value: values-out-of-order',
    ],
  ])('%s', (_, change, expected) => {
    expect(faultsAfter(change)).toEqual([expected]);
  });

  it('a nozzle without length', () => {
    const flat = { name: 'plate', lengthMm: 0, startDiameterMm: 14, endDiameterMm: 1.2 };
    const faults = faultsAfter((r) => {
      r.nozzle.segments = [flat];
      r.screw.tip = { kind: 'flat', pinDiameterMm: 0, pinLengthMm: 0 };
    });
    expect(faults).toEqual(['nozzle.segments: nozzle-too-short']);
  });

  it('a revision that is not there', () => {
    expect(codesOf(validateDesign(loadExample('demo'), 'Z'))).toEqual(['unknown-id']);
    const result = validateDesign(loadExample('demo'), '');
    expect(result.ok ? '' : result.issues[0]?.value).toBe('""');
  });
});

describe('faults beside each other', () => {
  it('of shape do not hide those of parts that are sound', () => {
    const faults = faultsAfter((r, p) => {
      p.process.screwSpeedRpm = -1;
      section(r, 2).rootDiameterEndMm = 14;
      r.barrel.outerDiameterMm = 13;
    });
    expect(faults).toEqual([
      'screw.sections[2].rootDiameterEndMm: root-too-thick',
      'barrel.outerDiameterMm: barrel-without-wall',
      'process.screwSpeedRpm: out-of-range',
    ]);
  });

  it('of a screw section do not hide those of the tip, of another width or of a missing material', () => {
    const faults = faultsAfter((r) => {
      r.materialId = 'gone';
      Object.assign(section(r, 0), { rootDiameterStartMm: 14, flightWidthMm: 14 });
      Object.assign(r.screw.tip, { pinDiameterMm: 1, pinLengthMm: 60 });
    });
    expect(faults).toEqual([
      'materialId: unknown-id',
      'screw.sections[0].rootDiameterStartMm: root-too-thick',
      'screw.sections[0].flightWidthMm: flights-meet',
      'screw.tip: tip-touches',
    ]);
  });

  it('are not followed by what only follows from them', () => {
    const faults = faultsAfter((r) => (r.barrel.outerDiameterMm = 13));
    expect(faults).toEqual(['barrel.outerDiameterMm: barrel-without-wall']);
    expect(faultsAfter((r) => (r.screw.radialClearanceMm = 5))).toEqual([
      'screw.radialClearanceMm: clearance-too-wide',
    ]);
    expect(faultsAfter((r) => (r.barrel.feedOpening.startMm = 170))).toEqual([
      'barrel.feedOpening.lengthMm: feed-outside',
    ]);
    expect(faultsAfter((r) => (r.barrel.lengthMm = -1))).toEqual(['barrel.lengthMm: out-of-range']);
  });

  it('never allow a length below zero', () => {
    const spoil = fc.record({
      bore: fc.constantFrom(3, 14, 30),
      clearance: fc.constantFrom(0, 0.6, 2, 5),
      outer: fc.constantFrom(4, 13, 28),
      root: fc.constantFrom(1, 10, 14, 40),
      length: fc.constantFrom(5, 100, 166),
    });
    fc.assert(
      fc.property(spoil, ({ bore, clearance, outer, root, length }) => {
        const project = changedDemo((p) => {
          const r = revisionAt(p, 2);
          Object.assign(r.barrel, { boreDiameterMm: bore, outerDiameterMm: outer, lengthMm: length });
          r.screw.radialClearanceMm = clearance;
          section(r, 2).rootDiameterEndMm = root;
        });
        const result = validateDesign(project, 'C');
        for (const issue of result.ok ? [] : result.issues) expect(issue.allowed).not.toMatch(/(^|\s)[-−]\d/);
      }),
      pinned(200),
    );
  });
});

describe('a valid nozzle', () => {
  it('has a body of positive volume, whatever its outer diameter', () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 60 }), fc.integer({ min: 1, max: 24 }), (outerMm, throatMm) => {
        const project = changedDemo((p) => {
          const { nozzle } = revisionAt(p, 2);
          nozzle.outerDiameterMm = outerMm;
          Object.assign(nozzle.segments[1] as object, { startDiameterMm: throatMm, endDiameterMm: throatMm });
        });
        const result = validateDesign(project, 'C');
        if (!result.ok) return;
        const mesh = nozzleMesh(result.value, { ringsPerTurn: 12, aroundCount: 24 }, 0);
        expect(meshVolume(mesh)).toBeGreaterThan(0);
        expect(outerMm).toBeGreaterThan(Math.max(14, throatMm));
      }),
      pinned(60),
    );
  });
});

describe('issues of a design', () => {
  it('come all at once and name field, value, range and remedy', () => {
    const project = changedDemo((p) => {
      section(revisionAt(p, 2), 0).rootFilletMm = 4;
      revisionAt(p, 2).barrel.outerDiameterMm = 13;
      revisionAt(p, 2).drive.motorCurve.reverse();
    });
    const result = validateDesign(project, 'C');
    const codes = codesOf(result);
    for (const code of ['fillet-too-large', 'barrel-without-wall', 'motor-curve-order']) expect(codes).toContain(code);
    const [first] = result.ok ? [] : result.issues;
    expect(first && issueText(first)).toBe(
      'revisions[2].screw.sections[0].rootFilletMm: Section 1 "feed": the root fillet does not fit the channel at the ' +
        "section's start. Found: 4 mm. Allowed: at most 3.7 mm, the flight's height. Reduce the fillet.",
    );
  });
});
