/** Triangles with values at their corners, sorted into bands on a fine grid and given back as few rectangles. */

import type { DwellSection } from '../../present/dwellSection.ts';
import { box, type Spot } from './picture.ts';

/** A grid over a stretch of the half-plane: m, and cells. */
export interface Grid {
  readonly z: readonly [number, number];
  readonly r: readonly [number, number];
  readonly columns: number;
  readonly rows: number;
}

const empty = 255;

/** Band of each cell by the value at its middle, row by row from the axis outwards; 255 where there is no melt. */
export function bandGrid(sections: readonly DwellSection[], grid: Grid, bandOf: (value: number) => number): Uint8Array {
  const bands = new Uint8Array(grid.columns * grid.rows).fill(empty);
  for (const section of sections)
    for (let t = 0; t < section.triangles.length; t += 3) fillTriangle(section, t, grid, bands, bandOf);
  return bands;
}

/** Cells whose middles lie between two values, as first and last index. */
function reach(values: readonly number[], [from, to]: readonly [number, number], count: number): [number, number] {
  const step = (to - from) / count;
  const first = Math.ceil((Math.min(...values) - from) / step - 0.5);
  const last = Math.floor((Math.max(...values) - from) / step - 0.5);
  return [Math.max(0, first), Math.min(count - 1, last)];
}

function fillTriangle(
  { z, r, dwell, triangles }: DwellSection,
  t: number,
  grid: Grid,
  bands: Uint8Array,
  bandOf: (value: number) => number,
): void {
  const [a, b, c] = [triangles[t], triangles[t + 1], triangles[t + 2]];
  const area = (z[b] - z[a]) * (r[c] - r[a]) - (z[c] - z[a]) * (r[b] - r[a]);
  if (area === 0) return;
  const [i0, i1] = reach([z[a], z[b], z[c]], grid.z, grid.columns);
  const [j0, j1] = reach([r[a], r[b], r[c]], grid.r, grid.rows);
  for (let j = j0; j <= j1; j++) {
    const y = grid.r[0] + ((j + 0.5) * (grid.r[1] - grid.r[0])) / grid.rows;
    for (let i = i0; i <= i1; i++) {
      const x = grid.z[0] + ((i + 0.5) * (grid.z[1] - grid.z[0])) / grid.columns;
      const p = ((x - z[a]) * (r[c] - r[a]) - (z[c] - z[a]) * (y - r[a])) / area;
      const q = ((z[b] - z[a]) * (y - r[a]) - (x - z[a]) * (r[b] - r[a])) / area;
      if (p < -1e-6 || q < -1e-6 || p + q > 1 + 1e-6) continue;
      bands[j * grid.columns + i] = bandOf((1 - p - q) * dwell[a] + p * dwell[b] + q * dwell[c]);
    }
  }
}

/** How far a rectangle reaches over its cell, points: without it viewers show seams between neighbours. */
const overlap = 0.12;

/**
 * Runs of equal cells as rectangles in a picture, one list a band.
 * @param place left, top, width and height of the grid in the picture; the first row lies lowest
 */
export function bandRectangles(
  bands: Uint8Array,
  grid: Grid,
  count: number,
  place: readonly [left: number, top: number, width: number, height: number],
): Spot[][][] {
  const [left, top, width, height] = place;
  const [dx, dy] = [width / grid.columns, height / grid.rows];
  const found: Spot[][][] = Array.from({ length: count }, () => []);
  for (let j = 0; j < grid.rows; j++) {
    const y = top + height - (j + 1) * dy;
    for (let i = 0, from = 0; i < grid.columns; i++) {
      const band = bands[j * grid.columns + i];
      if (i + 1 < grid.columns && bands[j * grid.columns + i + 1] === band) continue;
      if (band !== empty) found[band].push(box(left + from * dx, y, (i + 1 - from) * dx + overlap, dy + overlap));
      from = i + 1;
    }
  }
  return found;
}
