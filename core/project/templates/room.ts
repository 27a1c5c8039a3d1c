/** What a screw's sizes are derived from, and the rules they follow. All lengths mm as stored. */

import type { Material } from '../materialSchema.ts';
import type { Revision, SectionInput } from '../schema.ts';

/** The machine that a screw is made for. mm */
export interface ScrewRoom {
  readonly boreMm: number;
  readonly barrelLengthMm: number;
  readonly clearanceMm: number;
  /** 90 % of the granulate by mass is smaller */
  readonly grainD90Mm: number;
  /** end of the screw that is there now, where it is known to fit: a new one that is no thicker may end alike */
  readonly fitting: { readonly totalMm: number; readonly lastRootMm: number; readonly endsPlain: boolean } | null;
  readonly tip: Revision['screw']['tip'];
}

const lengthOf = (sections: readonly SectionInput[]): number => sections.reduce((sum, s) => sum + s.lengthMm, 0);

/**
 * The room of a revision.
 * @param fits whether the revision is accepted as it is
 */
export function screwRoom({ screw, barrel }: Revision, material: Material, fits: boolean): ScrewRoom {
  const last = screw.sections.at(-1);
  return {
    boreMm: barrel.boreDiameterMm,
    barrelLengthMm: barrel.lengthMm,
    clearanceMm: screw.radialClearanceMm,
    grainD90Mm: material.grain.d90Mm.value,
    fitting:
      fits && last
        ? {
            totalMm: lengthOf(screw.sections),
            lastRootMm: last.rootDiameterEndMm,
            endsPlain: last.kind === 'plain',
          }
        : null,
    tip: screw.tip,
  };
}

/** To a tenth of a millimetre below ten, else to a half: what a drawing would say. */
export const neat = (mm: number): number => (mm < 10 ? Math.round(mm * 20) / 20 : Math.round(mm * 2) / 2);

/** Depth over the bore where grains are taken in; common practice for small screws is a sixth to a fifth. */
const depthShare = 0.18;
/** Depth over the 90 % grain; common practice, as in the findings on grains. */
const depthOverGrain = 1.3;
/** Thinnest core over the bore, for its strength; own choice. */
const coreShare = 0.4;
/** Ratio of the first depth to the last; common practice is 2 to 3 for pellets. */
const compression = 2.5;
/** Shallowest channel over the bore; own choice, below it small screws are hard to cut. */
const leastShare = 0.05;
/** Clearances that the shallowest channel holds at least; own choice, two are the least that is accepted. */
const depthOverClearance = 3;

/** Depth under the feed opening, and whether grains asked for more than the core allows. mm */
export function feedDepth({ boreMm, grainD90Mm }: ScrewRoom): { readonly depthMm: number; readonly short: boolean } {
  const wanted = Math.max(depthShare * boreMm, depthOverGrain * grainD90Mm);
  const most = (boreMm * (1 - coreShare)) / 2;
  return { depthMm: Math.min(wanted, most), short: depthOverGrain * grainD90Mm > most };
}

/** Depth where melt is metered. mm */
export const meterDepth = (room: ScrewRoom): number =>
  Math.max(feedDepth(room).depthMm / compression, leastShare * room.boreMm, depthOverClearance * room.clearanceMm);

/** Root diameter of a depth measured from the bore, as a drawing would say it. mm */
export const rootOf = ({ boreMm }: ScrewRoom, depthMm: number): number => neat(boreMm - 2 * depthMm);

/** Length of a tip on a body of this diameter, pin included. mm */
function tipLength(tip: ScrewRoom['tip'], bodyMm: number): number {
  const body =
    tip.kind === 'cone'
      ? bodyMm / 2 / Math.tan((tip.includedAngleDeg * Math.PI) / 360)
      : tip.kind === 'hemisphere'
        ? bodyMm / 2
        : 0;
  return body + tip.pinLengthMm;
}

/** Gap between the tip's end and the end of the barrel where nothing better is known, over the bore; own choice. */
const endGapShare = 0.05;
/** Below this share of the barrel a pointed tip costs too much length; own choice. */
const leastFill = 0.7;

/** How the screw ends: its length without tip, and the tip. */
export interface ScrewEnd {
  readonly totalMm: number;
  readonly tip: ScrewRoom['tip'];
}

/**
 * Length and tip of a screw with this last root. The present end is kept where it is known to fit and the new root is no
 * thicker; else the whole tip stays inside the barrel's bore.
 */
export function screwEnd(room: ScrewRoom, lastRootMm: number, endsPlain: boolean): ScrewEnd {
  const { fitting, barrelLengthMm, boreMm } = room;
  const tip = room.tip.pinDiameterMm <= lastRootMm ? room.tip : { ...room.tip, pinDiameterMm: 0, pinLengthMm: 0 };
  const flightEnds = endsPlain || !fitting?.endsPlain;
  if (fitting && flightEnds && lastRootMm <= fitting.lastRootMm && tip === room.tip) {
    return { totalMm: fitting.totalMm, tip };
  }
  const inside = barrelLengthMm - tipLength(tip, lastRootMm) - endGapShare * boreMm;
  if (inside >= leastFill * barrelLengthMm) return { totalMm: Math.floor(inside * 10) / 10, tip };
  const flat = { kind: 'flat' as const, pinDiameterMm: 0, pinLengthMm: 0 };
  return { totalMm: Math.floor((barrelLengthMm - endGapShare * boreMm) * 10) / 10, tip: flat };
}
