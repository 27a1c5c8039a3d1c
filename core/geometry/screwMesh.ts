/** The screw as one closed triangle mesh: shank, sections, tip. */

import type { Design, FlightedSection } from '../design/types.ts';
import { helixAngle } from './crossSection.ts';
import { flightProfileAt } from './flightProfile.ts';
import {
  addFan,
  addRing,
  addStrip,
  type Chain,
  chordDeviation,
  createBuilder,
  finishMesh,
  type MeshBuilder,
} from './meshBuilder.ts';
import { addJunction } from './overlay.ts';
import { distanceAfterTurns, flightRadius, type PlacedSection, placeSections, turnsOf } from './profile.ts';
import { circleRing, distinctAngles, evenAngles, flightRing, type Ring, ringCounts, turnedRing } from './ring.ts';
import { screwVolume, shankVolume } from './summary.ts';
import { tipOutline, tipShape } from './tip.ts';
import type { MeasuredMesh, MeshOptions } from './types.ts';

/** A stretch of rings with one order of points. */
type Stretch = readonly Ring[];

/** Rings of a flighted section at equal turns; at least three, so that each strip touches one junction at most. */
function flightStretch(design: Design, placed: PlacedSection, section: FlightedSection, options: MeshOptions): Stretch {
  const crest = flightRadius(design);
  const counts = ringCounts(section, design.screw.sections, crest, options);
  const turns = turnsOf(section);
  const n = Math.max(2, Math.ceil(turns * options.ringsPerTurn));
  const isUniform = section.leadStart === section.leadEnd && section.rootDiameterStart === section.rootDiameterEnd;
  const first = flightRing(flightProfileAt(section, 0, crest), counts, 2 * Math.PI * placed.turnsBefore, placed.start);
  return Array.from({ length: n + 1 }, (_, i) => {
    const u = i === n ? section.length : distanceAfterTurns(section, (turns * i) / n);
    const z = i === n ? placed.end : placed.start + u;
    const turned = 2 * Math.PI * ((turns * i) / n);
    if (isUniform) return turnedRing(first, turned, z);
    return flightRing(flightProfileAt(section, u, crest), counts, 2 * Math.PI * placed.turnsBefore + turned, z);
  });
}

/** Stretches of all sections; plain ones take their angles from a flighted neighbour, so that roots agree. */
function sectionStretches(design: Design, options: MeshOptions): Stretch[] {
  const placed = placeSections(design.screw);
  const flights = placed.map((each) =>
    each.section.kind === 'flighted' ? flightStretch(design, each, each.section, options) : null,
  );
  let angles: Float64Array | null = null;
  return placed.map(({ section, start, end }, i) => {
    const own = flights[i];
    const neighbour = own ?? flights.slice(i).find((each) => each !== null);
    if (own) angles = distinctAngles(own[own.length - 1] as Ring);
    if (own) return own;
    angles ??= neighbour ? distinctAngles(neighbour[0] as Ring) : evenAngles(options.aroundCount);
    return [
      circleRing(angles, section.rootDiameterStart / 2, start),
      circleRing(angles, section.rootDiameterEnd / 2, end),
    ];
  });
}

/** The shank, or without one a disc that closes the first section. */
function shankStretch(design: Design, after: Ring): Stretch {
  const { shankDiameter, shankLength, sections } = design.screw;
  const angles = distinctAngles(after);
  if (shankLength === 0) return [circleRing(angles, (sections[0]?.rootDiameterStart ?? shankDiameter) / 2, 0)];
  return [circleRing(angles, shankDiameter / 2, -shankLength), circleRing(angles, shankDiameter / 2, 0)];
}

/** Stretches of the tip, parted at steps, without its last point on the axis. */
function tipStretches(design: Design, before: Ring, options: MeshOptions): Stretch[] {
  const angles = distinctAngles(before);
  const stretches: Ring[][] = [];
  let z = Number.NEGATIVE_INFINITY;
  for (const point of tipOutline(tipShape(design), Math.ceil(options.aroundCount / 4))) {
    if (point.r === 0) continue;
    const ring = circleRing(angles, point.r, point.z);
    const current = stretches[stretches.length - 1];
    if (current && point.z > z) current.push(ring);
    else stretches.push([ring]);
    z = point.z;
  }
  return stretches;
}

/**
 * How far flank facets lie from the helicoid, m: a facet between rings a turn of `span` (rad) apart is skew by its
 * height times `span`, a quarter of which lies along the round at its middle, and of that the sine of the helix angle
 * across the flank.
 */
function flankDeviation(design: Design, options: MeshOptions): number {
  const crest = flightRadius(design);
  const { sections } = design.screw;
  const deviations = sections.flatMap((section) => {
    if (section.kind === 'plain') return [];
    const { flank } = ringCounts(section, sections, crest, options);
    return [0, section.length].map((u) => {
      const { floorRadius, lead } = flightProfileAt(section, u, crest);
      const skew = ((crest - floorRadius) / flank) * ((2 * Math.PI) / options.ringsPerTurn);
      return (skew / 4) * Math.sin(helixAngle(lead, floorRadius));
    });
  });
  return Math.max(0, ...deviations);
}

/** Joins the stretches to one closed shell, fans on the axis at both ends, the far one at `endZ` (m). */
function joinStretches(mesh: MeshBuilder, stretches: readonly Stretch[], endZ: number): void {
  let chain: Chain | null = null;
  for (const [s, stretch] of stretches.entries()) {
    const following = stretches[s + 1]?.[0];
    let upper: Chain | null = null;
    for (const [i, ring] of stretch.entries()) {
      if (i === 0 && chain) continue;
      const junction: { lower: Chain; upper: Chain } | null =
        following && i === stretch.length - 1 ? addJunction(mesh, ring, following) : null;
      const here: Chain = junction ? junction.lower : addRing(mesh, ring);
      if (chain) addStrip(mesh, chain, here);
      else addFan(mesh, here, ring.z, -1);
      chain = here;
      upper = junction ? junction.upper : null;
    }
    if (upper) chain = upper;
  }
  if (chain) addFan(mesh, chain, endZ, 1);
}

/**
 * The screw as one closed shell, m, axis z, flight centre at z = 0 on the +x side. Volume equals the analytic one to
 * single precision: the chords' loss is made up by widening x and y (see `deviation` for how far surfaces lie from the
 * true ones). A left-hand screw is the mirror image in y. `options`: aroundCount >= 24, ringsPerTurn >= 12; values near
 * each other deviate least.
 */
export function screwMesh(design: Design, options: MeshOptions): MeasuredMesh {
  const sections = sectionStretches(design, options);
  const lastSection = sections[sections.length - 1] as Stretch;
  const stretches = [
    shankStretch(design, sections[0]?.[0] as Ring),
    ...sections,
    ...tipStretches(design, lastSection[lastSection.length - 1] as Ring, options),
  ];
  // a lone circle between two stretches only marks a step, which one junction spans
  const solid = stretches.filter((stretch, i) => stretch.length > 1 || i === 0 || i === stretches.length - 1);
  const mesh = createBuilder();
  joinStretches(mesh, solid, tipShape(design).end);
  const volume = screwVolume(design) + shankVolume(design);
  const { positions, indices, widening } = finishMesh(mesh, volume, design.screw.hand === 'left' ? 'y' : 'none');
  const span = (2 * Math.PI) / Math.min(options.aroundCount, options.ringsPerTurn);
  const chords = chordDeviation(flightRadius(design), span, widening);
  return { positions, indices, deviation: Math.max(chords, flankDeviation(design, options)) };
}
