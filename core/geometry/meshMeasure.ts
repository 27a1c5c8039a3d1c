/** Measures of finished triangle meshes. */

/** Positions of mesh corners in either precision. */
type Coordinates = Float32Array | Float64Array;

/**
 * Writes to `out` twice the area of the triangle whose corners are numbers `t` to `t + 2` of `indices`, along its outward
 * normal, in the square of the positions' unit: cross product of two sides. No arrays are made: meshes are large.
 */
export function areaVector(p: Coordinates, indices: Uint32Array, t: number, out: Float64Array): void {
  const a = 3 * (indices[t] as number);
  const b = 3 * (indices[t + 1] as number);
  const c = 3 * (indices[t + 2] as number);
  const ax = p[a] as number;
  const ay = p[a + 1] as number;
  const az = p[a + 2] as number;
  const ux = (p[b] as number) - ax;
  const uy = (p[b + 1] as number) - ay;
  const uz = (p[b + 2] as number) - az;
  const vx = (p[c] as number) - ax;
  const vy = (p[c + 1] as number) - ay;
  const vz = (p[c + 2] as number) - az;
  out[0] = uy * vz - uz * vy;
  out[1] = uz * vx - ux * vz;
  out[2] = ux * vy - uy * vx;
}

/** Enclosed volume of the triangles of `count` corners, positive with outward normals (divergence theorem). */
export function enclosedVolume(p: Coordinates, indices: Uint32Array, count: number): number {
  const n = new Float64Array(3);
  let sum = 0;
  for (let t = 0; t < count; t += 3) {
    areaVector(p, indices, t, n);
    const a = 3 * (indices[t] as number);
    sum += (p[a] as number) * (n[0] as number);
    sum += (p[a + 1] as number) * (n[1] as number);
    sum += (p[a + 2] as number) * (n[2] as number);
  }
  return sum / 6;
}

/** Length of a vector of three; plain arithmetic, which is several times faster than hypot. */
export function lengthOf(v: Float64Array): number {
  return Math.sqrt((v[0] as number) ** 2 + (v[1] as number) ** 2 + (v[2] as number) ** 2);
}
