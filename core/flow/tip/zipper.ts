/** First triangulation of a tip region: strips between the planes where a wall has a corner. Valid by construction. */

import type { CornerMesh } from '../../math/triMesh.ts';
import { type Outline, radiusAt } from './outline.ts';

/** Tags of boundary edges. */
export const EDGE = { inlet: 1, outlet: 2, axis: 3, inner: 4, outer: 5 } as const;

/** Radii closer than this share of the bore are one node. */
const MERGED = 1e-9;

interface Plane {
  readonly z: number;
  /** Node numbers by rising radius. */
  readonly nodes: readonly number[];
  /** Open span on the upstream and on the downstream side. */
  readonly before: readonly [number, number];
  readonly after: readonly [number, number];
}

interface Draft {
  readonly x: number[];
  readonly y: number[];
  readonly corners: number[];
}

function span(outline: Outline, z: number, side: -1 | 1): [number, number] {
  return [radiusAt(outline.inner, z, side) || 0, radiusAt(outline.outer, z, side)];
}

function planeAt(outline: Outline, z: number, draft: Draft): Plane {
  const first = z === 0;
  const last = z === outline.length;
  const before = span(outline, z, first ? 1 : -1);
  const after = last ? before : span(outline, z, 1);
  const radii = new Set([...before, ...after]);
  for (const wall of [outline.inner, outline.outer])
    wall.z.forEach((wallZ, i) => {
      if (wallZ === z) radii.add(wall.r[i]);
    });
  const nodes = [...radii]
    .sort((a, b) => a - b)
    .filter((r, i, sorted) => i === 0 || r - sorted[i - 1] > MERGED * outline.outer.r[0])
    .map((r) => {
      draft.x.push(z);
      draft.y.push(r);
      return draft.x.length - 1;
    });
  return { z, nodes, before, after };
}

function within(draft: Draft, plane: Plane, [low, high]: readonly [number, number]): number[] {
  const slack = 2 * MERGED * high;
  return plane.nodes.filter((n) => draft.y[n] >= low - slack && draft.y[n] <= high + slack);
}

/** Triangles between two rows of nodes, always advancing on the row that lags. */
function zip(draft: Draft, left: readonly number[], right: readonly number[]): void {
  const share = (row: readonly number[], i: number): number =>
    (draft.y[row[i]] - draft.y[row[0]]) / (draft.y[row[row.length - 1]] - draft.y[row[0]]);
  let i = 0;
  let j = 0;
  while (i < left.length - 1 || j < right.length - 1) {
    const advanceLeft = j === right.length - 1 || (i < left.length - 1 && share(left, i + 1) <= share(right, j + 1));
    if (advanceLeft) draft.corners.push(left[i], right[j], left[++i]);
    else draft.corners.push(left[i], right[j], right[++j]);
  }
}

function connect(corners: readonly number[]): number[] {
  const open = new Map<string, number>();
  const neighbours = new Array<number>(corners.length).fill(-1);
  for (let e = 0; e < corners.length; e++) {
    const t = Math.floor(e / 3);
    const a = corners[3 * t + ((e + 1) % 3)];
    const b = corners[3 * t + ((e + 2) % 3)];
    const twin = open.get(`${b},${a}`);
    if (twin === undefined) open.set(`${a},${b}`, e);
    else {
      neighbours[e] = Math.floor(twin / 3);
      neighbours[twin] = t;
    }
  }
  return neighbours;
}

function tagOf(outline: Outline, z0: number, r0: number, z1: number, r1: number): number {
  if (z0 === 0 && z1 === 0) return EDGE.inlet;
  if (z0 === outline.length && z1 === outline.length) return EDGE.outlet;
  if (r0 === 0 && r1 === 0) return EDGE.axis;
  if (z0 === z1) {
    const middle = (r0 + r1) / 2;
    const inner = [span(outline, z0, -1)[0], span(outline, z0, 1)[0]];
    return middle > Math.min(...inner) && middle < Math.max(...inner) ? EDGE.inner : EDGE.outer;
  }
  return r0 + r1 <= radiusAt(outline.inner, z0, 1) + radiusAt(outline.inner, z1, -1) + 1e-12 ? EDGE.inner : EDGE.outer;
}

/**
 * Triangulates the space between two walls, with boundary tags from `EDGE`.
 * @param outline walls that leave an open span in every plane (see `regionIssues`)
 */
export function zipOutline(outline: Outline): CornerMesh {
  const draft: Draft = { x: [], y: [], corners: [] };
  const planes = [...new Set([...outline.inner.z, ...outline.outer.z])]
    .sort((a, b) => a - b)
    .map((z) => planeAt(outline, z, draft));
  for (let p = 0; p + 1 < planes.length; p++)
    zip(draft, within(draft, planes[p], planes[p].after), within(draft, planes[p + 1], planes[p + 1].before));
  const neighbours = connect(draft.corners);
  const edgeTags = neighbours.map((other, e) => {
    if (other >= 0) return 0;
    const t = Math.floor(e / 3);
    const a = draft.corners[3 * t + ((e + 1) % 3)];
    const b = draft.corners[3 * t + ((e + 2) % 3)];
    const [left, right] = draft.x[a] <= draft.x[b] ? [a, b] : [b, a];
    return tagOf(outline, draft.x[left], draft.y[left], draft.x[right], draft.y[right]);
  });
  return { x: draft.x, y: draft.y, corners: draft.corners, neighbours, edgeTags };
}
