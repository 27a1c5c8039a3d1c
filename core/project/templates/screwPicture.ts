/** A screw as lines to be drawn from the side, computed from its sections. mm, z from the start of the first section. */

import type { Revision, SectionInput } from '../schema.ts';

/** A place: distance along the axis and from it, mm. */
type SidePoint = readonly [zMm: number, rMm: number];

/** One pass of a flight over the side that is seen: from the upper edge to the lower one, half a turn later. */
interface FlightPass {
  /** middle of the land at the upper and at the lower edge, mm */
  readonly topMm: number;
  readonly bottomMm: number;
  readonly landMm: number;
  /** width at the root, flanks included, and the root's radius at the upper edge, mm */
  readonly rootWidthMm: number;
  readonly rootMm: number;
}

/** The picture. */
export interface ScrewPicture {
  /** upper edge of core and tip; the lower one is its mirror image */
  readonly core: readonly SidePoint[];
  readonly passes: readonly FlightPass[];
  readonly flightMm: number;
  readonly lengthMm: number;
}

type Flighted = Extract<SectionInput, { kind: 'flighted' }>;

/** Distance after which a flight of evenly changing lead has made `turns` turns, mm. */
function wayOf({ lengthMm, leadStartMm, leadEndMm }: Flighted, turns: number) {
  const slope = (leadEndMm - leadStartMm) / lengthMm;
  return Math.abs(slope) < 1e-9 ? turns * leadStartMm : (leadStartMm * Math.expm1(turns * slope)) / slope;
}

/** Turns that the section makes over its length. */
function turnsOf({ lengthMm, leadStartMm, leadEndMm }: Flighted): number {
  const ratio = leadEndMm / leadStartMm;
  return Math.abs(ratio - 1) < 1e-9 ? lengthMm / leadStartMm : (lengthMm * Math.log(ratio)) / (leadEndMm - leadStartMm);
}

/** A flighted section on the axis. */
interface Run {
  readonly section: Flighted;
  readonly startMm: number;
  /** turns of flight before it */
  readonly before: number;
  readonly turns: number;
  /** stretches that touch share a number: a flight runs on from one to the next */
  readonly chain: number;
}

function runsOf(sections: readonly SectionInput[]): Run[] {
  let [startMm, before, chain] = [0, 0, 0];
  return sections.flatMap((section) => {
    const here = { startMm, before };
    startMm += section.lengthMm;
    if (section.kind === 'plain') {
      chain++;
      return [];
    }
    const turns = turnsOf(section);
    before += turns;
    return [{ section, ...here, turns, chain }];
  });
}

/** Where a flight is after so many turns from the start, and in which run; null past the end. */
function placeAt(runs: readonly Run[], turn: number): { readonly run: Run; readonly zMm: number } | null {
  const run = runs.find(({ before, turns }) => turn >= before - 1e-9 && turn <= before + turns + 1e-9);
  return run ? { run, zMm: run.startMm + wayOf(run.section, turn - run.before) } : null;
}

function passesOf(runs: readonly Run[], flightMm: number): FlightPass[] {
  const last = runs.at(-1);
  if (!last) return [];
  const starts = last.section.starts;
  const count = Math.floor((last.before + last.turns) * starts);
  return Array.from({ length: count + 1 }, (_, step) => step / starts).flatMap((turn) => {
    const [top, bottom] = [placeAt(runs, turn), placeAt(runs, turn + 0.5)];
    if (!top || !bottom || top.run.chain !== bottom.run.chain) return [];
    const { section, startMm } = top.run;
    const { rootDiameterStartMm: from, rootDiameterEndMm: to, flightWidthMm } = section;
    const rootMm = (from + ((to - from) * (top.zMm - startMm)) / section.lengthMm) / 2;
    const flank = Math.tan((section.flankAngleDeg * Math.PI) / 180);
    const rootWidthMm = flightWidthMm + 2 * Math.max(0, flightMm - rootMm) * flank;
    return [{ topMm: top.zMm, bottomMm: bottom.zMm, landMm: flightWidthMm, rootWidthMm, rootMm }];
  });
}

function tipEdge(tip: Revision['screw']['tip'], z: number, bodyMm: number): SidePoint[] {
  const pin = tip.pinDiameterMm / 2;
  const length =
    tip.kind === 'flat'
      ? 0
      : tip.kind === 'hemisphere'
        ? Math.sqrt(Math.max(0, bodyMm ** 2 - pin ** 2))
        : (bodyMm - pin) / Math.tan((tip.includedAngleDeg * Math.PI) / 360);
  const round = tip.kind === 'hemisphere' ? [0.2, 0.4, 0.6, 0.8] : [];
  const arc = round.map((share): SidePoint => [z + share * length, Math.sqrt(bodyMm ** 2 - (share * length) ** 2)]);
  const end = z + length;
  return [...arc, [end, pin], [end + tip.pinLengthMm, pin], [end + tip.pinLengthMm, 0]];
}

/** The side view of a screw in a bore. */
export function screwPicture(
  { sections, tip }: Pick<Revision['screw'], 'sections' | 'tip'>,
  boreMm: number,
  clearanceMm: number,
): ScrewPicture {
  const flightMm = boreMm / 2 - clearanceMm;
  const core: SidePoint[] = [];
  let z = 0;
  for (const section of sections) {
    core.push([z, section.rootDiameterStartMm / 2], [z + section.lengthMm, section.rootDiameterEndMm / 2]);
    z += section.lengthMm;
  }
  const tipPoints = tipEdge(tip, z, (sections.at(-1)?.rootDiameterEndMm ?? 0) / 2);
  return {
    core: [...core, ...tipPoints],
    passes: passesOf(runsOf(sections), flightMm),
    flightMm,
    lengthMm: tipPoints.at(-1)?.[0] ?? z,
  };
}
