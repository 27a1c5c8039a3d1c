/** The screw as functions of z: which section, root radius, lead and the flight's angle. */

import type { Barrel, FlightedSection, Screw, ScrewSection } from '../design/types.ts';

/** A section with its place on the axis. m. */
export interface PlacedSection {
  readonly index: number;
  readonly section: ScrewSection;
  /** m from z = 0 */
  readonly start: number;
  readonly end: number;
  /** turns of flight from z = 0 to the section's start; plain sections add none */
  readonly turnsBefore: number;
}

/** Radius of the flight's crest, m: bore radius less the radial clearance. */
export function flightRadius(design: { readonly barrel: Barrel; readonly screw: Screw }): number {
  return design.barrel.boreDiameter / 2 - design.screw.radialClearance;
}

/** Root radius at distance `u` (m) from the section's start, m; linear between start and end. */
export function rootRadiusAt(section: ScrewSection, u: number): number {
  const { rootDiameterStart: from, rootDiameterEnd: to, length } = section;
  return (from + ((to - from) * u) / length) / 2;
}

/** Change of root radius along z, dimensionless. */
export function rootSlope(section: ScrewSection): number {
  return (section.rootDiameterEnd - section.rootDiameterStart) / 2 / section.length;
}

/** Lead at distance `u` (m) from the section's start, m; linear between start and end. */
export function leadAt(section: FlightedSection, u: number): number {
  return section.leadStart + ((section.leadEnd - section.leadStart) * u) / section.length;
}

/**
 * Turns of the flight from the section's start to `u` (m): the integral of dz / lead, in closed form for a linear
 * lead: (L / d) ln(1 + d u / (L lead0)) with d the change of lead over the length L.
 */
export function turnsAt(section: FlightedSection, u: number): number {
  const change = section.leadEnd - section.leadStart;
  if (change === 0) return u / section.leadStart;
  return (section.length / change) * Math.log1p((change * u) / (section.length * section.leadStart));
}

/** Distance from the section's start after `turns` turns, m: inverse of `turnsAt`. */
export function distanceAfterTurns(section: FlightedSection, turns: number): number {
  const change = section.leadEnd - section.leadStart;
  if (change === 0) return turns * section.leadStart;
  return ((section.length * section.leadStart) / change) * Math.expm1((turns * change) / section.length);
}

/** Turns of flight over the whole section; 0 where plain. */
export function turnsOf(section: ScrewSection): number {
  return section.kind === 'flighted' ? turnsAt(section, section.length) : 0;
}

/** The sections with their places, in order. */
export function placeSections(screw: Screw): PlacedSection[] {
  let start = 0;
  let turnsBefore = 0;
  return screw.sections.map((section, index) => {
    const placed = { index, section, start, end: start + section.length, turnsBefore };
    start = placed.end;
    turnsBefore += turnsOf(section);
    return placed;
  });
}

/** Length of all sections, m: where the tip begins. */
export function sectionsLength(screw: Screw): number {
  return screw.sections.reduce((sum, section) => sum + section.length, 0);
}

/** The section at `z` (m), the earlier one at a boundary; null outside the sections. */
export function sectionAt(screw: Screw, z: number): PlacedSection | null {
  return placeSections(screw).find((placed) => z >= placed.start && z <= placed.end) ?? null;
}

/**
 * Angle of the first flight's centre at `z` inside a placed section, rad, from the x axis, growing with z (a right-hand
 * flight); a left-hand screw is the mirror image in y. Constant along plain sections.
 */
export function flightAngle(placed: PlacedSection, z: number): number {
  const within = placed.section.kind === 'flighted' ? turnsAt(placed.section, z - placed.start) : 0;
  return 2 * Math.PI * (placed.turnsBefore + within);
}
