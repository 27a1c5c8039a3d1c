/** Sampling of the screw along z: the solvers' view of it. */

import type { Design, ScrewSection } from '../design/types.ts';
import { gaussLegendre } from '../math/gaussLegendre.ts';
import {
  channelWidth,
  freeArea,
  helixAngle,
  type SectionShape,
  sectionShape,
  wettedPerLength,
} from './crossSection.ts';
import type { FlightProfile } from './flightProfile.ts';
import { distanceAfterTurns, flightRadius, type PlacedSection, placeSections, turnsOf } from './profile.ts';
import type { Stations } from './types.ts';

const rule = gaussLegendre(3);

type Mutable = { -readonly [K in keyof Stations]: Stations[K] };

/** The arrays of `count` stations, zeroed. */
function emptyStations(count: number): Mutable {
  const floats = () => new Float64Array(count);
  return {
    count,
    z: floats(),
    section: new Uint16Array(count),
    flighted: new Uint8Array(count),
    rootRadius: floats(),
    barrelRadius: floats(),
    depth: floats(),
    lead: floats(),
    starts: new Uint8Array(count),
    flightWidth: floats(),
    flankAngle: floats(),
    rootFillet: floats(),
    helixRoot: floats(),
    helixMean: floats(),
    helixBarrel: floats(),
    widthBarrel: floats(),
    widthMean: floats(),
    freeArea: floats(),
    helicalLength: floats(),
    freeVolume: floats(),
    wettedArea: floats(),
  };
}

/** Intervals of a section: `perTurn` per turn of flight, or per bore diameter where plain; at least two. */
function intervalsOf(placed: PlacedSection, perTurn: number, bore: number): number {
  const { section } = placed;
  const turns = section.kind === 'flighted' ? turnsOf(section) : section.length / bore;
  return Math.max(2, Math.ceil(turns * perTurn - 1e-9));
}

/** Distance from the section's start at interval boundary `i` of `n`, m: equal turns, or equal lengths where plain. */
function distanceAt({ section }: PlacedSection, i: number, n: number): number {
  if (i === 0 || i === n) return i === 0 ? 0 : section.length;
  if (section.kind === 'plain') return (section.length * i) / n;
  return distanceAfterTurns(section, (turnsOf(section) * i) / n);
}

/** Fills the figures that only flighted stations have. */
function fillFlight(out: Mutable, at: number, section: ScrewSection, profile: FlightProfile | null): void {
  if (section.kind === 'plain' || !profile) return;
  const root = out.rootRadius[at] as number;
  const barrel = out.barrelRadius[at] as number;
  const mean = (root + barrel) / 2;
  out.flighted[at] = 1;
  out.lead[at] = profile.lead;
  out.starts[at] = section.starts;
  out.flightWidth[at] = section.flightWidth;
  out.flankAngle[at] = section.flankAngle;
  out.rootFillet[at] = section.rootFillet;
  out.helixRoot[at] = helixAngle(profile.lead, root);
  out.helixMean[at] = helixAngle(profile.lead, mean);
  out.helixBarrel[at] = helixAngle(profile.lead, barrel);
  out.widthBarrel[at] = channelWidth(profile, barrel);
  out.widthMean[at] = channelWidth(profile, mean);
}

/** Fills everything local to station `at`. */
function fillLocal(out: Mutable, at: number, placed: PlacedSection, u: number, crest: number, bore: number): void {
  const shape = sectionShape(placed.section, u, crest);
  const root = shape.rootRadius;
  out.z[at] = placed.start + u;
  out.section[at] = placed.index;
  out.rootRadius[at] = root;
  out.barrelRadius[at] = bore;
  out.depth[at] = bore - root;
  out.widthBarrel[at] = 2 * Math.PI * bore;
  out.widthMean[at] = Math.PI * (root + bore);
  out.freeArea[at] = freeArea(shape, bore);
  fillFlight(out, at, placed.section, shape.profile);
}

/** Path length along the channel at mean radius per axial length. */
function stretchOf({ rootRadius, profile }: SectionShape, bore: number): number {
  return profile ? Math.hypot(1, (Math.PI * (rootRadius + bore)) / profile.lead) : 1;
}

/** Starts the running integrals of station `at` where the one before ended. */
function carryOver({ helicalLength, freeVolume, wettedArea }: Mutable, at: number): void {
  for (const sums of [helicalLength, freeVolume, wettedArea]) sums[at] = sums[at - 1] ?? 0;
}

/** Adds the running integrals from distance `from` of the station before to distance `to` of station `at`. */
function accumulate(out: Mutable, at: number, section: ScrewSection, from: number, to: number, crest: number): void {
  const bore = out.barrelRadius[at] as number;
  const { helicalLength, freeVolume, wettedArea } = out;
  for (let i = 0; i < rule.nodes.length; i++) {
    const shape = sectionShape(section, from + (to - from) * (rule.nodes[i] as number), crest);
    const length = (to - from) * (rule.weights[i] as number);
    helicalLength[at] = (helicalLength[at] as number) + length * stretchOf(shape, bore);
    freeVolume[at] = (freeVolume[at] as number) + length * freeArea(shape, bore);
    wettedArea[at] = (wettedArea[at] as number) + length * wettedPerLength(shape, bore);
  }
}

/**
 * Samples screw and bore along the sections, `stationsPerTurn` intervals per turn of lead (per bore diameter where
 * plain), at equal turns, section boundaries doubled. The bore is the barrel's along all sections (a screw whose
 * sections outrun the barrel is refused by validation). Running integrals by three-point Gauss per interval.
 * `stationsPerTurn` >= 1. Helical length runs straight along plain sections.
 */
export function buildStations(design: Design, stationsPerTurn: number): Stations {
  const bore = design.barrel.boreDiameter / 2;
  const crest = flightRadius(design);
  const placed = placeSections(design.screw);
  const intervals = placed.map((each) => intervalsOf(each, stationsPerTurn, 2 * bore));
  const out = emptyStations(intervals.reduce((sum, n) => sum + n + 1, 0));
  let at = 0;
  placed.forEach((each, s) => {
    const n = intervals[s] as number;
    let from = 0;
    for (let i = 0; i <= n; i++, at++) {
      const u = distanceAt(each, i, n);
      fillLocal(out, at, each, u, crest, bore);
      carryOver(out, at);
      if (i > 0) accumulate(out, at, each.section, from, u, crest);
      from = u;
    }
  });
  return out;
}
