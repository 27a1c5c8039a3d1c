/** Generators of screws a small shop makes: one to four sections, tapers, steps, starts, flanks, fillets, all tips. */

import fc from 'fast-check';
import type { Revision, SectionInput } from '../../core/project/schema.ts';
import { decimal } from './numberArbitraries.ts';

type Screw = Revision['screw'];
type Tip = Screw['tip'];

const steel: Screw['steel'] = {
  name: 'tool steel',
  yieldMPa: 650,
  youngGPa: 210,
  conductivityWPerMK: 42,
  expansionPerMK: 11.5,
};

/** Shares of what there is room for, from which a section's millimetres follow. */
const shares = fc.record({
  plain: fc.integer({ min: 0, max: 4 }).map((n) => n === 0),
  lengthTurns: decimal(1.5, 6, 1),
  rootStart: decimal(0.4, 0.85, 2),
  rootEnd: decimal(0.4, 0.85, 2),
  leadStart: decimal(0.6, 1.6, 2),
  leadChange: fc.constantFrom(0, 0, 0.2, -0.2),
  starts: fc.integer({ min: 1, max: 3 }),
  land: decimal(0.05, 0.3, 2),
  flank: decimal(0, 0.8, 2),
  fillet: fc.oneof(fc.constant(0), decimal(0, 1, 2)),
});

type Shares = typeof shares extends fc.Arbitrary<infer T> ? T : never;

/** Turns shares into a section that leaves a channel: flank and fillet are cut to the room left by land and depth. */
function sectionFrom(s: Shares, boreMm: number, clearanceMm: number): SectionInput {
  const roots = { rootDiameterStartMm: boreMm * s.rootStart, rootDiameterEndMm: boreMm * s.rootEnd };
  const lengthMm = boreMm * s.lengthTurns;
  if (s.plain) return { kind: 'plain', lengthMm, ...roots };
  const leadStartMm = boreMm * s.leadStart * (s.starts > 1 ? 1.5 : 1);
  const leadEndMm = leadStartMm * (1 + s.leadChange);
  const pitchMm = Math.min(leadStartMm, leadEndMm) / s.starts;
  const flightWidthMm = Math.max(0.2, pitchMm * s.land);
  const deepestMm = boreMm / 2 - clearanceMm - Math.min(roots.rootDiameterStartMm, roots.rootDiameterEndMm) / 2;
  const shallowestMm = boreMm / 2 - clearanceMm - Math.max(roots.rootDiameterStartMm, roots.rootDiameterEndMm) / 2;
  const widestFlank = Math.atan((0.8 * (pitchMm - flightWidthMm)) / (2 * deepestMm));
  const flank = Math.min(s.flank * widestFlank, Math.PI / 3.01);
  const gapMm = pitchMm - flightWidthMm - 2 * deepestMm * Math.tan(flank);
  return {
    kind: 'flighted',
    lengthMm,
    leadStartMm,
    leadEndMm,
    ...roots,
    starts: s.starts,
    flightWidthMm,
    flankAngleDeg: (flank * 180) / Math.PI,
    rootFilletMm: s.fillet * Math.min(shallowestMm, gapMm / 2),
  };
}

/** A tip whose body and pin stay within 0.6 of the bore ahead of the sections. */
function anyTip(boreMm: number, rootMm: number): fc.Arbitrary<Tip> {
  const pin = fc.oneof(
    fc.constant({ pinDiameterMm: 0, pinLengthMm: 0 }),
    decimal(0.2, 0.6, 1).map((share) => ({ pinDiameterMm: rootMm * share, pinLengthMm: 0.08 * boreMm })),
  );
  const steepest = Math.ceil((2 * Math.atan(rootMm / 2 / (0.6 * boreMm)) * 180) / Math.PI);
  return pin.chain((p) =>
    fc.oneof(
      fc.constant<Tip>({ kind: 'flat', ...p }),
      fc.constant<Tip>({ kind: 'hemisphere', ...p }),
      decimal(Math.max(40, steepest), 150, 0).map(
        (includedAngleDeg): Tip => ({ kind: 'cone', includedAngleDeg, ...p }),
      ),
    ),
  );
}

/** A screw for a bore (mm) whose first section is flighted, so that the feed opening stands over a flight. */
export const anyScrew = (boreMm: number): fc.Arbitrary<Screw> =>
  fc
    .tuple(
      fc.array(shares, { minLength: 1, maxLength: 4 }),
      decimal(0.05, 0.1 + 0.005 * boreMm, 2),
      fc.constantFrom<Screw['hand']>('right', 'left'),
    )
    .chain(([list, clearanceMm, hand]) => {
      const sections = list.map((s, i) => sectionFrom(i === 0 ? { ...s, plain: false } : s, boreMm, clearanceMm));
      const rootMm = sections[sections.length - 1]?.rootDiameterEndMm ?? 0;
      return anyTip(boreMm, rootMm).map((tip) => ({
        hand,
        radialClearanceMm: clearanceMm,
        sections,
        tip,
        shank: { diameterMm: boreMm * 0.7, lengthMm: boreMm * 2 },
        steel,
      }));
    });
