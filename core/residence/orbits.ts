/**
 * Closed orbits of the cross flow of a screw channel and the mean forward speed along each.
 *
 * Melt circles on level lines of the stream function while it moves along the channel. In the area dA between
 * neighbouring lines every particle spends time in proportion to area, so its mean forward speed is dQ/dA (in a helical
 * channel dQ over the volume per unit axial length). No diffusion, no leakage over the flight, fully developed flow.
 */

import { addTriangle, type LevelSums, levelSums, type NodeValues } from '../math/levelSums.ts';

/** Half or whole section on a wall-following grid; node (i, j) at i * rows + j. */
export interface OrbitGrid {
  readonly columns: number;
  readonly rows: number;
  /** m */
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Stream function, any unit, 0 on the walls. */
  readonly stream: Float64Array;
  /** Speed whose section integral is the flow, m/s. */
  readonly along: Float64Array;
  /** Volume per unit area of section. */
  readonly density: Float64Array;
}

/** Bands of orbits from the counter-rotating eddies (negative levels) over the walls (0) to the centre of the main vortex. */
export interface Orbits {
  /** Band edges: root of the stream function with its sign, over the root of its extremum; -1..1 */
  readonly levels: Float64Array;
  /** Share of the channel's volume per band; adds up to 1. */
  readonly volume: Float64Array;
  /** Share of the net flow per band; adds up to 1 (with 1 or -1 for back flow); plain flow when the net flow is zero. */
  readonly flow: Float64Array;
  /** Dwell over mean dwell per band: volume / flow; negative or infinite where the orbit makes no way forward. */
  readonly dwell: Float64Array;
  /** Extremum of the stream function, with its sign, unit of the grid's. */
  readonly extremum: number;
}

/** Bands of the main vortex, and the thinnest one, below which the levels of a grid mean nothing. */
const BANDS = 500;
const THINNEST = 2e-4;
/** Bands of the counter-rotating eddies. */
const EDDY_BANDS = 12;

/** Orbits of a section. */
export function channelOrbits(grid: OrbitGrid): Orbits {
  let extremum = 0;
  for (const value of grid.stream) if (Math.abs(value) > Math.abs(extremum)) extremum = value;
  // the root of psi is linear near a wall at rest, psi itself is not
  const scaled = grid.stream.map((value) => signedRoot(value / extremum));
  const levels = orbitLevels(scaled.reduce((low, value) => Math.min(low, value), 0));
  const sums = levelSums(levels);
  const nodes = { level: scaled, first: grid.along, second: grid.density };
  for (let i = 0; i + 1 < grid.columns; i++) {
    for (let j = 0; j + 1 < grid.rows; j++) {
      const k = i * grid.rows + j;
      const right = k + grid.rows;
      addNodes(grid, nodes, sums, k, right, right + 1);
      addNodes(grid, nodes, sums, k, right + 1, k + 1);
    }
  }
  return { levels, ...shares(sums), extremum };
}

function signedRoot(ratio: number): number {
  return Math.sign(ratio) * Math.sqrt(Math.abs(ratio));
}

/** Level edges, dense near the centre, where a wide channel has its plateau. */
function orbitLevels(lowest: number): Float64Array {
  const levels: number[] = [];
  if (lowest < -1e-9) for (let k = 0; k < EDDY_BANDS; k++) levels.push(lowest * (1 - k / EDDY_BANDS));
  for (let k = 0; k < BANDS; k++) {
    const level = Math.sin((Math.PI * k) / (2 * BANDS));
    if (1 - level > THINNEST) levels.push(level);
  }
  levels.push(1);
  return Float64Array.from(levels);
}

function addNodes(grid: OrbitGrid, nodes: NodeValues, sums: LevelSums, a: number, b: number, c: number): void {
  const { x, y } = grid;
  const area = Math.abs((x[b] - x[a]) * (y[c] - y[a]) - (x[c] - x[a]) * (y[b] - y[a])) / 2;
  if (area > 0) addTriangle(sums, nodes, area, a, b, c);
}

function shares(sums: LevelSums): Pick<Orbits, 'volume' | 'flow' | 'dwell'> {
  const total = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0);
  const wholeVolume = total(sums.second);
  const wholeFlow = total(sums.first);
  const scale = Math.abs(wholeFlow) > 0 ? Math.abs(wholeFlow) : 1;
  const volume = sums.second.map((value) => value / wholeVolume);
  const flow = sums.first.map((value) => value / scale);
  const dwell = volume.map((value, k) => (flow[k] === 0 ? Number.POSITIVE_INFINITY : value / flow[k]));
  return { volume, flow, dwell };
}
