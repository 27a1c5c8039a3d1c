/** What a side view shows of a machine as stored, whether or not it can be predicted. Plain geometry, no physics. */

import { barrelOf, nozzleOf, screwOf } from '../design/convert.ts';
import type { Design, FlightedSection, Screw } from '../design/types.ts';
import { flightProfileAt, halfWidthAt } from '../geometry/flightProfile.ts';
import { channelOutline } from '../geometry/outlines.ts';
import {
  distanceAfterTurns,
  flightRadius,
  leadAt,
  type PlacedSection,
  placeSections,
  rootRadiusAt,
  turnsOf,
} from '../geometry/profile.ts';
import type { AxialOutline, PlaneOutline } from '../geometry/types.ts';
import type { Revision } from '../project/schema.ts';

/** Outlines in the plane of the drawing, m: along the axis from the start of the bore, and away from the axis. */
export interface SideShape {
  /** root and tip without the shank, upper half */
  readonly root: AxialOutline;
  /** bore of barrel and nozzle, upper half */
  readonly bore: AxialOutline;
  /** flights where the plane through the axis cuts them; x along the axis, y from it */
  readonly cuts: readonly PlaneOutline[];
  /** crests on the side that faces the viewer */
  readonly crests: readonly PlaneOutline[];
}

/** Points of a fillet between root and flank, and of a crest over half a turn. */
const filletSteps = 4;
const crestSteps = 12;
/** More half turns than this are drawn by their cuts alone: crests would be a grey area. */
const mostCrests = 1500;

/** A flighted section in its place; the crest's radius, m. */
interface Flight {
  readonly placed: PlacedSection;
  readonly section: FlightedSection;
  readonly crest: number;
}

interface Spot {
  readonly x: number;
  readonly y: number;
}

const closed = (points: readonly Spot[]): PlaneOutline => ({
  x: Float64Array.from(points, ({ x }) => x),
  y: Float64Array.from(points, ({ y }) => y),
});

/** The flight's cut at distance `u` (m) from the section's start, kept within the section. */
function cutAt({ placed, section, crest }: Flight, u: number, side: 1 | -1): PlaneOutline {
  const profile = flightProfileAt(section, u, crest);
  const steps = profile.fillet > 0 ? filletSteps : 0;
  const heights = Array.from({ length: steps }, (_, i) => (profile.filletHeight * i) / steps);
  const radii = [...heights, profile.fillet > 0 ? profile.filletHeight : 0].map((y) => profile.floorRadius + y);
  radii.push(crest);
  const at = (r: number, way: 1 | -1): Spot => {
    const x = placed.start + u + way * halfWidthAt(profile, r);
    return { x: Math.min(placed.end, Math.max(placed.start, x)), y: side * r };
  };
  return closed([...radii.map((r) => at(r, -1)), ...[...radii].reverse().map((r) => at(r, 1))]);
}

/** Turns that each start of a flight is ahead of the first, from the section's start. */
const beginnings = ({ placed, section }: Flight): number[] =>
  Array.from({ length: section.starts }, (_, i) => placed.turnsBefore + i / section.starts);

function cutsOf(flight: Flight): PlaneOutline[] {
  const { section, crest } = flight;
  const turns = turnsOf(section);
  return beginnings(flight).flatMap((begin) => {
    const found: PlaneOutline[] = [];
    for (let half = Math.ceil(2 * begin); half < 2 * (begin + turns); half++) {
      const u = distanceAfterTurns(section, half / 2 - begin);
      if (rootRadiusAt(section, u) < crest) found.push(cutAt(flight, u, half % 2 === 0 ? 1 : -1));
    }
    return found;
  });
}

/** The crest between two counts of turns of one start. */
function crestBetween({ placed, section, crest }: Flight, begin: number, from: number, to: number): PlaneOutline {
  const line = (way: 1 | -1) =>
    Array.from({ length: crestSteps + 1 }, (_, i) => {
      const turns = from + ((to - from) * i) / crestSteps;
      const u = distanceAfterTurns(section, turns - begin);
      const x = placed.start + u + (way * Math.min(section.flightWidth, leadAt(section, u) / section.starts)) / 2;
      return { x: Math.min(placed.end, Math.max(placed.start, x)), y: crest * Math.cos(2 * Math.PI * turns) };
    });
  return closed([...line(-1), ...line(1).reverse()]);
}

/** A right-hand flight comes down in front of the axis, a left-hand one goes up there. */
function crestsOf(flight: Flight, hand: Screw['hand']): PlaneOutline[] {
  const turns = turnsOf(flight.section);
  const front = hand === 'right' ? 0 : 0.5;
  return beginnings(flight).flatMap((begin) => {
    const found: PlaneOutline[] = [];
    for (let turn = Math.floor(begin - front); turn + front < begin + turns; turn++) {
      const [from, to] = [Math.max(begin, turn + front), Math.min(begin + turns, turn + front + 0.5)];
      if (to > from) found.push(crestBetween(flight, begin, from, to));
    }
    return found;
  });
}

/** Every flighted section of a screw in its place. */
function flightsOf(parts: Pick<Design, 'screw' | 'barrel'>): Flight[] {
  const crest = flightRadius(parts);
  return placeSections(parts.screw).flatMap((placed): Flight[] =>
    placed.section.kind === 'flighted' ? [{ placed, section: placed.section, crest }] : [],
  );
}

/**
 * The flights of a design where a plane through the axis cuts them, with their fillets, m: x along the axis, y from it.
 * Each runs from the root up to the crest and down again.
 */
export const flightCuts = (design: Pick<Design, 'screw' | 'barrel'>): PlaneOutline[] =>
  flightsOf(design).flatMap(cutsOf);

/**
 * The side view's outlines.
 * @param revision machine in the file's shape; its values need not fit each other
 */
export function sideShape(revision: Revision): SideShape {
  const parts = { screw: screwOf(revision), barrel: barrelOf(revision), nozzle: nozzleOf(revision) };
  const flights = flightsOf(parts);
  const halfTurns = flights.reduce((sum, { section }) => sum + 2 * turnsOf(section) * section.starts, 0);
  const { inner, outer } = channelOutline(parts);
  return {
    root: inner,
    bore: outer,
    cuts: flights.flatMap(cutsOf),
    crests: halfTurns > mostCrests ? [] : flights.flatMap((flight) => crestsOf(flight, parts.screw.hand)),
  };
}
