/** Shading normals: smooth over gentle edges, sharp over creases. */

import { areaVector, lengthOf } from './meshMeasure.ts';
import type { SolidMesh } from './types.ts';

/** Triangles with their own three corners, ready to draw: xyz per corner, and a unit normal per corner. */
export interface ShadedTriangles {
  readonly positions: Float32Array;
  readonly normals: Float32Array;
}

/** Unit normals of all triangles (zero where a triangle has no area) and twice their areas, m². */
function faceNormals(mesh: SolidMesh): { normals: Float64Array; weights: Float64Array } {
  const { positions, indices } = mesh;
  const normals = new Float64Array(indices.length);
  const weights = new Float64Array(indices.length / 3);
  const vector = new Float64Array(3);
  for (let t = 0; t < indices.length; t += 3) {
    areaVector(positions, indices, t, vector);
    const weight = lengthOf(vector);
    weights[t / 3] = weight;
    for (let k = 0; k < 3; k++) normals[t + k] = weight > 0 ? (vector[k] as number) / weight : 0;
  }
  return { normals, weights };
}

/** For each vertex the triangles round it: `list[start[v]]` to `list[start[v + 1]]`. */
function facesByVertex(mesh: SolidMesh): { start: Uint32Array; list: Uint32Array } {
  const start = new Uint32Array(mesh.positions.length / 3 + 1);
  for (const vertex of mesh.indices) start[vertex + 1] = (start[vertex + 1] as number) + 1;
  for (let v = 1; v < start.length; v++) start[v] = (start[v] as number) + (start[v - 1] as number);
  const next = start.slice();
  const list = new Uint32Array(mesh.indices.length);
  for (let corner = 0; corner < mesh.indices.length; corner++) {
    const vertex = mesh.indices[corner] as number;
    const at = next[vertex] as number;
    list[at] = Math.floor(corner / 3);
    next[vertex] = at + 1;
  }
  return { start, list };
}

/** The triangles round each vertex, and their normals and weights. */
interface Surroundings extends ReturnType<typeof faceNormals>, ReturnType<typeof facesByVertex> {}

/** Sums into `out` the normals round `vertex` that lie within the crease angle of triangle `own`. */
function sumNormals(faces: Surroundings, vertex: number, own: number, limit: number, out: Float64Array): void {
  const { normals: n, weights, start, list } = faces;
  const ox = n[3 * own] as number;
  const oy = n[3 * own + 1] as number;
  const oz = n[3 * own + 2] as number;
  const bound = weights[own] === 0 ? Number.NEGATIVE_INFINITY : limit;
  out.fill(0);
  const end = start[vertex + 1] as number;
  for (let i = start[vertex] as number; i < end; i++) {
    const face = list[i] as number;
    const x = n[3 * face] as number;
    const y = n[3 * face + 1] as number;
    const z = n[3 * face + 2] as number;
    if (face !== own && ox * x + oy * y + oz * z < bound) continue;
    const weight = weights[face] as number;
    out[0] = (out[0] as number) + weight * x;
    out[1] = (out[1] as number) + weight * y;
    out[2] = (out[2] as number) + weight * z;
  }
}

/**
 * Corner normals of a mesh: at each corner the area-weighted mean of the triangles round its vertex whose planes differ
 * by less than `angle` (rad, 0 to pi) from the corner's own. Triangles without area get the mean of all round the vertex.
 */
export function creaseNormals(mesh: SolidMesh, angle: number): ShadedTriangles {
  const faces = { ...faceNormals(mesh), ...facesByVertex(mesh) };
  const limit = Math.cos(angle);
  const positions = new Float32Array(3 * mesh.indices.length);
  const normals = new Float32Array(3 * mesh.indices.length);
  const sum = new Float64Array(3);
  for (let corner = 0; corner < mesh.indices.length; corner++) {
    const vertex = mesh.indices[corner] as number;
    sumNormals(faces, vertex, Math.floor(corner / 3), limit, sum);
    const length = lengthOf(sum) || 1;
    for (let k = 0; k < 3; k++) {
      positions[3 * corner + k] = mesh.positions[3 * vertex + k] as number;
      normals[3 * corner + k] = (sum[k] as number) / length;
    }
  }
  return { positions, normals };
}
