/** Growing triangle mesh in double precision, and the strips and fans that solids are made of. */

import { enclosedVolume } from './meshMeasure.ts';
import type { Ring } from './ring.ts';
import type { SolidMesh } from './types.ts';

/** Vertices and triangles under construction. */
export interface MeshBuilder {
  /** xyz triples, m */
  positions: Float64Array;
  vertexCount: number;
  indices: Uint32Array;
  indexCount: number;
}

/** An empty mesh. */
export function createBuilder(): MeshBuilder {
  return { positions: new Float64Array(3 * 4096), vertexCount: 0, indices: new Uint32Array(6 * 4096), indexCount: 0 };
}

/** Adds a vertex (m) and returns its number. */
export function addVertex(mesh: MeshBuilder, x: number, y: number, z: number): number {
  const at = 3 * mesh.vertexCount;
  if (at === mesh.positions.length) {
    const grown = new Float64Array(2 * at);
    grown.set(mesh.positions);
    mesh.positions = grown;
  }
  mesh.positions[at] = x;
  mesh.positions[at + 1] = y;
  mesh.positions[at + 2] = z;
  return mesh.vertexCount++;
}

/** Adds a triangle, counter-clockwise from outside. */
function addTriangle(mesh: MeshBuilder, a: number, b: number, c: number): void {
  const at = mesh.indexCount;
  if (at === mesh.indices.length) {
    const grown = new Uint32Array(2 * at);
    grown.set(mesh.indices);
    mesh.indices = grown;
  }
  mesh.indices[at] = a;
  mesh.indices[at + 1] = b;
  mesh.indices[at + 2] = c;
  mesh.indexCount = at + 3;
}

/** Adds a quadrangle, counter-clockwise from outside, split along b-d. */
export function addQuad(mesh: MeshBuilder, a: number, b: number, c: number, d: number): void {
  addTriangle(mesh, a, b, d);
  addTriangle(mesh, b, c, d);
}

/** A ring's vertices: all of them in order, and where each of the ring's own points stands among them. */
export interface Chain {
  readonly ids: readonly number[] | Int32Array;
  readonly at: readonly number[] | Int32Array;
  readonly ring: Ring;
}

/** Adds a ring's points as they are. */
export function addRing(mesh: MeshBuilder, ring: Ring): Chain {
  const ids = new Int32Array(ring.theta.length);
  const at = new Int32Array(ring.theta.length);
  for (let i = 0; i < ids.length; i++) {
    const r = ring.r[i] as number;
    const angle = ring.theta[i] as number;
    ids[i] = addVertex(mesh, r * Math.cos(angle), r * Math.sin(angle), ring.z);
    at[i] = i;
  }
  return { ids, at, ring };
}

/** Adds a fan from `apex` over the chain's vertices from place `from` to place `to`; `side` 1 keeps the chain's direction. */
function addFanOver(mesh: MeshBuilder, apex: number, ids: Chain['ids'], from: number, to: number, side: 1 | -1): void {
  for (let i = from; i !== to; ) {
    const after = i + 1 === ids.length ? 0 : i + 1;
    if (side > 0) addTriangle(mesh, ids[i] as number, ids[after] as number, apex);
    else addTriangle(mesh, ids[after] as number, ids[i] as number, apex);
    i = after;
  }
}

/**
 * Joins two chains whose rings have the same number of points, `lower` at smaller z. Quadrangles are split from the
 * lower ring's later point to the upper ring's earlier one: with flights that turn with z this diagonal is the
 * shorter, so it cuts least off the round. Where the outline rises from floor to crest the other diagonal is taken, so
 * that what skew facets add on one flank they take off the other.
 */
export function addStrip(mesh: MeshBuilder, lower: Chain, upper: Chain): void {
  const n = lower.at.length;
  const { r } = lower.ring;
  for (let j = 0; j < n; j++) {
    const next = j + 1 === n ? 0 : j + 1;
    const isRising = (r[next] as number) > (r[j] as number);
    const low = lower.at[j] as number;
    const lowNext = lower.at[next] as number;
    const high = upper.at[j] as number;
    const highNext = upper.at[next] as number;
    addFanOver(mesh, upper.ids[isRising ? highNext : high] as number, lower.ids, low, lowNext, 1);
    addFanOver(mesh, lower.ids[isRising ? low : lowNext] as number, upper.ids, high, highNext, -1);
  }
}

/** Closes a chain with a fan to a point on the axis at `z` (m); `side` 1 faces +z (the far end), -1 faces -z. */
export function addFan(mesh: MeshBuilder, chain: Chain, z: number, side: 1 | -1): void {
  const centre = addVertex(mesh, 0, 0, z);
  const n = chain.ids.length;
  for (let i = 0; i < n; i++) {
    const from = chain.ids[i] as number;
    const to = chain.ids[i + 1 === n ? 0 : i + 1] as number;
    if (side > 0) addTriangle(mesh, centre, from, to);
    else addTriangle(mesh, centre, to, from);
  }
}

/**
 * Triangulates the flat trapezoid between two sides given as vertex lists in the same direction, which may have further
 * vertices along them; normal along (first side's direction) x (from first to second side).
 */
export function addTrapezoid(mesh: MeshBuilder, first: readonly number[], second: readonly number[]): void {
  let i = 0;
  let j = 0;
  while (i < first.length - 1 || j < second.length - 1) {
    const here = first[i] as number;
    const there = second[j] as number;
    const stepFirst = i < first.length - 1 && (j === second.length - 1 || i * second.length <= j * first.length);
    if (stepFirst) addTriangle(mesh, here, first[++i] as number, there);
    else addTriangle(mesh, here, second[++j] as number, there);
  }
}

/**
 * Finishes a mesh about the z axis: widens x and y alike so that its volume is `volume` (m³), which makes up for the
 * area that chords cut off, and reverses the axis named by `mirror`. Returns the widening too.
 */
export function finishMesh(
  mesh: MeshBuilder,
  volume: number,
  mirror: 'x' | 'y' | 'none',
): SolidMesh & { widening: number } {
  const widening = Math.sqrt(volume / enclosedVolume(mesh.positions, mesh.indices, mesh.indexCount));
  const positions = new Float32Array(3 * mesh.vertexCount);
  const xScale = mirror === 'x' ? -widening : widening;
  const yScale = mirror === 'y' ? -widening : widening;
  for (let i = 0; i < positions.length; i += 3) {
    positions[i] = (mesh.positions[i] as number) * xScale;
    positions[i + 1] = (mesh.positions[i + 1] as number) * yScale;
    positions[i + 2] = mesh.positions[i + 2] as number;
  }
  const indices = mesh.indices.slice(0, mesh.indexCount);
  for (let t = 0; mirror !== 'none' && t < indices.length; t += 3) {
    const kept = indices[t + 1] as number;
    indices[t + 1] = indices[t + 2] as number;
    indices[t + 2] = kept;
  }
  return { positions, indices, widening };
}

/** Largest radial distance of the widened chords from an arc of radius `r` (m) with chords of `span` (rad), m. */
export function chordDeviation(r: number, span: number, widening: number): number {
  return r * Math.max(Math.abs(widening - 1), 1 - widening * Math.cos(span / 2));
}
