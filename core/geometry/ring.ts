/** Transverse outlines of the screw in polar coordinates, with a fixed order of points. */

import type { FlightedSection, ScrewSection } from '../design/types.ts';
import { type FlightProfile, flightProfileAt } from './flightProfile.ts';
import type { MeshOptions } from './types.ts';

/**
 * A closed outline in one plane, seen from +z, counter-clockwise. Angles (rad) never fall over one full turn; two
 * points at one angle are a radial step, as at square flanks. Between points angle and radius (m) run linearly.
 */
export interface Ring {
  readonly z: number;
  readonly theta: Float64Array;
  readonly r: Float64Array;
}

/** Chords per feature of one flight pitch. */
export interface RingCounts {
  readonly floor: number;
  readonly land: number;
  readonly flank: number;
  readonly fillet: number;
}

/** Least chords over a fillet: its sag in the axial plane is then a hundredth of its radius. */
const leastFillet = 5;
/**
 * Flank chords per ring in a turn, for a flight as high as the crest radius. A flank's facets are skew, which costs
 * height times turn between rings; this many keep it below the sag of the crest.
 */
const flankShare = 0.12;

/**
 * Chords for a section (`crest` m) so that no arc spans more than a turn over `aroundCount`; equal for all sections of the same
 * number of starts, so that unbroken flights keep their points across section boundaries.
 */
export function ringCounts(
  section: FlightedSection,
  all: readonly ScrewSection[],
  crest: number,
  { aroundCount, ringsPerTurn }: MeshOptions,
): RingCounts {
  const most = { floor: 0, land: 0, flank: 0, fillet: 0, height: 0 };
  for (const each of all) {
    if (each.kind !== 'flighted' || each.starts !== section.starts) continue;
    for (const u of [0, each.length]) {
      const profile = flightProfileAt(each, u, crest);
      const perTurn = aroundCount / profile.lead;
      most.floor = Math.max(most.floor, (profile.pitch - 2 * profile.halfBase) * perTurn);
      most.land = Math.max(most.land, 2 * profile.halfLand * perTurn);
      most.flank = Math.max(most.flank, (profile.halfFoot - profile.halfLand) * perTurn);
      most.fillet = Math.max(most.fillet, profile.fillet * perTurn);
      most.height = Math.max(most.height, crest - profile.floorRadius);
    }
  }
  const skew = (flankShare * ringsPerTurn * most.height) / crest;
  return {
    floor: Math.max(2, Math.ceil(most.floor)),
    land: Math.max(2, Math.ceil(most.land)),
    flank: Math.max(1, Math.ceil(skew), Math.ceil(most.flank)),
    fillet: section.rootFillet > 0 ? Math.max(leastFillet, Math.ceil(most.fillet)) : 0,
  };
}

/** Half axial width and radius of one side from floor to crest, m; widths never grow on the way up. */
function sidePoints(profile: FlightProfile, counts: RingCounts): { x: number; r: number }[] {
  const { floorRadius, fillet, flank, filletHeight, halfBase, halfLand, flightRadius } = profile;
  const points: { x: number; r: number }[] = [];
  for (let i = 0; i < counts.fillet; i++) {
    const phi = Math.PI / 2 - ((Math.PI / 2 - flank) * i) / counts.fillet;
    points.push({ x: halfBase - fillet * Math.cos(phi), r: floorRadius + fillet * (1 - Math.sin(phi)) });
  }
  const foot = floorRadius + filletHeight;
  for (let i = 0; i <= counts.flank; i++) {
    const r = i === counts.flank ? flightRadius : foot + ((flightRadius - foot) * i) / counts.flank;
    points.push({ x: halfLand + (flightRadius - r) * Math.tan(flank), r });
  }
  return points.map((point) => ({ x: Math.min(Math.max(point.x, halfLand), halfBase), r: point.r }));
}

/** Outline of one pitch about the flight's centre: axial offset x (m, rising) and radius (m). */
function pitchPoints(profile: FlightProfile, counts: RingCounts): { x: number; r: number }[] {
  const side = sidePoints(profile, counts);
  const points = side.map(({ x, r }) => ({ x: -x, r }));
  for (let i = 1; i < counts.land; i++) {
    points.push({ x: profile.halfLand * ((2 * i) / counts.land - 1), r: profile.flightRadius });
  }
  for (const point of [...side].reverse()) points.push(point);
  const gap = profile.pitch - 2 * profile.halfBase;
  for (let i = 1; i < counts.floor; i++) {
    points.push({ x: profile.halfBase + (gap * i) / counts.floor, r: profile.floorRadius });
  }
  return points;
}

/** Outline of a flighted section with the first flight's centre at `phase` (rad). */
export function flightRing(profile: FlightProfile, counts: RingCounts, phase: number, z: number): Ring {
  const points = pitchPoints(profile, counts);
  const size = points.length;
  const theta = new Float64Array(size * profile.starts);
  const r = new Float64Array(size * profile.starts);
  const turn = (2 * Math.PI) / profile.lead;
  for (let flight = 0; flight < profile.starts; flight++) {
    const centre = phase + (2 * Math.PI * flight) / profile.starts;
    points.forEach((point, i) => {
      theta[flight * size + i] = centre + turn * point.x;
      r[flight * size + i] = point.r;
    });
  }
  return { z, theta, r };
}

/** The same outline turned by `angle` (rad) at another `z` (m). */
export function turnedRing(ring: Ring, angle: number, z: number): Ring {
  return { z, theta: ring.theta.map((theta) => theta + angle), r: ring.r };
}

/** A circle of radius `radius` (m) with points at the given angles (rad). */
export function circleRing(angles: Float64Array, radius: number, z: number): Ring {
  return { z, theta: angles, r: new Float64Array(angles.length).fill(radius) };
}

/** `count` equally spaced angles, rad. */
export function evenAngles(count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => (2 * Math.PI * i) / count);
}

/** The angles of a ring, each once, rad. */
export function distinctAngles(ring: Ring): Float64Array {
  return ring.theta.filter((angle, i) => i === 0 || angle - (ring.theta[i - 1] as number) > 1e-7);
}
