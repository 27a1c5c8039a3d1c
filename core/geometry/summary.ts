/** Figures of the geometry as a whole. */

import type { Design, FlightedSection, ScrewSection } from '../design/types.ts';
import { integrateParts } from '../math/quadrature.ts';
import { boreEnd, borePieces, gapToNarrowing } from './bore.ts';
import { freeArea, sectionShape, solidArea } from './crossSection.ts';
import { flightRadius, leadAt, type PlacedSection, placeSections, sectionsLength, turnsOf } from './profile.ts';
import { revolvedVolume } from './revolved.ts';
import { tipPieces, tipShape } from './tip.ts';
import type { GeometrySummary, Stations } from './types.ts';

/** Solid volume of one section, m³: the section's area integrated by Gauss, several parts per turn. */
export function sectionVolume(section: ScrewSection, crest: number): number {
  const parts = 4 + 2 * Math.ceil(turnsOf(section));
  return integrateParts((u) => solidArea(sectionShape(section, u, crest)), 0, section.length, parts);
}

/** Solid volume of sections and tip, m³. */
export function screwVolume(design: Design): number {
  const crest = flightRadius(design);
  const tip = tipShape(design);
  const body = design.screw.sections.reduce((sum, section) => sum + sectionVolume(section, crest), 0);
  return body + revolvedVolume(tipPieces(tip), tip.start, tip.end);
}

/** Solid volume of the shank, m³. */
export function shankVolume(design: Design): number {
  return (Math.PI / 4) * design.screw.shankDiameter ** 2 * design.screw.shankLength;
}

type PlacedFlight = PlacedSection & { readonly section: FlightedSection };

/** The place on a flight nearest to `z` (m): section and distance from its start; null where the screw has no flight. */
function nearestFlight(design: Design, z: number): { section: FlightedSection; u: number } | null {
  const isFlight = (placed: PlacedSection): placed is PlacedFlight => placed.section.kind === 'flighted';
  let best: { section: FlightedSection; u: number } | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const placed of placeSections(design.screw).filter(isFlight)) {
    const nearest = Math.min(Math.max(z, placed.start), placed.end);
    if (Math.abs(nearest - z) >= least) continue;
    least = Math.abs(nearest - z);
    best = { section: placed.section, u: nearest - placed.start };
  }
  return best;
}

/**
 * Free volume of one turn, m³, by the section at the flight nearest to `z` (m): free area times lead. Exact for a
 * constant channel, the local value on a taper. On a screw without flights, one bore diameter of the nearest annulus.
 */
function volumePerTurn(design: Design, z: number): number {
  const crest = flightRadius(design);
  const bore = design.barrel.boreDiameter / 2;
  const flight = nearestFlight(design, z);
  if (flight) return freeArea(sectionShape(flight.section, flight.u, crest), bore) * leadAt(flight.section, flight.u);
  const placed = placeSections(design.screw);
  const within = placed.find((each) => z <= each.end) ?? placed[placed.length - 1];
  if (!within) return 0;
  const u = Math.min(Math.max(z - within.start, 0), within.section.length);
  return freeArea(sectionShape(within.section, u, crest), bore) * 2 * bore;
}

/** Least diameter that carries torque, m, and its z, m: roots of all sections and the shank (place: its middle, z < 0). */
function leastRoot(design: Design): { diameter: number; at: number } {
  const { shankDiameter, shankLength } = design.screw;
  const candidates = placeSections(design.screw).flatMap(({ section, start, end }) => [
    { diameter: section.rootDiameterStart, at: start },
    { diameter: section.rootDiameterEnd, at: end },
  ]);
  if (shankLength > 0) candidates.push({ diameter: shankDiameter, at: -shankLength / 2 });
  return candidates.reduce((least, next) => (next.diameter < least.diameter ? next : least));
}

/** Melt volume between tip and bore in the barrel, and in the nozzle less what of the tip stands in it, m³. */
function meltVolumes(design: Design): { tip: number; nozzle: number } {
  const tip = tipShape(design);
  const bore = borePieces(design);
  const solid = tipPieces(tip);
  const between = (from: number, to: number) => revolvedVolume(bore, from, to) - revolvedVolume(solid, from, to);
  const split = Math.max(design.barrel.length, tip.start);
  return { tip: between(tip.start, split), nozzle: between(split, Math.max(boreEnd(design), split)) };
}

/**
 * Figures of the whole geometry. The feed volume is taken at the middle of the feed opening, the end volume at the end
 * of the last flight (see `volumePerTurn` for plain stretches); wetted area and channel volume are those of the
 * sections. `stations` must come from the same design.
 */
export function measureGeometry(design: Design, stations: Stations): GeometrySummary {
  const { start, length } = design.barrel.feedOpening;
  const tip = tipShape(design);
  const melt = meltVolumes(design);
  const least = leastRoot(design);
  const feed = volumePerTurn(design, start + length / 2);
  const end = volumePerTurn(design, sectionsLength(design.screw));
  return {
    sectionsLength: tip.start,
    tipEnd: tip.end,
    tipGap: gapToNarrowing(design, tip.end),
    flightRadius: flightRadius(design),
    feedVolumePerTurn: feed,
    endVolumePerTurn: end,
    compressionRatio: feed / end,
    channelVolume: stations.freeVolume[stations.count - 1] ?? 0,
    tipVolume: melt.tip,
    nozzleVolume: melt.nozzle,
    wettedArea: stations.wettedArea[stations.count - 1] ?? 0,
    screwVolume: screwVolume(design),
    shankVolume: shankVolume(design),
    leastRootDiameter: least.diameter,
    leastRootAt: least.at,
  };
}
