/** The barrel's body as a closed triangle mesh, built of bricks on a grid of angles and planes. */

import type { Barrel, Design } from '../design/types.ts';
import { barrelVolume, isSolid, type WallFace, wallPlanes, wallRadii, wallSpans } from './barrelWall.ts';
import { addQuad, addVertex, chordDeviation, createBuilder, finishMesh, type MeshBuilder } from './meshBuilder.ts';
import type { MeasuredMesh, MeshOptions } from './types.ts';

/** Bricks in rows round the axis (columns), along it (layers) and outwards (rings). */
interface Grid {
  /** faces between columns; one more than columns unless closed round */
  readonly faces: readonly WallFace[];
  readonly kinds: readonly ('wall' | 'opening')[];
  /** planes between layers, m */
  readonly planes: readonly number[];
  /** radii between rings, m */
  readonly radii: readonly number[];
  /** whether the brick in a column, layer and ring is there */
  readonly solid: (column: number, layer: number, ring: number) => boolean;
}

/** Splits the spans into columns no wider than a turn over `aroundCount`. */
function makeGrid(barrel: Barrel, cutAngle: number, aroundCount: number): Grid {
  const faces: WallFace[] = [];
  const kinds: ('wall' | 'opening')[] = [];
  const spans = wallSpans(barrel, cutAngle);
  for (const { from, to, kind } of spans) {
    const widest = Math.max(...to.map((angle, k) => angle - (from[k] as number)));
    const n = Math.max(1, Math.ceil((widest / (2 * Math.PI)) * aroundCount));
    for (let i = 0; i < n; i++) {
      faces.push(from.map((angle, k) => angle + (((to[k] as number) - angle) * i) / n));
      kinds.push(kind);
    }
  }
  const closed = cutAngle === 0;
  const end = spans[spans.length - 1];
  if (!closed && end) faces.push(end.to);
  const [planes, radii] = [wallPlanes(barrel), wallRadii(barrel)];
  const solid = (column: number, layer: number, ring: number) => {
    if (layer < 0 || layer >= planes.length - 1 || ring < 0 || ring >= radii.length - 1) return false;
    const kind = kinds[closed ? (column + kinds.length) % kinds.length : column];
    return kind !== undefined && isSolid(barrel, kind, ring, planes[layer] as number, planes[layer + 1] as number);
  };
  return { faces, kinds, planes, radii, solid };
}

/** Numbers of the grid's vertices, added where first used. */
function gridVertices(mesh: MeshBuilder, { faces, planes, radii }: Grid) {
  const known = new Map<number, number>();
  return (face: number, plane: number, level: number): number => {
    const wrapped = face % faces.length;
    const key = (wrapped * planes.length + plane) * radii.length + level;
    const found = known.get(key);
    if (found !== undefined) return found;
    const [r, angle] = [radii[level] as number, (faces[wrapped] as WallFace)[level] as number];
    const id = addVertex(mesh, r * Math.cos(angle), r * Math.sin(angle), planes[plane] as number);
    known.set(key, id);
    return id;
  };
}

/** Place of a brick: column, layer, ring. */
type Place = readonly [column: number, layer: number, ring: number];

/** Adds the faces of one brick that no neighbour covers. */
function addBrick(mesh: MeshBuilder, grid: Grid, vertex: ReturnType<typeof gridVertices>, place: Place): void {
  const [i, k, ring] = place;
  const [j, l] = [i + 1, k + 1];
  const inside = (face: number, plane: number) => vertex(face, plane, ring);
  const outside = (face: number, plane: number) => vertex(face, plane, ring + 1);
  if (!grid.solid(i, k, ring + 1)) addQuad(mesh, outside(i, k), outside(j, k), outside(j, l), outside(i, l));
  if (!grid.solid(i, k, ring - 1)) addQuad(mesh, inside(i, k), inside(i, l), inside(j, l), inside(j, k));
  if (!grid.solid(i, k - 1, ring)) addQuad(mesh, inside(i, k), inside(j, k), outside(j, k), outside(i, k));
  if (!grid.solid(i, l, ring)) addQuad(mesh, inside(i, l), outside(i, l), outside(j, l), inside(j, l));
  if (!grid.solid(i - 1, k, ring)) addQuad(mesh, inside(i, k), outside(i, k), outside(i, l), inside(i, l));
  if (!grid.solid(j, k, ring)) addQuad(mesh, inside(j, k), inside(j, l), outside(j, l), outside(j, k));
}

/**
 * The barrel between bore and outer surface, the neck of its heat break turned into it, its feed opening cut through on the +y side, and a wedge of `cutAngle`
 * (rad, 0 = none, below 2 pi) centred on -x taken out, where one looks from with y up and z to the right; closed at every face. m, axis z. Volume equals
 * `barrelVolume` to single precision. Flanges and hopper seat are not part of the body.
 */
export function barrelMesh(design: Design, options: MeshOptions, cutAngle: number): MeasuredMesh {
  const { barrel } = design;
  const grid = makeGrid(barrel, cutAngle, options.aroundCount);
  const mesh = createBuilder();
  const vertex = gridVertices(mesh, grid);
  for (let column = 0; column < grid.kinds.length; column++) {
    for (let layer = 0; layer < grid.planes.length - 1; layer++) {
      for (let ring = 0; ring < grid.radii.length - 1; ring++) {
        if (grid.solid(column, layer, ring)) addBrick(mesh, grid, vertex, [column, layer, ring]);
      }
    }
  }
  const { positions, indices, widening } = finishMesh(mesh, barrelVolume(barrel, cutAngle), 'x');
  const deviation = chordDeviation(barrel.outerDiameter / 2, (2 * Math.PI) / options.aroundCount, widening);
  return { positions, indices, deviation };
}
