/** Cross-sections that stand for a screw section: one where it is constant, a few along a taper or a changing lead. */

import type { Design } from '../design/types.ts';
import { type HelicalSection, largestRootFillet } from '../flow/field/channelSection.ts';
import type { ReachShape } from '../flow/reach.ts';
import { channelWidth, helixAngle } from '../geometry/crossSection.ts';
import { type FlightProfile, flightProfileAt } from '../geometry/flightProfile.ts';
import { flightRadius, type PlacedSection, placeSections } from '../geometry/profile.ts';
import { keyNumber } from './fieldCache.ts';

/** A cross-section in units of the barrel radius, as the solver and as the unrolled channel see it. */
export interface ChannelShape {
  /** dimensionless shape as text */
  readonly key: string;
  readonly section: HelicalSection;
  /** without clearance: leakage is counted apart */
  readonly reach: ReachShape;
  /** strip at each flank where the barrel's stress is not counted: the clearance, 0.5 to 10 % of the depth */
  readonly cut: number;
}

/** A shape with its place on the screw. */
export interface PlacedShape {
  /** m */
  readonly z: number;
  /** index into screw.sections */
  readonly section: number;
  readonly shape: ChannelShape;
}

/** Change of ln(depth) or ln(lead) that one pair of shapes may span; factors bend by under 0.5 % within it. */
const widestStep = 0.35;

/** Section for the solver, in units of the barrel radius. Flanks run on from the crest to the barrel. */
function solverSection(profile: FlightProfile, barrelRadius: number): HelicalSection {
  const depth = barrelRadius - profile.floorRadius;
  const bare: HelicalSection = {
    kind: 'helical',
    barrelRadius: 1,
    rootRadius: profile.floorRadius / barrelRadius,
    lead: profile.lead / barrelRadius,
    starts: profile.starts,
    flightAxialWidth: (2 * profile.halfLand) / barrelRadius,
    flankAngle: Math.atan((profile.halfFoot - profile.halfLand) / depth),
    rootFillet: 0,
  };
  return { ...bare, rootFillet: Math.min(profile.fillet / barrelRadius, 0.999 * largestRootFillet(bare)) };
}

/** The same as the unrolled channel sees it, in units of the barrel radius. */
function unrolled(profile: FlightProfile, barrelRadius: number): ReachShape {
  const middle = (profile.floorRadius + barrelRadius) / 2;
  return {
    flighted: true,
    rootRadius: profile.floorRadius / barrelRadius,
    barrelRadius: 1,
    depth: 1 - profile.floorRadius / barrelRadius,
    starts: profile.starts,
    helixBarrel: helixAngle(profile.lead, barrelRadius),
    helixMean: helixAngle(profile.lead, middle),
    widthBarrel: channelWidth(profile, barrelRadius) / barrelRadius,
    widthMean: channelWidth(profile, middle) / barrelRadius,
    land: ((2 * profile.halfLand) / barrelRadius) * Math.cos(helixAngle(profile.lead, barrelRadius)),
    clearance: 0,
  };
}

/** Shape of a flight profile under a barrel (radius, m). */
export function channelShape(profile: FlightProfile, barrelRadius: number): ChannelShape {
  const section = solverSection(profile, barrelRadius);
  const depth = barrelRadius - profile.floorRadius;
  const clearance = (barrelRadius - profile.flightRadius) / depth;
  const cut = Number(Math.min(0.1, Math.max(0.005, clearance)).toPrecision(2));
  const { rootRadius, lead, starts, flightAxialWidth, flankAngle, rootFillet } = section;
  const numbers = [rootRadius, lead, starts, flightAxialWidth, flankAngle, rootFillet, cut];
  return { key: numbers.map(keyNumber).join(' '), section, reach: unrolled(profile, barrelRadius), cut };
}

/** Distances along a section, m, at which its shapes are taken: fixed by the section alone. */
function places({ section }: PlacedSection, profileAt: (u: number) => FlightProfile, barrelRadius: number): number[] {
  const [first, last] = [profileAt(0), profileAt(section.length)];
  const depth = (profile: FlightProfile) => barrelRadius - profile.floorRadius;
  const change = Math.max(Math.abs(Math.log(depth(last) / depth(first))), Math.abs(Math.log(last.lead / first.lead)));
  if (change < 1e-9) return [section.length / 2];
  const steps = Math.min(6, Math.ceil(change / widestStep));
  return Array.from({ length: steps + 1 }, (_, i) => (section.length * i) / steps);
}

/** Shapes of all flighted sections in order along the screw. */
export function placedShapes(design: Design): PlacedShape[] {
  const barrelRadius = design.barrel.boreDiameter / 2;
  const crest = flightRadius(design);
  return placeSections(design.screw).flatMap((placed) => {
    const { section, start, index } = placed;
    if (section.kind === 'plain') return [];
    const profileAt = (u: number) => flightProfileAt(section, u, crest);
    return places(placed, profileAt, barrelRadius).map((u) => ({
      z: start + u,
      section: index,
      shape: channelShape(profileAt(u), barrelRadius),
    }));
  });
}

/** The one or two shapes around a place of a section, with linear weights. */
export function shapesAround(
  shapes: readonly PlacedShape[],
  section: number,
  z: number,
): { readonly placed: PlacedShape; readonly weight: number }[] {
  const own = shapes.filter((placed) => placed.section === section);
  const after = own.findIndex((placed) => placed.z >= z);
  if (own.length === 0) return [];
  if (after === 0) return [{ placed: own[0], weight: 1 }];
  if (after < 0) return [{ placed: own[own.length - 1], weight: 1 }];
  const [before, next] = [own[after - 1], own[after]];
  const weight = (z - before.z) / (next.z - before.z);
  return [
    { placed: before, weight: 1 - weight },
    { placed: next, weight },
  ].filter((each) => each.weight > 1e-9);
}
