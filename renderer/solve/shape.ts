/** Meshes and outlines of a design, made ready to draw. */

import {
  barrelMesh,
  channelOutline,
  contentHash,
  creaseNormals,
  type Design,
  flightCuts,
  nozzleMesh,
  outerStretches,
  type SolidMesh,
  screwMesh,
} from '../../core/index.ts';
import { meshHash } from './meshHash.ts';
import type { Bounds, DrawnMesh, Shape } from './protocol.ts';
import { welded } from './weld.ts';

/** Edges that bend more than this are drawn sharp, rad. */
const crease = (38 * Math.PI) / 180;
/** Fine enough that a silhouette looks round at full window size. */
const fineness = { aroundCount: 64, ringsPerTurn: 30 };

function boundsOf(design: Design, orifice: number): Bounds {
  const { barrel, screw } = design;
  return {
    start: -screw.shankLength,
    feedStart: barrel.feedOpening.start,
    feedEnd: barrel.feedOpening.start + barrel.feedOpening.length,
    barrelEnd: barrel.length,
    end: orifice,
    radius: barrel.outerDiameter / 2,
  };
}

const drawn = (mesh: SolidMesh): DrawnMesh => welded(mesh, creaseNormals(mesh, crease));

/**
 * What a shape is made from, as a short text: designs of the same key look the same. Temperatures, watts and materials
 * do not enter.
 */
export function shapeKey({ revisionId, screw, barrel, nozzle }: Design): string {
  const { boreDiameter, outerDiameter, length, feedOpening, heatBreak } = barrel;
  const bored = { boreDiameter, outerDiameter, length, feedOpening, heatBreak };
  return contentHash([revisionId, screw, bored, nozzle.segments, nozzle.outerDiameter]);
}

/** The shape of a design. */
export function makeShape(design: Design): Shape {
  const screw = screwMesh(design, fineness);
  const outline = channelOutline(design);
  return {
    revisionId: design.revisionId,
    designHash: design.hash,
    key: shapeKey(design),
    screw: drawn(screw),
    barrel: drawn(barrelMesh(design, fineness, 0)),
    nozzle: drawn(nozzleMesh(design, fineness, 0)),
    outline,
    flights: flightCuts(design),
    barrelSkin: outerStretches(design.barrel),
    flightRadius: design.barrel.boreDiameter / 2 - design.screw.radialClearance,
    meshHash: meshHash(screw),
    bounds: boundsOf(design, outline.outer.z.at(-1) ?? design.barrel.length),
  };
}

/** The buffers of a shape, to be handed over instead of copied. */
export const shapeBuffers = (shape: Shape): Transferable[] =>
  [shape.screw, shape.barrel, shape.nozzle].flatMap(({ positions, normals, indices }) => [
    positions.buffer,
    normals.buffer,
    indices.buffer,
  ]);
