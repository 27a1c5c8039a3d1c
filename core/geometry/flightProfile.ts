/**
 * The flight in the axial plane: half its axial width as a function of radius, with flanks and root fillets.
 *
 * At radius r the flight is land + 2 (Rf - r) tan(flank) wide along the axis, wider in the fillets, so in the transverse
 * section it spans the angle 2 pi / lead times that. This holds exactly for constant lead and defines the solid where
 * the lead varies. All formulas here are plain geometry.
 */

import type { FlightedSection } from '../design/types.ts';
import { leadAt, rootRadiusAt } from './profile.ts';

/** The flight's shape at one z. m, rad. */
export interface FlightProfile {
  readonly lead: number;
  readonly starts: number;
  /** lead over starts: axial distance of neighbouring flights */
  readonly pitch: number;
  /** radius of the channel's floor */
  readonly floorRadius: number;
  readonly flightRadius: number;
  /** half the axial width at the crest */
  readonly halfLand: number;
  /** flank angle from the plane normal to the axis */
  readonly flank: number;
  /** fillet radius in the axial plane */
  readonly fillet: number;
  /** height above the floor where the fillet meets the flank */
  readonly filletHeight: number;
  /** half the axial width where the unfilleted flank meets the floor */
  readonly halfFoot: number;
  /** half the axial width where the fillet meets the floor */
  readonly halfBase: number;
}

/** Least crest and floor as shares of the pitch, so that outlines never degenerate. */
const leastHalfLand = 5e-5;
const mostHalfLand = 0.48;
const mostHalfFoot = 0.49;
const mostHalfBase = 0.495;

/**
 * Flight profile of a section at distance `u` (m) from its start, crest at `flightRadius` (m).
 * Designs whose flanks or fillets would overlap are bounded: flanks that meet above the root raise the floor to where
 * they meet, fillets shrink to the room there is, a crest is at least 1e-4 of the pitch wide. Needs root < flight radius.
 */
export function flightProfileAt(section: FlightedSection, u: number, flightRadius: number): FlightProfile {
  const lead = leadAt(section, u);
  const pitch = lead / section.starts;
  const flank = section.flankAngle;
  const slope = Math.tan(flank);
  const halfLand = Math.min(Math.max(section.flightWidth / 2, leastHalfLand * pitch), mostHalfLand * pitch);
  const wanted = flightRadius - rootRadiusAt(section, u);
  const height = slope > 0 ? Math.min(wanted, (mostHalfFoot * pitch - halfLand) / slope) : wanted;
  const halfFoot = halfLand + height * slope;
  const spread = (1 - Math.sin(flank)) / Math.cos(flank);
  const fillet = Math.min(
    section.rootFillet,
    (mostHalfBase * pitch - halfFoot) / spread,
    (0.999 * height) / (1 - Math.sin(flank)),
  );
  return {
    lead,
    starts: section.starts,
    pitch,
    floorRadius: flightRadius - height,
    flightRadius,
    halfLand,
    flank,
    fillet,
    filletHeight: fillet * (1 - Math.sin(flank)),
    halfFoot,
    halfBase: halfFoot + fillet * spread,
  };
}

/** Half the axial width of the flight at radius `r` (m), m; the crest's above it, the base's below the floor. */
export function halfWidthAt(profile: FlightProfile, r: number): number {
  const y = r - profile.floorRadius;
  if (r >= profile.flightRadius) return profile.halfLand;
  if (y >= profile.filletHeight) return profile.halfFoot - y * Math.tan(profile.flank);
  const drop = profile.fillet - Math.max(y, 0);
  return profile.halfBase - Math.sqrt(Math.max(profile.fillet ** 2 - drop ** 2, 0));
}

/** The fillets' share of integral w(r) r dr of one flight, both sides, m³: spandrel area and its moment, closed form. */
function filletMoment(profile: FlightProfile): number {
  const { fillet, flank, filletHeight: top, floorRadius } = profile;
  const slope = Math.tan(flank);
  const offset = profile.halfBase - profile.halfFoot;
  const segment = (Math.PI / 2 - flank) / 2 - Math.sin(2 * flank) / 4;
  const area = offset * top + (slope * top ** 2) / 2 - fillet ** 2 * segment;
  const lever = segment - Math.cos(flank) ** 3 / 3;
  const moment = (offset * top ** 2) / 2 + (slope * top ** 3) / 3 - fillet ** 3 * lever;
  return 2 * (floorRadius * area + moment);
}

/** Area of all flights in the transverse section, from the floor to the crest, m². Closed form. */
export function flightArea(profile: FlightProfile): number {
  const { floorRadius: r, flightRadius: R, halfLand, flank, lead, starts } = profile;
  const straight = halfLand * (R * R - r * r) + (Math.tan(flank) * (R - r) ** 2 * (R + 2 * r)) / 3;
  return ((2 * Math.PI) / lead) * starts * (straight + filletMoment(profile));
}
