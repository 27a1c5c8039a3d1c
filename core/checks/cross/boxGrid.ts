/**
 * Rectangles in z and r under a solved stream function: a grid of its own for a head whose walls all run along z or r.
 *
 * The flow through every side is the difference of the stream function between its ends, so each rectangle takes in
 * exactly what it gives off, whatever the interpolation at the corners.
 */

import type { TipSolution } from '../../flow/tip/solveTip.ts';

/** A stepped head: a flat-ended screw in a bore that narrows at one shoulder; all m. */
export interface SteppedHead {
  readonly screwRadius: number;
  readonly boreRadius: number;
  readonly orificeRadius: number;
  /** From the inlet plane to the screw's end, to the shoulder, to the orifice plane. */
  readonly screwEnd: number;
  readonly shoulder: number;
  readonly length: number;
}

/** Cell (i, j), i along z, j along r, at i * rows + j; cells outside the melt have no volume. */
export interface BoxGrid {
  readonly columns: number;
  readonly rows: number;
  /** m3 */
  readonly volume: Float64Array;
  /** Flow in +z into cell (i, j), i = 0..columns, at i * rows + j, m3/s. */
  readonly alongZ: Float64Array;
  /** Flow in +r into cell (i, j), j = 0..rows, at i * (rows + 1) + j, m3/s. */
  readonly alongR: Float64Array;
}

/** Lines through given places, each stretch divided evenly into whole cells of about the wanted size. */
function lines(places: readonly number[], size: number): number[] {
  return places.slice(1).reduce(
    (out, to, k) => {
      const parts = Math.max(2, Math.round((to - places[k]) / size));
      for (let n = 1; n <= parts; n++) out.push(places[k] + ((to - places[k]) * n) / parts);
      return out;
    },
    [places[0]],
  );
}

/** Reads a nodal field of quadratic triangles anywhere in the mesh. */
function reader({ mesh }: TipSolution, field: Float64Array): (z: number, r: number) => number {
  const { x, y, nodes, triangleCount } = mesh;
  const bins = 60;
  const [width, height] = [Math.max(...x) / bins, Math.max(...y) / bins];
  const binOf = (value: number, unit: number) => Math.min(bins - 1, Math.max(0, Math.floor(value / unit)));
  const held: number[][] = Array.from({ length: bins * bins }, () => []);
  for (let t = 0; t < triangleCount; t++) {
    const corners = [0, 1, 2].map((k) => nodes[6 * t + k]);
    const [zs, rs] = [corners.map((n) => x[n]), corners.map((n) => y[n])];
    for (let i = binOf(Math.min(...zs), width); i <= binOf(Math.max(...zs), width); i++)
      for (let j = binOf(Math.min(...rs), height); j <= binOf(Math.max(...rs), height); j++) held[i * bins + j].push(t);
  }
  return (z, r) => {
    const best = { least: Number.NEGATIVE_INFINITY, value: Number.NaN };
    for (const t of held[binOf(z, width) * bins + binOf(r, height)]) {
      const [a, b, c] = [0, 1, 2].map((k) => nodes[6 * t + k]);
      const twice = (x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a]);
      const p = ((x[b] - z) * (y[c] - r) - (x[c] - z) * (y[b] - r)) / twice;
      const q = ((x[c] - z) * (y[a] - r) - (x[a] - z) * (y[c] - r)) / twice;
      const s = 1 - p - q;
      if (Math.min(p, q, s) <= best.least) continue;
      best.least = Math.min(p, q, s);
      const shape = [p * (2 * p - 1), q * (2 * q - 1), s * (2 * s - 1), 4 * q * s, 4 * s * p, 4 * p * q];
      best.value = shape.reduce((sum, value, k) => sum + value * field[nodes[6 * t + k]], 0);
    }
    return best.value;
  };
}

/** Innermost and outermost radius of the melt between two places along the axis. */
function reach(head: SteppedHead, z: number): [number, number] {
  return [z < head.screwEnd ? head.screwRadius : 0, z < head.shoulder ? head.boreRadius : head.orificeRadius];
}

/**
 * Grid of a head with the flow of its solution.
 * @param solution of the region that the head describes, with flow `volumeFlow`, m3/s
 * @param size wanted side of a cell, m
 */
export function boxGrid(head: SteppedHead, solution: TipSolution, volumeFlow: number, size: number): BoxGrid {
  const z = lines([0, head.screwEnd, head.shoulder, head.length], size);
  const r = lines([0, head.orificeRadius, head.screwRadius, head.boreRadius], size);
  const [columns, rows] = [z.length - 1, r.length - 1];
  const inside = reader(solution, solution.field.psi);
  const psi = (i: number, j: number) => {
    const between = [z[Math.max(0, i - 1)], z[Math.min(columns - 1, i)]].map((at) => reach(head, at + size * 1e-6));
    const [inner, outer] = [Math.max(between[0][0], between[1][0]), Math.min(between[0][1], between[1][1])];
    if (r[j] >= outer * (1 - 1e-9)) return 0;
    return r[j] <= inner * (1 + 1e-9) ? volumeFlow : 2 * Math.PI * inside(z[i], r[j]);
  };
  const corner = Array.from({ length: columns + 1 }, (_, i) => Float64Array.from(r, (_value, j) => psi(i, j)));
  const volume = new Float64Array(columns * rows);
  const alongZ = new Float64Array((columns + 1) * rows);
  const alongR = new Float64Array(columns * (rows + 1));
  for (let i = 0; i <= columns; i++)
    for (let j = 0; j <= rows; j++) {
      if (j < rows) alongZ[i * rows + j] = corner[i][j] - corner[i][j + 1];
      if (i === columns) continue;
      alongR[i * (rows + 1) + j] = corner[i + 1][j] - corner[i][j];
      const [inner, outer] = reach(head, (z[i] + z[i + 1]) / 2);
      if (j < rows && r[j] > inner - size * 1e-6 && r[j + 1] < outer + size * 1e-6)
        volume[i * rows + j] = Math.PI * (r[j + 1] ** 2 - r[j] ** 2) * (z[i + 1] - z[i]);
    }
  return { columns, rows, volume, alongZ, alongR };
}
