/** Screw, barrel and nozzle as bodies in the kernel, each with the volume that geometry says it has. */

import type { Design } from '../../design/types.ts';
import { barrelVolume, openingRange, outerStretches } from '../../geometry/barrelWall.ts';
import { placeSegments } from '../../geometry/bore.ts';
import { nozzleBodyVolume } from '../../geometry/nozzleMesh.ts';
import { screwVolume, shankVolume } from '../../geometry/summary.ts';
import { flatRegions } from './junction.ts';
import type { BrepKernel, KernelShape } from './kernel.ts';
import { sewFaces } from './sewn.ts';
import { type Builder, flatFace, flightFaces, lessBox, revolvedBody, turnedFaces } from './shapes.ts';
import { endOutline, millimetres, screwZones, type Zone } from './zones.ts';

/** Parts that can be handed over. */
export type PartName = 'screw' | 'barrel' | 'nozzle';

/** A built part. */
export interface PartBody {
  readonly part: PartName;
  readonly shape: KernelShape;
  /** by geometry, m³ */
  readonly analyticVolume: number;
}

/** Faces between two zones, or at an end where one of them is missing. */
function joiningFaces(builder: Builder, before: Zone | undefined, after: Zone | undefined): KernelShape[] {
  const a = before ? endOutline(before, 'to') : null;
  const b = after ? endOutline(after, 'from') : null;
  const z = before ? before.to : (after?.from ?? 0);
  const regions = [...(a ? flatRegions(a, b) : []), ...(b ? flatRegions(b, a) : [])];
  return regions.map((region) => flatFace(builder, region, z));
}

/** The screw, or why it cannot be built. */
function screwBody(kernel: BrepKernel, design: Design): KernelShape | string {
  const builder: Builder = { kernel, mirror: design.screw.hand === 'left' ? -1 : 1 };
  const zones = screwZones(design);
  const sides = zones.flatMap((zone) =>
    zone.kind === 'flight' ? flightFaces(builder, zone) : turnedFaces(builder, zone),
  );
  const flats = [...zones, undefined].flatMap((zone, i) => joiningFaces(builder, zones[i - 1], zone));
  return sewFaces(kernel, [...sides, ...flats]);
}

/** The barrel: a tube, turned down at its neck, less the straight slot of its feed opening, as `barrelVolume` describes it. */
function barrelBody(kernel: BrepKernel, design: Design): KernelShape {
  const { barrel } = design;
  const builder: Builder = { kernel, mirror: 1 };
  const [bore, outside, length] = [barrel.boreDiameter / 2, barrel.outerDiameter / 2, barrel.length].map(
    (each) => each * millimetres,
  ) as [number, number, number];
  const skin = outerStretches(barrel).flatMap(({ from, to, radius }) =>
    [from, to].map((z) => ({ r: radius * millimetres, z: z * millimetres })),
  );
  const tube = revolvedBody(builder, [{ r: bore, z: 0 }, ...skin, { r: bore, z: length }]);
  const { start, end } = openingRange(barrel);
  if (end <= start) return tube;
  const half = Math.min((barrel.feedOpening.width / 2) * millimetres, 0.99 * bore);
  // where the slot runs out of the tube's end, the box stands over it
  const from = start === 0 ? -1 : start * millimetres;
  const to = end === barrel.length ? length + 1 : end * millimetres;
  return lessBox(builder, tube, [-half, 0, from], [half, outside + 1, to]);
}

/** The nozzle: a cylinder less its bore; null where all segments have length 0. */
function nozzleBody(kernel: BrepKernel, design: Design): KernelShape | null {
  const pieces = placeSegments(design).filter(({ start, end }) => end > start);
  const [first, last] = [pieces[0], pieces[pieces.length - 1]];
  if (!first || !last) return null;
  const outside = design.nozzle.outerDiameter / 2;
  const corners = [
    { r: outside, z: last.end },
    { r: outside, z: first.start },
    ...pieces.flatMap(({ start, end, startRadius, endRadius }) => [
      { r: startRadius, z: start },
      { r: endRadius, z: end },
    ]),
  ];
  const distinct = corners.filter((each, i) => each.r !== corners[i - 1]?.r || each.z !== corners[i - 1]?.z);
  const scaled = distinct.map(({ r, z }) => ({ r: r * millimetres, z: z * millimetres }));
  return revolvedBody({ kernel, mirror: 1 }, scaled);
}

/** Builds one part; a sentence where it cannot be built. */
export function buildPart(kernel: BrepKernel, design: Design, part: PartName): PartBody | string {
  if (part === 'screw') {
    const shape = screwBody(kernel, design);
    const analyticVolume = screwVolume(design) + shankVolume(design);
    return typeof shape === 'string' ? shape : { part, shape, analyticVolume };
  }
  if (part === 'barrel') {
    return { part, shape: barrelBody(kernel, design), analyticVolume: barrelVolume(design.barrel, 0) };
  }
  const shape = nozzleBody(kernel, design);
  return shape ? { part, shape, analyticVolume: nozzleBodyVolume(design, 0) } : 'all its segments have length 0';
}
