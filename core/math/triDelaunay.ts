/** Growing constrained Delaunay triangulation: edge flips, point insertion, edge splitting, point location. */

import { backEdge, type CornerMesh, doubleArea } from './triMesh.ts';

/** Where a walk through the triangulation ended: inside `triangle`, or at its boundary edge `edge` (else -1). */
export interface WalkEnd {
  readonly triangle: number;
  readonly edge: number;
}

const NEXT = [1, 2, 0];
const AFTER = [2, 0, 1];

/** Positive when d lies inside the circle through a, b, c (counter-clockwise). */
function inCircle(x: number[], y: number[], a: number, b: number, c: number, d: number): number {
  const ax = x[a] - x[d];
  const ay = y[a] - y[d];
  const bx = x[b] - x[d];
  const by = y[b] - y[d];
  const cx = x[c] - x[d];
  const cy = y[c] - y[d];
  const a2 = ax * ax + ay * ay;
  const b2 = bx * bx + by * by;
  const c2 = cx * cx + cy * cy;
  const value = ax * (by * c2 - b2 * cy) - ay * (bx * c2 - b2 * cx) + a2 * (bx * cy - by * cx);
  const size = Math.max(a2, b2, c2);
  return Math.abs(value) < 1e-11 * size * size ? 0 : value;
}

/** A triangulation of a fixed outline that can be refined; boundary edges are never flipped away. */
export class TriDelaunay {
  readonly x: number[];
  readonly y: number[];
  readonly corners: number[];
  readonly neighbours: number[];
  readonly edgeTags: number[];
  /** Triangles changed by the last insertion. */
  readonly touched: number[] = [];

  constructor(start: CornerMesh) {
    this.x = [...start.x];
    this.y = [...start.y];
    this.corners = [...start.corners];
    this.neighbours = [...start.neighbours];
    this.edgeTags = [...start.edgeTags];
    this.flipAll();
  }

  get triangleCount(): number {
    return this.corners.length / 3;
  }

  /** Walks from a triangle towards a point; stops at the boundary when the point lies beyond it. */
  walk(from: number, px: number, py: number): WalkEnd {
    const { x, y, corners, neighbours } = this;
    let t = from;
    for (let step = 0; step < 2 * this.triangleCount + 10; step++) {
      let exit = -1;
      for (let j = 0; j < 3 && exit < 0; j++) {
        const k = (j + step) % 3;
        const a = corners[3 * t + NEXT[k]];
        const b = corners[3 * t + AFTER[k]];
        if (doubleArea(x[a], y[a], x[b], y[b], px, py) < 0) exit = k;
      }
      if (exit < 0) return { triangle: t, edge: -1 };
      const next = neighbours[3 * t + exit];
      if (next < 0) return { triangle: t, edge: exit };
      t = next;
    }
    return { triangle: t, edge: -1 };
  }

  /** Inserts a point inside a triangle (or on one of its edges). */
  insert(t: number, px: number, py: number): void {
    const { x, y, corners } = this;
    const whole = this.area2(t);
    for (let k = 0; k < 3; k++) {
      const a = corners[3 * t + NEXT[k]];
      const b = corners[3 * t + AFTER[k]];
      if (doubleArea(x[a], y[a], x[b], y[b], px, py) < 1e-7 * whole) {
        this.splitEdge(t, k, px, py);
        return;
      }
    }
    this.splitInside(t, this.addPoint(px, py));
  }

  /** Splits an edge at a point on it. */
  splitEdge(t: number, k: number, px: number, py: number): void {
    const p = this.addPoint(px, py);
    const o = this.neighbours[3 * t + k];
    const j = o >= 0 ? backEdge(this.neighbours, o, t) : -1;
    const t1 = this.halve(t, k, p);
    if (o < 0) {
      this.settle(p, [t, t1]);
      return;
    }
    const o1 = this.halve(o, j, p);
    this.link(t, this.edgeOf(t, p, 0), o1);
    this.link(o1, this.edgeOf(o1, p, 1), t);
    this.link(t1, this.edgeOf(t1, p, 1), o);
    this.link(o, this.edgeOf(o, p, 0), t1);
    this.settle(p, [t, t1, o, o1]);
  }

  /** Twice the area of a triangle. */
  area2(t: number): number {
    const { x, y, corners } = this;
    const a = corners[3 * t];
    const b = corners[3 * t + 1];
    const c = corners[3 * t + 2];
    return doubleArea(x[a], y[a], x[b], y[b], x[c], y[c]);
  }

  private addPoint(px: number, py: number): number {
    this.x.push(px);
    this.y.push(py);
    return this.x.length - 1;
  }

  private link(t: number, k: number, other: number): void {
    this.neighbours[3 * t + k] = other;
  }

  /** The half-edge beside p: side 0 gives the edge opposite the corner k of (k, b, p), side 1 that of (k, p, c). */
  private edgeOf(t: number, p: number, side: number): number {
    const k = this.corners.indexOf(p, 3 * t) - 3 * t;
    return side === 0 ? NEXT[k] : AFTER[k];
  }

  private set(t: number, corners: number[], neighbours: number[], tags: number[]): void {
    for (let k = 0; k < 3; k++) {
      this.corners[3 * t + k] = corners[k];
      this.neighbours[3 * t + k] = neighbours[k];
      this.edgeTags[3 * t + k] = tags[k];
    }
  }

  private relink(of: number, from: number, to: number): void {
    if (of < 0) return;
    for (let k = 0; k < 3; k++)
      if (this.neighbours[3 * of + k] === from) {
        this.neighbours[3 * of + k] = to;
        return;
      }
  }

  /** (a, b, c) with b-c split at p becomes t = (a, b, p) and the returned (a, p, c). */
  private halve(t: number, k: number, p: number): number {
    const { corners, neighbours: n, edgeTags: g } = this;
    const i = [k, NEXT[k], AFTER[k]].map((e) => 3 * t + e);
    const [a, b, c] = i.map((e) => corners[e]);
    const [across, nca, nab] = i.map((e) => n[e]);
    const [tag, tca, tab] = i.map((e) => g[e]);
    const t1 = this.triangleCount;
    this.set(t, [a, b, p], [across, t1, nab], [tag, 0, tab]);
    this.set(t1, [a, p, c], [across, nca, t], [tag, tca, 0]);
    this.relink(nca, t, t1);
    return t1;
  }

  private splitInside(t: number, p: number): void {
    const [a, b, c] = this.corners.slice(3 * t, 3 * t + 3);
    const [na, nb, nc] = this.neighbours.slice(3 * t, 3 * t + 3);
    const [ga, gb, gc] = this.edgeTags.slice(3 * t, 3 * t + 3);
    const t1 = this.triangleCount;
    const t2 = t1 + 1;
    this.set(t, [a, b, p], [t1, t2, nc], [0, 0, gc]);
    this.set(t1, [b, c, p], [t2, t, na], [0, 0, ga]);
    this.set(t2, [c, a, p], [t, t1, nb], [0, 0, gb]);
    this.relink(na, t, t1);
    this.relink(nb, t, t2);
    this.settle(p, [t, t1, t2]);
  }

  /** Restores the Delaunay property around a new point. */
  private settle(p: number, around: number[]): void {
    const stack = [...around];
    this.touched.length = 0;
    this.touched.push(...around);
    while (stack.length > 0) {
      const t = stack.pop() ?? 0;
      const k = this.corners.indexOf(p, 3 * t) - 3 * t;
      if (k < 0 || k > 2 || !this.shouldFlip(t, k)) continue;
      const o = this.neighbours[3 * t + k];
      this.flip(t, k);
      stack.push(t, o);
      this.touched.push(o);
    }
  }

  private shouldFlip(t: number, k: number): boolean {
    const o = this.neighbours[3 * t + k];
    if (o < 0) return false;
    const { x, y, corners } = this;
    const a = corners[3 * t + k];
    const b = corners[3 * t + NEXT[k]];
    const c = corners[3 * t + AFTER[k]];
    const d = corners[3 * o + backEdge(this.neighbours, o, t)];
    if (inCircle(x, y, a, b, c, d) <= 0) return false;
    const least = 1e-9 * (this.area2(t) + this.area2(o));
    return (
      doubleArea(x[a], y[a], x[b], y[b], x[d], y[d]) > least && doubleArea(x[a], y[a], x[d], y[d], x[c], y[c]) > least
    );
  }

  /** t = (a, b, c), o = (d, c, b) become t = (a, b, d), o = (a, d, c). */
  private flip(t: number, k: number): void {
    const { corners, neighbours: n, edgeTags: g } = this;
    const o = n[3 * t + k];
    const j = backEdge(n, o, t);
    const [a, b, c] = [k, NEXT[k], AFTER[k]].map((e) => corners[3 * t + e]);
    const d = corners[3 * o + j];
    const ab = 3 * t + AFTER[k];
    const ca = 3 * t + NEXT[k];
    const bd = 3 * o + NEXT[j];
    const dc = 3 * o + AFTER[j];
    const [nab, nca, nbd, ndc] = [n[ab], n[ca], n[bd], n[dc]];
    const [gab, gca, gbd, gdc] = [g[ab], g[ca], g[bd], g[dc]];
    this.set(t, [a, b, d], [nbd, o, nab], [gbd, 0, gab]);
    this.set(o, [a, d, c], [ndc, nca, t], [gdc, gca, 0]);
    this.relink(nbd, o, t);
    this.relink(nca, t, o);
  }

  private flipAll(): void {
    for (let pass = 0, changed = true; changed && pass < 200; pass++) {
      changed = false;
      for (let t = 0; t < this.triangleCount; t++)
        for (let k = 0; k < 3; k++)
          if (this.shouldFlip(t, k)) {
            this.flip(t, k);
            changed = true;
          }
    }
  }
}
