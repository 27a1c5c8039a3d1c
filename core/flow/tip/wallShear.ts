/** Shear along the walls and where it turns against the flow. */

import { newTriGeometry, type TriMesh, triGeometry } from '../../math/triMesh.ts';
import { SHAPE_COUNT, shapeSlopes } from '../../math/triQuadrature.ts';
import { gatherVelocity, type StokesState } from './stokesState.ts';
import { eachBoundaryEdge, edgeNodes } from './stokesSystem.ts';
import { EDGE } from './zipper.ts';

/** Middle of one wall edge, walls walked downstream. */
export interface WallSample {
  readonly triangle: number;
  /** Distance walked along the wall, m */
  readonly s: number;
  readonly z: number;
  readonly r: number;
  /** Shear rate along the wall, 1/s; positive = melt moves on downstream */
  readonly shear: number;
}

/** A stretch of wall along which the melt runs back. */
export interface ReversedStretch {
  readonly from: number;
  readonly to: number;
  /** Samples within it */
  readonly samples: readonly WallSample[];
}

interface WallEdge {
  readonly t: number;
  readonly k: number;
  readonly a: number;
  readonly b: number;
}

/** Edges of one wall in downstream order; melt is left of a->b on the inner wall, right of it on the outer. */
function chain(mesh: TriMesh, tag: number): WallEdge[] {
  const from = new Map<number, WallEdge>();
  const entered = new Set<number>();
  eachBoundaryEdge(mesh, (t, k, edgeTag) => {
    if (edgeTag !== tag) return;
    const [p, q] = edgeNodes(mesh, t, k);
    const [a, b] = tag === EDGE.outer ? [q, p] : [p, q];
    from.set(a, { t, k, a, b });
    entered.add(b);
  });
  const ordered: WallEdge[] = [];
  let edge = [...from.values()].find((candidate) => !entered.has(candidate.a));
  for (; edge; edge = from.get(edge.b)) ordered.push(edge);
  return ordered;
}

const geometry = newTriGeometry();
const slopes = new Float64Array(3 * SHAPE_COUNT);

/** d(u.t)/dn at the middle of an edge, n into the melt. */
function shearAt(mesh: TriMesh, state: StokesState, edge: WallEdge, local: Float64Array): number {
  const { t, k, a, b } = edge;
  triGeometry(mesh, t, geometry);
  gatherVelocity(mesh, t, state, local);
  const bary = [0.5, 0.5, 0.5];
  bary[k] = 0;
  shapeSlopes(bary[0], bary[1], slopes);
  const length = Math.hypot(mesh.x[b] - mesh.x[a], mesh.y[b] - mesh.y[a]);
  const tz = (mesh.x[b] - mesh.x[a]) / length;
  const tr = (mesh.y[b] - mesh.y[a]) / length;
  const normal = Math.hypot(geometry.gx[k], geometry.gy[k]); // grad lambda_k points into the melt
  let shear = 0;
  for (let i = 0; i < SHAPE_COUNT; i++) {
    let dn = 0;
    for (let j = 0; j < 3; j++)
      dn += (slopes[3 * i + j] * (geometry.gx[j] * geometry.gx[k] + geometry.gy[j] * geometry.gy[k])) / normal;
    shear += dn * (local[i * state.components + 1] * tz + local[i * state.components] * tr);
  }
  return shear;
}

/** Shear along one wall, from inlet to outlet (or to the axis). */
export function wallShear(mesh: TriMesh, state: StokesState, tag: number): WallSample[] {
  const local = new Float64Array(SHAPE_COUNT * state.components);
  let walked = 0;
  return chain(mesh, tag).map((edge) => {
    const { t, k, a, b } = edge;
    const length = Math.hypot(mesh.x[b] - mesh.x[a], mesh.y[b] - mesh.y[a]);
    const middle = mesh.nodes[6 * t + 3 + k];
    walked += length;
    const shear = shearAt(mesh, state, edge, local);
    return { triangle: t, s: walked - length / 2, z: mesh.x[middle], r: mesh.y[middle], shear };
  });
}

function zeroBetween(a: WallSample, b: WallSample): number {
  return a.s + ((b.s - a.s) * a.shear) / (a.shear - b.shear);
}

/** Stretches where the shear runs back; ends interpolated between samples. */
export function reversedStretches(samples: readonly WallSample[]): ReversedStretch[] {
  const found: ReversedStretch[] = [];
  for (let i = 0; i < samples.length; i++) {
    if (samples[i].shear >= 0) continue;
    let j = i;
    while (j + 1 < samples.length && samples[j + 1].shear < 0) j++;
    const from = i > 0 ? zeroBetween(samples[i - 1], samples[i]) : samples[i].s;
    const to = j + 1 < samples.length ? zeroBetween(samples[j], samples[j + 1]) : samples[j].s;
    found.push({ from, to, samples: samples.slice(i, j + 1) });
    i = j;
  }
  return found;
}
