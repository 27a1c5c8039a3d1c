/** Section lining as lines, for writers that have no lining of their own. */

import type { HatchEntity, Point } from './model.ts';
import { pt } from './shapes.ts';

const root = Math.SQRT1_2;

/** Along and across the lines, which rise at 45°. */
const turned = ({ x, y }: Point): Point => pt((x + y) * root, (y - x) * root);
const back = ({ x, y }: Point): Point => pt((x - y) * root, (x + y) * root);

/** Where a line at height `v` crosses the sides of closed outlines, rising. */
function crossings(loops: readonly (readonly Point[])[], v: number): number[] {
  const found: number[] = [];
  for (const loop of loops) {
    for (let i = 0; i < loop.length; i++) {
      const a = loop[i] as Point;
      const b = loop[(i + 1) % loop.length] as Point;
      if (a.y > v === b.y > v) continue;
      found.push(a.x + ((b.x - a.x) * (v - a.y)) / (b.y - a.y));
    }
  }
  return found.sort((p, q) => p - q);
}

/** Lines of the lining, each from one side to the next. They lie on one grid over the whole sheet. */
export function hatchLines({ loops, spacing }: HatchEntity): [Point, Point][] {
  const around = loops.map((loop) => loop.map(turned));
  const heights = around.flat().map(({ y }) => y);
  const lines: [Point, Point][] = [];
  const last = Math.floor(Math.max(...heights) / spacing);
  for (let i = Math.ceil(Math.min(...heights) / spacing); i <= last; i++) {
    // off the grid by a hair, so that no line runs exactly through a corner
    const v = i * spacing + 1e-7;
    const xs = crossings(around, v);
    for (let k = 0; k + 1 < xs.length; k += 2)
      lines.push([back(pt(xs[k] as number, v)), back(pt(xs[k + 1] as number, v))]);
  }
  return lines;
}
