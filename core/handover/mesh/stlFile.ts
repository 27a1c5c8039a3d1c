/** Binary STL: 80 bytes of heading, a count, then 50 bytes a triangle. Little-endian; it carries no unit, so the heading says it. */

import type { Body } from './bodies.ts';

const headingLength = 80;
const perTriangle = 50;

/** Heading text as bytes; it may not begin with the word that marks a text file, and other characters than ASCII become `?`. */
function writeHeading(out: Uint8Array, text: string): void {
  const line = text.slice(0, headingLength);
  for (let i = 0; i < line.length; i++) {
    const code = line.charCodeAt(i);
    out[i] = code >= 32 && code < 127 ? code : 63;
  }
}

/**
 * One body as binary STL.
 * @param about what it is, the weightiest first: only about 70 letters are kept; `unit mm` comes before it, since nothing
 *   else in the file tells it
 */
export function stlBytes({ positions, indices }: Body, about: string): Uint8Array {
  const count = indices.length / 3;
  const bytes = new Uint8Array(headingLength + 4 + perTriangle * count);
  writeHeading(bytes, `unit mm, ${about}, binary STL`);
  const view = new DataView(bytes.buffer);
  view.setUint32(headingLength, count, true);
  const p = new Float64Array(9);
  for (let t = 0, at = headingLength + 4; t < count; t++, at += perTriangle) {
    for (let i = 0; i < 9; i++) p[i] = positions[3 * indices[3 * t + Math.floor(i / 3)] + (i % 3)];
    const [ux, uy, uz] = [p[3] - p[0], p[4] - p[1], p[5] - p[2]];
    const [vx, vy, vz] = [p[6] - p[0], p[7] - p[1], p[8] - p[2]];
    const [nx, ny, nz] = [uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx];
    const length = Math.hypot(nx, ny, nz) || 1;
    view.setFloat32(at, nx / length, true);
    view.setFloat32(at + 4, ny / length, true);
    view.setFloat32(at + 8, nz / length, true);
    for (let i = 0; i < 9; i++) view.setFloat32(at + 12 + 4 * i, p[i], true);
  }
  return bytes;
}
