/** The nozzle's metal cut into cells. */

import type { Design, Nozzle } from '../design/types.ts';

/** Least wall of a nozzle, m: where the drawn bore leaves less, the body is taken as this much wider. */
const leastWall = 1.5e-3;

/** Least length of a nozzle's body, m: a bare plate still has a rim that holds it. */
const leastLength = 2e-3;

/** Cells of the nozzle; arrays with one entry per cell. */
export interface NozzleCells {
  /** m */
  readonly length: Float64Array;
  /** from the end of the barrel to the cell's middle, m */
  readonly middle: Float64Array;
  /** K/W along the cell */
  readonly resistance: Float64Array;
  /** metal, m³ */
  readonly volume: Float64Array;
  /** outside and end face, m² */
  readonly surface: Float64Array;
  /** outside alone, which a heater may clasp, m² */
  readonly outside: Float64Array;
  /** wall section where it meets the barrel, m² */
  readonly joint: number;
}

/** Area between two diameters, m². */
export const boreAreaOf = (outer: number, inner: number): number => (Math.PI / 4) * (outer ** 2 - inner ** 2);

/** Bore at a distance from the end of the barrel, m; the end's bore beyond it. */
function boreAt({ segments }: Nozzle, z: number): number {
  let start = 0;
  for (const { length, startDiameter, endDiameter } of segments) {
    if (length > 0 && z < start + length) return startDiameter + ((endDiameter - startDiameter) * (z - start)) / length;
    start += length;
  }
  return segments[segments.length - 1].endDiameter;
}

/** Cuts the nozzle into equal lengths. The end face belongs to the last. */
export function nozzleCells({ nozzle, barrel }: Design, count: number): NozzleCells {
  const whole = Math.max(
    nozzle.segments.reduce((sum, segment) => sum + segment.length, 0),
    leastLength,
  );
  const cell = whole / count;
  const middle = Float64Array.from({ length: count }, (_, i) => (i + 0.5) * cell);
  const bore = middle.map((z) => boreAt(nozzle, z));
  const outer = bore.map((own) => Math.max(nozzle.outerDiameter, own + 2 * leastWall));
  const wall = (i: number) => boreAreaOf(outer[i], bore[i]);
  const outside = outer.map((own) => Math.PI * own * cell);
  const face = (i: number) => (i === count - 1 ? wall(i) : 0);
  return {
    length: new Float64Array(count).fill(cell),
    middle,
    resistance: bore.map((_, i) => cell / (barrel.conductivity * wall(i))),
    volume: bore.map((_, i) => cell * wall(i)),
    surface: outside.map((own, i) => own + face(i)),
    outside,
    joint: wall(0),
  };
}
