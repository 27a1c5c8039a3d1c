/** fast-check generators of valid projects over what a shop makes, and of faults to put into them. */

import fc from 'fast-check';
import type { Design } from '../../core/design/types.ts';
import { validateDesign } from '../../core/design/validate.ts';
import type { Material } from '../../core/project/materialSchema.ts';
import type { Project, Revision } from '../../core/project/schema.ts';
import { anyMaterial } from './materialArbitraries.ts';
import { decimal } from './numberArbitraries.ts';
import { expectOk, loadExample } from './projects.ts';
import { anyScrew } from './screwArbitraries.ts';

/** Settings of every property test: pinned seed, so that a failure is the same everywhere. */
export const pinned = (numRuns: number): { seed: number; numRuns: number } => ({ seed: 20261125, numRuns });

const demo = loadExample('demo');
const demoRevision = demo.revisions[0] as Revision;

/** Nozzle from a bore to an orifice: an entry cone, flat shoulder or ledge, perhaps a wider pocket, then a land. */
const anyNozzle = (boreMm: number): fc.Arbitrary<Revision['nozzle']> =>
  fc
    .record({
      entry: fc.constantFrom('cone', 'flat', 'ledge', 'pocket'),
      entryAngleDeg: decimal(30, 150, 0),
      throatShare: decimal(0.25, 0.5, 2),
      orificeShare: decimal(0.04, 0.2, 2),
      landMm: decimal(0.5, 6, 1),
      setTempC: decimal(60, 280, 0),
    })
    .map(({ entry, entryAngleDeg, throatShare, orificeShare, landMm, setTempC }) => {
      const throatMm = boreMm * throatShare;
      const orificeMm = boreMm * orificeShare;
      const coneMm = (boreMm - throatMm) / 2 / Math.tan((entryAngleDeg * Math.PI) / 360);
      const startMm = { cone: boreMm, flat: boreMm, ledge: boreMm * 0.9, pocket: boreMm * 1.2 }[entry];
      const piece = (name: string, lengthMm: number, startDiameterMm: number, endDiameterMm: number) => ({
        name,
        lengthMm,
        startDiameterMm,
        endDiameterMm,
      });
      return {
        segments: [
          piece('entry', entry === 'flat' ? 0 : coneMm, startMm, throatMm),
          piece('bore', boreMm / 2, throatMm, throatMm),
          piece('land', landMm, orificeMm, orificeMm),
        ],
        outerDiameterMm: boreMm * 1.5,
        setTempC,
        maxPowerW: 60,
      };
    });

/** Barrel around a screw: its sections end before the end of the bore; cooled feed, break, one to three heated zones. */
const anyBarrel = (boreMm: number, sectionsMm: number): fc.Arbitrary<Revision['barrel']> =>
  fc
    .record({
      aheadShare: decimal(0.1, 0.6, 2),
      wallShare: decimal(0.3, 1, 2),
      heated: fc.integer({ min: 1, max: 3 }),
      withBreak: fc.boolean(),
      setTempC: decimal(60, 280, 0),
    })
    .map(({ aheadShare, wallShare, heated, withBreak, setTempC }) => {
      const lengthMm = sectionsMm + boreMm * (aheadShare + 0.7);
      const coolEnd = lengthMm * 0.25;
      const breakEnd = coolEnd + (withBreak ? lengthMm * 0.08 : 0);
      const edge = (i: number) => breakEnd + ((lengthMm - breakEnd) * i) / heated;
      const hot = Array.from({ length: heated }, (_, i) => ({
        kind: 'heated' as const,
        name: `zone ${i + 1}`,
        startMm: edge(i),
        endMm: i === heated - 1 ? lengthMm : edge(i + 1),
        setTempC,
        maxPowerW: 150,
      }));
      return {
        boreDiameterMm: boreMm,
        outerDiameterMm: boreMm * (1 + 2 * wallShare),
        lengthMm,
        conductivityWPerMK: 42,
        feedOpening: {
          startMm: 0.2 * boreMm,
          lengthMm: Math.min(1.2 * boreMm, 0.2 * sectionsMm),
          widthMm: 0.8 * boreMm,
        },
        zones: [{ kind: 'cooled' as const, name: 'feed block', startMm: 0, endMm: coolEnd, coolantTempC: 25 }, ...hot],
        heatBreak: withBreak
          ? { startMm: coolEnd, lengthMm: breakEnd - coolEnd, wallMm: 0.1 * boreMm, conductivityWPerMK: 16 }
          : null,
      };
    });

/** A revision from a bore of 6 to 60 mm. */
const anyRevision = (id: string, materialId: string): fc.Arbitrary<Revision> =>
  decimal(6, 60, 1).chain((boreMm) =>
    anyScrew(boreMm).chain((screw) => {
      const sectionsMm = screw.sections.reduce((sum, s) => sum + s.lengthMm, 0);
      const { hopper, drive } = demoRevision;
      return fc.record({
        id: fc.constant(id),
        name: fc.constant(`Revision ${id}`),
        materialId: fc.constant(materialId),
        screw: fc.constant(screw),
        barrel: anyBarrel(boreMm, sectionsMm),
        nozzle: anyNozzle(boreMm),
        hopper: fc.constant({ ...hopper, outletDiameterMm: 1.5 * boreMm }),
        drive: fc.constant({ ...drive, gearRatio: 20 }),
      });
    }),
  );

const anyFeed: fc.Arbitrary<Project['process']['feed']> = fc.oneof(
  fc.constant({ kind: 'flood' as const }),
  decimal(0.1, 100, 1).map((rateGPerMin) => ({ kind: 'starved' as const, rateGPerMin })),
);

/** Names in any script. */
const anyName = fc.string({ minLength: 1, maxLength: 20, unit: 'grapheme' });

/** A valid project of one to three revisions and its own material. */
export const anyProject: fc.Arbitrary<Project> = fc
  .tuple(anyMaterial, fc.integer({ min: 1, max: 3 }), decimal(1, 120, 1), anyFeed, anyName)
  .chain(([material, count, screwSpeedRpm, feed, name]) => {
    const ids = ['A', 'B', 'C'].slice(0, count);
    const { process, print } = demo;
    return fc.tuple(...ids.map((id) => anyRevision(id, material.id))).map(
      (revisions): Project => ({
        format: 'augerwright-project',
        version: 1,
        name,
        invented: true,
        activeRevision: 'A',
        revisions,
        materials: [material],
        process: { ...process, screwSpeedRpm, feed },
        print,
        benchLog: [],
      }),
    );
  });

/** A valid design. */
export const anyDesign: fc.Arbitrary<Design> = anyProject.map((project) =>
  expectOk(validateDesign(project, project.activeRevision)),
);

/** A material as generated, for tests that need no screw. */
export const anyStoredMaterial: fc.Arbitrary<Material> = anyMaterial;

/** JSON values of any kind, to be put where they do not belong. */
export const strayValue: fc.Arbitrary<unknown> = fc.constantFrom<unknown>(
  null,
  '',
  'text',
  -1,
  1e12,
  true,
  [],
  {},
  [null],
  { kind: 'unknown' },
);
