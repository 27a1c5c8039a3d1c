/** Facts of the transverse and normal section at one z: free area, widths, wetted perimeter. */

import type { ScrewSection } from '../design/types.ts';
import { integrate } from '../math/quadrature.ts';
import { type FlightProfile, flightArea, flightProfileAt, halfWidthAt } from './flightProfile.ts';
import { rootRadiusAt, rootSlope } from './profile.ts';

/** A section of screw at one z. */
export interface SectionShape {
  /** m */
  readonly rootRadius: number;
  /** change of root radius along z */
  readonly slope: number;
  /** the flight's shape; null where plain */
  readonly profile: FlightProfile | null;
}

/** Shape of a section at `u` (m) from its start, crest at `crest` (m). */
export function sectionShape(section: ScrewSection, u: number, crest: number): SectionShape {
  const profile = section.kind === 'flighted' ? flightProfileAt(section, u, crest) : null;
  return { rootRadius: rootRadiusAt(section, u), slope: rootSlope(section), profile };
}

/** Solid area of the screw in the transverse section, m². */
export function solidArea({ rootRadius, profile }: SectionShape): number {
  if (!profile) return Math.PI * rootRadius ** 2;
  return Math.PI * profile.floorRadius ** 2 + flightArea(profile);
}

/** Free area of the transverse section between screw and bore (`boreRadius`, m), all channels and the gap, m². */
export function freeArea(shape: SectionShape, boreRadius: number): number {
  return Math.PI * boreRadius ** 2 - solidArea(shape);
}

/** Helix angle at radius `r` for a lead (both m), rad: atan(lead / (2 pi r)). */
export function helixAngle(lead: number, r: number): number {
  return Math.atan(lead / (2 * Math.PI * r));
}

/** Channel width normal to the flight at radius `r` (m), m: axial gap times the cosine of the helix angle there. */
export function channelWidth(profile: FlightProfile, r: number): number {
  return (profile.pitch - 2 * halfWidthAt(profile, r)) * Math.cos(helixAngle(profile.lead, r));
}

/** Primitive of sqrt(1 + c² r²). */
function flankPrimitive(c: number, r: number): number {
  return (r / 2) * Math.sqrt(1 + (c * r) ** 2) + Math.asinh(c * r) / (2 * c);
}

/**
 * Area of one flank with its fillet per axial length, m. The flank is the surface theta = 2 pi (z +- x(r)) / lead, whose
 * element is sqrt(1 + k² r² (1 + x'(r)²)) dr dz with k = 2 pi / lead; straight part in closed form, fillet by Gauss.
 */
function flankAreaPerLength(profile: FlightProfile): number {
  const k = (2 * Math.PI) / profile.lead;
  const { flank, fillet, floorRadius, filletHeight, flightRadius } = profile;
  const c = k / Math.cos(flank);
  const straight = flankPrimitive(c, flightRadius) - flankPrimitive(c, floorRadius + filletHeight);
  if (fillet === 0) return straight;
  const element = (phi: number) => {
    const r = floorRadius + fillet * (1 - Math.sin(phi));
    return fillet * Math.hypot(Math.cos(phi), k * r);
  };
  return straight + integrate(element, flank, Math.PI / 2);
}

/**
 * Wetted area per axial length, m: floor, both flanks of every flight with their fillets (true helical area) and the
 * whole bore of radius `boreRadius` (m). The land is left out: only the clearance wets it.
 */
export function wettedPerLength(shape: SectionShape, boreRadius: number): number {
  const { profile } = shape;
  const bore = 2 * Math.PI * boreRadius;
  const taper = Math.hypot(1, shape.slope);
  if (!profile) return bore + 2 * Math.PI * shape.rootRadius * taper;
  const openShare = 1 - (2 * profile.halfBase) / profile.pitch;
  const floor = 2 * Math.PI * profile.floorRadius * openShare * taper;
  return bore + floor + 2 * profile.starts * flankAreaPerLength(profile);
}
