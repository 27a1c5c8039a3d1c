/** Splits an indexed mesh into loose triangles whose normals are smooth except across sharp edges. */

import type { SolidMesh } from '../../core/index.ts';
import type { DrawnMesh } from './protocol.ts';

type Triple = readonly [number, number, number];

const numberAt = (array: Float32Array | Uint32Array, index: number): number => array[index] as number;

const tripleAt = (array: Float32Array | Uint32Array, index: number): Triple => [
  numberAt(array, index),
  numberAt(array, index + 1),
  numberAt(array, index + 2),
];

const minus = (a: Triple, b: Triple): Triple => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

/** Face normals scaled by twice the area, xyz per triangle. */
function faceNormals({ positions, indices }: SolidMesh): Float32Array {
  const normals = new Float32Array(indices.length);
  for (let t = 0; t < indices.length; t += 3) {
    const [a, b, c] = tripleAt(indices, t);
    const origin = tripleAt(positions, a * 3);
    const [ux, uy, uz] = minus(tripleAt(positions, b * 3), origin);
    const [vx, vy, vz] = minus(tripleAt(positions, c * 3), origin);
    normals[t] = uy * vz - uz * vy;
    normals[t + 1] = uz * vx - ux * vz;
    normals[t + 2] = ux * vy - uy * vx;
  }
  return normals;
}

/** Triangles around each vertex: where each vertex' run starts, and the flat list of index offsets. */
function trianglesAround({ positions, indices }: SolidMesh): { starts: Uint32Array; list: Uint32Array } {
  const starts = new Uint32Array(positions.length / 3 + 1);
  for (const vertex of indices) starts[vertex + 1] = numberAt(starts, vertex + 1) + 1;
  for (let v = 1; v < starts.length; v++) starts[v] = numberAt(starts, v) + numberAt(starts, v - 1);
  const next = starts.slice();
  const list = new Uint32Array(indices.length);
  for (let corner = 0; corner < indices.length; corner++) {
    const vertex = numberAt(indices, corner);
    list[numberAt(next, vertex)] = corner - (corner % 3);
    next[vertex] = numberAt(next, vertex) + 1;
  }
  return { starts, list };
}

/** Mean of the faces around a corner that lean less than the crease from its own face, unit length. */
function cornerNormal(faces: Float32Array, around: Uint32Array, own: number, leastCosine: number): Triple {
  const [ox, oy, oz] = tripleAt(faces, own);
  const ownLength = Math.hypot(ox, oy, oz);
  let [x, y, z] = [ox, oy, oz];
  for (const face of around) {
    if (face === own) continue;
    const [fx, fy, fz] = tripleAt(faces, face);
    const cosine = (fx * ox + fy * oy + fz * oz) / (ownLength * Math.hypot(fx, fy, fz) || 1);
    if (cosine > leastCosine) [x, y, z] = [x + fx, y + fy, z + fz];
  }
  const length = Math.hypot(x, y, z) || 1;
  return [x / length, y / length, z / length];
}

/** The mesh as loose triangles, normals area-weighted and smooth across edges that bend less than `crease` (rad). */
export function creasedMesh(mesh: SolidMesh, crease: number): DrawnMesh {
  const faces = faceNormals(mesh);
  const { starts, list } = trianglesAround(mesh);
  const positions = new Float32Array(mesh.indices.length * 3);
  const normals = new Float32Array(mesh.indices.length * 3);
  const leastCosine = Math.cos(crease);
  for (let corner = 0; corner < mesh.indices.length; corner++) {
    const vertex = numberAt(mesh.indices, corner);
    const around = list.subarray(numberAt(starts, vertex), numberAt(starts, vertex + 1));
    positions.set(tripleAt(mesh.positions, vertex * 3), corner * 3);
    normals.set(cornerNormal(faces, around, corner - (corner % 3), leastCosine), corner * 3);
  }
  return { positions, normals };
}

/** FNV-1a hash of the coordinates to the micrometre, eight hex digits. */
export function meshHash(mesh: SolidMesh): string {
  let hash = 0x811c9dc5;
  for (const coordinate of mesh.positions) {
    hash = Math.imul(hash ^ Math.round(coordinate * 1e6), 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, '0');
}
