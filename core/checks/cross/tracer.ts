/**
 * Tracer washed out of a box grid, step by step in time: concentration 1 everywhere at the start, clean inflow. No mean age
 * is sought; it follows as each cell's integral of concentration over time (Danckwerts 1953), the outlet's washout as that
 * of the flow-weighted concentration.
 *
 * Upwind finite volumes with linear reconstruction (van Leer 1979) and Heun's steps: second order where smooth, first at
 * fronts. No diffusion is put in, so closed eddies empty by the grid's own alone.
 */

import type { BoxGrid } from './boxGrid.ts';

/** What the tracer tells. */
export interface Washout {
  /** Integral of the tracer's share in the outflow over time, with what is left at the end, s */
  readonly mean: number;
  /** Share of the volume whose mean age is above 3 times volume over flow */
  readonly olderThan3: number;
  /** Share of the outflow at volume over flow that was not inside at the start */
  readonly youngAtMean: number;
}

/** Sides that carry tracer, by the cell that gives; `to` is -1 at the orifice. */
interface Sides {
  readonly from: number[];
  readonly to: number[];
  readonly flow: number[];
  /** Share of the giver's slope between its middle and this side */
  readonly reach: number[];
}

const noSides = (): Sides => ({ from: [], to: [], flow: [], reach: [] });

function addSide(sides: Sides, before: number, after: number, flow: number): void {
  const [from, to] = flow > 0 ? [before, after] : [after, before];
  if (flow === 0 || from < 0) return;
  sides.from.push(from);
  sides.to.push(to);
  sides.flow.push(Math.abs(flow));
  sides.reach.push(flow > 0 ? 0.5 : -0.5);
}

/** One direction of the grid: its sides, and the cells with a neighbour on both sides, `stride` apart. */
interface Direction {
  readonly sides: Sides;
  readonly inner: readonly number[];
  readonly stride: number;
  readonly slope: Float64Array;
}

function directions(grid: BoxGrid): Direction[] {
  const { columns, rows, volume, alongZ, alongR } = grid;
  const [z, r] = [noSides(), noSides()];
  const [innerZ, innerR]: number[][] = [[], []];
  const melt = (i: number, j: number) => {
    const within = i >= 0 && i < columns && j >= 0 && j < rows;
    return within && volume[i * rows + j] > 0 ? i * rows + j : -1;
  };
  for (let i = 0; i <= columns; i++)
    for (let j = 0; j <= rows; j++) {
      const here = melt(i, j);
      if (j < rows && (here >= 0 || i === columns)) addSide(z, melt(i - 1, j), here, alongZ[i * rows + j]);
      if (here < 0) continue;
      if (melt(i, j - 1) >= 0) addSide(r, melt(i, j - 1), here, alongR[i * (rows + 1) + j]);
      if (melt(i - 1, j) >= 0 && melt(i + 1, j) >= 0) innerZ.push(here);
      if (melt(i, j - 1) >= 0 && melt(i, j + 1) >= 0) innerR.push(here);
    }
  const slope = () => new Float64Array(columns * rows);
  return [
    { sides: z, inner: innerZ, stride: rows, slope: slope() },
    { sides: r, inner: innerR, stride: 1, slope: slope() },
  ];
}

/** Limited slopes of a direction. */
function writeSlopes({ inner, stride, slope }: Direction, c: Float64Array): void {
  for (const k of inner) {
    const [below, above] = [c[k] - c[k - stride], c[k + stride] - c[k]];
    const product = below * above;
    slope[k] = product > 0 ? (2 * product) / (below + above) : 0;
  }
}

/** Change of every cell per time; returns the tracer that leaves per time. */
function change(ways: readonly Direction[], volume: Float64Array, c: Float64Array, out: Float64Array): number {
  let leaving = 0;
  out.fill(0);
  for (const way of ways) {
    writeSlopes(way, c);
    const { from, to, flow, reach } = way.sides;
    for (let n = 0; n < from.length; n++) {
      const k = from[n];
      const carried = flow[n] * (c[k] + reach[n] * way.slope[k]);
      out[k] -= carried;
      if (to[n] >= 0) out[to[n]] += carried;
      else leaving += carried;
    }
  }
  for (let k = 0; k < out.length; k++) if (volume[k] > 0) out[k] /= volume[k];
  return leaving;
}

/** Largest stable step: no cell gives off more than half of its volume. */
function stepTime(ways: readonly Direction[], volume: Float64Array): number {
  const given = new Float64Array(volume.length);
  for (const { sides } of ways) for (let n = 0; n < sides.from.length; n++) given[sides.from[n]] += sides.flow[n];
  return given.reduce(
    (dt, flow, k) => (flow > 0 ? Math.min(dt, (0.5 * volume[k]) / flow) : dt),
    Number.POSITIVE_INFINITY,
  );
}

/** Running sums of a washout. */
interface Sums {
  readonly age: Float64Array;
  mean: number;
  youngAtMean: number;
}

const total = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0);

/**
 * Washes a grid out.
 * @param volumeFlow m3/s
 * @param means duration over volume by flow; above 3, or nothing is seen of what is older
 */
export function washOut(grid: BoxGrid, volumeFlow: number, means: number): Washout {
  const { volume } = grid;
  const ways = directions(grid);
  const whole = total(volume);
  const meanTime = whole / volumeFlow;
  // the mean time falls on the end of a step
  const each = Math.ceil(meanTime / stepTime(ways, volume));
  const dt = meanTime / each;
  const c = volume.map((v) => (v > 0 ? 1 : 0));
  const [first, second, middle] = [0, 1, 2].map(() => new Float64Array(c.length));
  const sums: Sums = { age: new Float64Array(c.length), mean: 0, youngAtMean: Number.NaN };
  const steps = Math.round(means * each);
  for (let step = 0; step < steps; step++) {
    const before = change(ways, volume, c, first);
    if (step === each) sums.youngAtMean = 1 - before / volumeFlow;
    for (let k = 0; k < c.length; k++) middle[k] = c[k] + dt * first[k];
    const after = change(ways, volume, middle, second);
    for (let k = 0; k < c.length; k++) {
      const next = c[k] + (dt / 2) * (first[k] + second[k]);
      sums.age[k] += (dt / 2) * (c[k] + next);
      c[k] = next;
    }
    sums.mean += (dt / 2) * (before + after);
  }
  const remaining = total(c.map((value, k) => value * volume[k]));
  return {
    mean: (sums.mean + remaining) / volumeFlow,
    olderThan3: total(volume.map((v, k) => (sums.age[k] > 3 * meanTime ? v : 0))) / whole,
    youngAtMean: sums.youngAtMean,
  };
}
