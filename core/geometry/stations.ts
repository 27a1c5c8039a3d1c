/** Sampling of the screw along z: the solvers' view of it. */

import type { Design } from '../design/types.ts';
import { integrate } from '../math/quadrature.ts';
import { channelWidth, freeAreaAt, helixAngle, wettedPerLength } from './crossSection.ts';
import { flightProfileAt } from './flightProfile.ts';
import {
  distanceAfterTurns,
  flightRadius,
  leadAt,
  type PlacedSection,
  placeSections,
  rootRadiusAt,
  turnsOf,
} from './profile.ts';
import type { Stations } from './types.ts';

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
function fillFlight(out: Mutable, at: number, { section }: PlacedSection, u: number, crest: number): void {
  if (section.kind === 'plain') return;
  const profile = flightProfileAt(section, u, crest);
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
  const root = rootRadiusAt(placed.section, u);
  out.z[at] = placed.start + u;
  out.section[at] = placed.index;
  out.rootRadius[at] = root;
  out.barrelRadius[at] = bore;
  out.depth[at] = bore - root;
  out.widthBarrel[at] = 2 * Math.PI * bore;
  out.widthMean[at] = Math.PI * (root + bore);
  out.freeArea[at] = freeAreaAt(placed.section, u, crest, bore);
  fillFlight(out, at, placed, u, crest);
}

/** Adds the running integrals from station `at - 1` (at distance `from`) to `at` (at distance `to`). */
function accumulate(out: Mutable, at: number, placed: PlacedSection, from: number, to: number, crest: number): void {
  const { section } = placed;
  const bore = out.barrelRadius[at] as number;
  const stretch = (u: number) => {
    if (section.kind === 'plain') return 1;
    return Math.hypot(1, (Math.PI * (rootRadiusAt(section, u) + bore)) / leadAt(section, u));
  };
  const add = (sums: Float64Array, f: (u: number) => number) => {
    sums[at] = (sums[at - 1] as number) + integrate(f, from, to);
  };
  add(out.helicalLength, stretch);
  add(out.freeVolume, (u) => freeAreaAt(section, u, crest, bore));
  add(out.wettedArea, (u) => wettedPerLength(section, u, crest, bore));
}

/**
 * Samples screw and bore along the sections, `stationsPerTurn` intervals per turn of lead (per bore diameter where
 * plain), at equal turns, section boundaries doubled. The bore is the barrel's along all sections (a screw whose
 * sections outrun the barrel is refused by validation). Running integrals by five-point Gauss per interval.
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
      if (i > 0) accumulate(out, at, each, from, u, crest);
      else if (at > 0)
        for (const sums of [out.helicalLength, out.freeVolume, out.wettedArea]) sums[at] = sums[at - 1] as number;
      from = u;
    }
  });
  return out;
}
