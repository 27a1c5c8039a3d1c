/** The room that granules find: hopper mouth, feed opening and the channel under it. A ball is pushed out of what is solid. */

import type { Design } from '../../design/types.ts';
import { type FlightProfile, flightProfileAt, halfWidthAt } from '../../geometry/flightProfile.ts';
import { flightRadius, type PlacedSection, placeSections, rootRadiusAt, turnsAt } from '../../geometry/profile.ts';

/** A point being pushed, m; the machine's frame: axis z, +y up. */
export type Point = [number, number, number];

/** What is drawn of the machine's inside. */
export interface GrainRoom {
  /** ends of the stretch of channel, m */
  readonly from: number;
  readonly to: number;
  /** height of the hopper's seat above the axis, m, and its radius there */
  readonly seat: number;
  readonly mouth: number;
  /** change of the hopper's radius with height */
  readonly widening: number;
  /** middle of the opening, half its length and width, m */
  readonly middle: number;
  readonly halfLength: number;
  readonly halfWidth: number;
  readonly bore: number;
  /** half the thickness of the slab that is drawn, m; Infinity: all */
  readonly slab: number;
  readonly screw: ScrewAt;
}

/** The screw at z: radius of its root, and its flights where there are any. */
type ScrewAt = (z: number) => { readonly root: number; readonly turns: number; readonly flight: FlightProfile | null };

function screwOf(design: Design): ScrewAt {
  const placed = placeSections(design.screw);
  const crest = flightRadius(design);
  const last = placed[placed.length - 1] as PlacedSection;
  return (z) => {
    const at = placed.find(({ end }) => z <= end) ?? last;
    const u = Math.min(Math.max(z - at.start, 0), at.section.length);
    if (at.section.kind === 'plain') return { root: rootRadiusAt(at.section, u), turns: 0, flight: null };
    const turns = at.turnsBefore + turnsAt(at.section, u);
    return { root: rootRadiusAt(at.section, u), turns, flight: flightProfileAt(at.section, u, crest) };
  };
}

/** Turns of the screw beyond the opening that are drawn, upstream and downstream. */
const beyond = [0.5, 1.5] as const;

/** The room of a design; `slab` half the thickness drawn about the plane through the axis, m. */
export function grainRoom(design: Design, slab: number): GrainRoom {
  const { barrel, hopper } = design;
  const { start, length, width } = barrel.feedOpening;
  const screw = screwOf(design);
  const lead = screw(start + length / 2).flight?.lead ?? barrel.boreDiameter;
  const bore = barrel.boreDiameter / 2;
  return {
    from: Math.max(0, start - beyond[0] * lead),
    to: Math.min(barrel.length, start + length + beyond[1] * lead),
    seat: barrel.outerDiameter / 2,
    mouth: hopper.outletDiameter / 2,
    widening: Math.tan(hopper.wallHalfAngle),
    middle: start + length / 2,
    halfLength: length / 2,
    // as the barrel is cut: an opening is at most that share of the bore wide
    halfWidth: Math.min(width / 2, 0.99 * bore),
    bore,
    slab,
    screw,
  };
}

const hold = (value: number, most: number): number => Math.min(Math.max(value, -most), Math.max(0, most));

/** Pushes a ball off root and flights. */
function offScrew(room: GrainRoom, hand: 1 | -1, p: Point, ball: number): void {
  const r = Math.hypot(p[0], p[1]);
  const { root, turns, flight } = room.screw(p[2]);
  const least = root + ball;
  if (r < least && r > 1e-9) {
    p[0] *= least / r;
    p[1] *= least / r;
  }
  if (!flight) return;
  const reach = Math.max(r, least);
  const pitch = flight.pitch;
  const angle = (hand * Math.atan2(p[1], p[0])) / (2 * Math.PI);
  let off = (turns - angle) * flight.lead;
  off -= pitch * Math.round(off / pitch);
  const slope = Math.cos(Math.atan(flight.lead / (2 * Math.PI * reach)));
  const side = off < 0 ? -1 : 1;
  const beside = (Math.abs(off) - halfWidthAt(flight, Math.min(reach, flight.flightRadius))) * slope;
  const above = reach - flight.flightRadius;
  if (above >= ball || beside >= ball) return;
  if (above > 0 && beside > 0) {
    const near = Math.hypot(above, beside);
    if (near >= ball || near < 1e-12) return;
    slide(p, reach, ((ball - near) * above) / near, (side * (ball - near) * beside) / near / slope);
  } else if (beside - ball > above - ball || beside > 0) slide(p, reach, 0, (side * (ball - beside)) / slope);
  else slide(p, reach, ball - above, 0);
}

function slide(p: Point, r: number, out: number, along: number): void {
  const share = r > 1e-9 ? (r + out) / r : 1;
  p[0] *= share;
  p[1] *= share;
  p[2] += along;
}

/** Keeps a ball inside bore or opening. */
function insideBarrel(room: GrainRoom, p: Point, ball: number): void {
  const r = Math.hypot(p[0], p[1]);
  const alongOff = p[2] - room.middle;
  const below = p[1] > 0 && Math.abs(p[0]) < room.halfWidth && Math.abs(alongOff) < room.halfLength;
  if (!below && 2 * ball > room.bore - room.screw(p[2]).root) {
    // what is thicker than the channel is deep cannot leave the opening
    p[0] = hold(p[0], room.halfWidth - ball);
    p[1] = Math.max(p[1], ball);
    p[2] = room.middle + hold(alongOff, room.halfLength - ball);
    return;
  }
  if (!below) {
    const most = room.bore - ball;
    if (r > most && r > 0) {
      p[0] *= Math.max(0, most) / r;
      p[1] *= Math.max(0, most) / r;
    }
    return;
  }
  const under = room.bore - r;
  if (under >= ball) return;
  // at the edge of the opening the ball touches the edge, above it the walls
  const wall = under > 0 ? Math.sqrt(ball * ball - under * under) : ball;
  p[0] = hold(p[0], room.halfWidth - wall);
  p[2] = room.middle + hold(alongOff, room.halfLength - wall);
}

/** Keeps a ball inside the hopper's cone and, over its seat, off what is beside the opening. */
function insideHopper(room: GrainRoom, p: Point, ball: number): void {
  const height = p[1] - room.seat;
  const most = room.mouth + Math.max(0, height) * room.widening - ball * Math.hypot(1, room.widening);
  const off = Math.hypot(p[0], p[2] - room.middle);
  if (off > most && off > 0) {
    const share = Math.max(0, most) / off;
    p[0] *= share;
    p[2] = room.middle + (p[2] - room.middle) * share;
  }
  const over = Math.abs(p[0]) < room.halfWidth && Math.abs(p[2] - room.middle) < room.halfLength;
  if (!over && height < ball) p[1] = room.seat + ball;
}

/** Pushes a ball of radius `ball` (m) out of everything solid, in place. */
export function pushInside(room: GrainRoom, hand: 1 | -1, p: Point, ball: number): void {
  const high = p[1] > room.seat - 0.25 * ball;
  if (high) insideHopper(room, p, ball);
  else {
    insideBarrel(room, p, ball);
    p[2] = Math.min(Math.max(p[2], room.from + ball), room.to - ball);
  }
  if (p[1] < room.seat) offScrew(room, hand, p, ball);
  if (Number.isFinite(room.slab)) p[0] = hold(p[0], room.slab - Math.min(ball, room.slab));
}

/**
 * How far a ball stands in something solid, m: the longest way that any one solid would push it. What stands between
 * two solids that both push is found too.
 */
export function depthInSolid(room: GrainRoom, hand: 1 | -1, p: Point, ball: number): number {
  const way = (push: (moved: Point) => void) => {
    const moved: Point = [...p];
    push(moved);
    return Math.hypot(moved[0] - p[0], moved[1] - p[1], moved[2] - p[2]);
  };
  if (p[1] > room.seat - 0.25 * ball) return way((moved) => insideHopper(room, moved, ball));
  return Math.max(
    way((moved) => insideBarrel(room, moved, ball)),
    way((moved) => offScrew(room, hand, moved, ball)),
  );
}
