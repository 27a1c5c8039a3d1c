import { describe, expect, it } from 'vitest';
import { migrate } from '../../../core/project/migrate.ts';
import { parseProject } from '../../../core/project/parse.ts';
import { codesOf, expectOk, loadExample, revisionAt } from '../../helpers/projects.ts';

/** The demo as the pre-release program would have written it. */
function version0(): Record<string, unknown> {
  const { invented: _, ...demo } = loadExample('demo');
  const { screwSpeedRpm, ...process } = demo.process;
  return {
    ...demo,
    version: 0,
    process: { ...process, screwSpeedRevPerS: screwSpeedRpm / 60 },
    benchLog: demo.benchLog.map(({ screwSpeedRpm: rpm, ...trial }) => ({ ...trial, screwSpeedRevPerS: rpm / 60 })),
    revisions: demo.revisions.map((revision) => ({
      ...revision,
      nozzle: {
        entryAngleDeg: 60,
        orificeDiameterMm: 1.2,
        landLengthMm: 2.4,
        outerDiameterMm: 18,
        setTempC: 188,
        maxPowerW: 40,
      },
      drive: {
        ...revision.drive,
        motorCurve: revision.drive.motorCurve.map(({ speedRpm, torqueNm }) => ({
          speedRevPerS: speedRpm / 60,
          torqueNm,
        })),
      },
    })),
  };
}

describe('a file of version 0', () => {
  it('opens with its speeds in rpm and its nozzle as segments', () => {
    const project = expectOk(parseProject(JSON.stringify(version0())));
    const demo = loadExample('demo');
    expect(project.version).toBe(1);
    expect(project.invented).toBe(false);
    expect(project.process).toEqual(demo.process);
    expect(project.benchLog.map((t) => t.screwSpeedRpm)).toEqual(demo.benchLog.map((t) => t.screwSpeedRpm));
    expect(revisionAt(project, 0).drive).toEqual(revisionAt(demo, 0).drive);
    // Cone from 14 to 1.2 mm at 60 degrees included: 6.4 mm / tan 30 degrees, by hand 11.0851 mm.
    expect(revisionAt(project, 0).nozzle.segments).toEqual([
      { name: 'entry', lengthMm: 11.0851, startDiameterMm: 14, endDiameterMm: 1.2 },
      { name: 'land', lengthMm: 2.4, startDiameterMm: 1.2, endDiameterMm: 1.2 },
    ]);
  });

  it('is left as it was', () => {
    const old = version0();
    const before = JSON.stringify(old);
    migrate(old);
    expect(JSON.stringify(old)).toBe(before);
  });

  it('with faults is refused by today’s rules, not by an exception', () => {
    const broken = { ...version0(), process: 'fast', revisions: [null, { nozzle: 7, drive: [] }], benchLog: {} };
    const codes = codesOf(parseProject(JSON.stringify(broken)));
    expect(codes.length).toBeGreaterThan(5);
    expect(codes).toContain('wrong-type');
    expect(codes).toContain('missing');
  });
});

describe('a file of the present version', () => {
  it('is not touched', () => {
    const demo = { ...loadExample('demo') };
    expect(migrate(demo)).toBe(demo);
  });
});
