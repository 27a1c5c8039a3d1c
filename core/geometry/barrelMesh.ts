/** The barrel's body as a closed triangle mesh, built of bricks on a grid of angles and planes. */

import type { Barrel, Design } from '../design/types.ts';
import { barrelVolume, openingRange, type WallFace, wallSpans } from './barrelWall.ts';
import { addQuad, addVertex, chordDeviation, createBuilder, finishMesh, type MeshBuilder } from './meshBuilder.ts';
import type { MeasuredMesh, MeshOptions } from './types.ts';

/** Bricks in rows round the axis (columns) and along it (layers). */
interface Grid {
  /** faces between columns; one more than columns unless closed round */
  readonly faces: readonly WallFace[];
  readonly kinds: readonly ('wall' | 'opening')[];
  /** planes between layers, m */
  readonly planes: readonly number[];
  readonly closed: boolean;
  /** whether the brick in a column and layer is there */
  readonly solid: (column: number, layer: number) => boolean;
}

/** Splits the spans into columns no wider than a turn over `aroundCount`. */
function makeGrid(barrel: Barrel, cutAngle: number, aroundCount: number): Grid {
  const faces: WallFace[] = [];
  const kinds: ('wall' | 'opening')[] = [];
  const spans = wallSpans(barrel, cutAngle);
  for (const { from, to, kind } of spans) {
    const widest = Math.max(to.inner - from.inner, to.outer - from.outer);
    const n = Math.max(1, Math.ceil((widest / (2 * Math.PI)) * aroundCount));
    for (let i = 0; i < n; i++) {
      const mix = (a: number, b: number) => a + ((b - a) * i) / n;
      faces.push({ inner: mix(from.inner, to.inner), outer: mix(from.outer, to.outer) });
      kinds.push(kind);
    }
  }
  const closed = cutAngle === 0;
  const end = spans[spans.length - 1];
  if (!closed && end) faces.push(end.to);
  const opening = openingRange(barrel);
  const planes = [...new Set([0, opening.start, opening.end, barrel.length])].sort((a, b) => a - b);
  const open = (layer: number) => opening.end > opening.start && planes[layer] === opening.start;
  const solid = (column: number, layer: number) => {
    if (layer < 0 || layer >= planes.length - 1) return false;
    const wrapped = closed ? (column + kinds.length) % kinds.length : column;
    const kind = kinds[wrapped];
    return kind !== undefined && !(kind === 'opening' && open(layer));
  };
  return { faces, kinds, planes, closed, solid };
}

/** Numbers of the grid's vertices, added where first used. */
function gridVertices(mesh: MeshBuilder, barrel: Barrel, grid: Grid) {
  const known = new Map<number, number>();
  const [bore, outside] = [barrel.boreDiameter / 2, barrel.outerDiameter / 2];
  return (face: number, plane: number, isOuter: boolean): number => {
    const wrapped = face % grid.faces.length;
    const key = (wrapped * grid.planes.length + plane) * 2 + (isOuter ? 1 : 0);
    const found = known.get(key);
    if (found !== undefined) return found;
    const { inner, outer } = grid.faces[wrapped] as WallFace;
    const [r, angle] = isOuter ? [outside, outer] : [bore, inner];
    const id = addVertex(mesh, r * Math.cos(angle), r * Math.sin(angle), grid.planes[plane] as number);
    known.set(key, id);
    return id;
  };
}

/** Adds the faces of one brick that no neighbour covers. */
function addBrick(
  mesh: MeshBuilder,
  grid: Grid,
  vertex: ReturnType<typeof gridVertices>,
  column: number,
  layer: number,
): void {
  const [i, j, k, l] = [column, column + 1, layer, layer + 1];
  const inside = (face: number, plane: number) => vertex(face, plane, false);
  const outside = (face: number, plane: number) => vertex(face, plane, true);
  addQuad(mesh, outside(i, k), outside(j, k), outside(j, l), outside(i, l));
  addQuad(mesh, inside(i, k), inside(i, l), inside(j, l), inside(j, k));
  if (!grid.solid(column, layer - 1)) addQuad(mesh, inside(i, k), inside(j, k), outside(j, k), outside(i, k));
  if (!grid.solid(column, layer + 1)) addQuad(mesh, inside(i, l), outside(i, l), outside(j, l), inside(j, l));
  if (!grid.solid(column - 1, layer)) addQuad(mesh, inside(i, k), outside(i, k), outside(i, l), inside(i, l));
  if (!grid.solid(column + 1, layer)) addQuad(mesh, inside(j, k), inside(j, l), outside(j, l), outside(j, k));
}

/**
 * The barrel between bore and outer surface, its feed opening cut through on the +y side, and a wedge of `cutAngle`
 * (rad, 0 = none, below 2 pi) centred on -x taken out, where one looks from with y up and z to the right; closed at every face. m, axis z. Volume equals
 * `barrelVolume` to single precision. Heat break, flanges and hopper seat are not part of the body.
 */
export function barrelMesh(design: Design, options: MeshOptions, cutAngle: number): MeasuredMesh {
  const { barrel } = design;
  const grid = makeGrid(barrel, cutAngle, options.aroundCount);
  const mesh = createBuilder();
  const vertex = gridVertices(mesh, barrel, grid);
  for (let column = 0; column < grid.kinds.length; column++) {
    for (let layer = 0; layer < grid.planes.length - 1; layer++) {
      if (grid.solid(column, layer)) addBrick(mesh, grid, vertex, column, layer);
    }
  }
  const { positions, indices, widening } = finishMesh(mesh, barrelVolume(barrel, cutAngle), 'x');
  const deviation = chordDeviation(barrel.outerDiameter / 2, (2 * Math.PI) / options.aroundCount, widening);
  return { positions, indices, deviation };
}
