/** Shear along the walls and where it turns against the flow. */

import type { TriMesh } from '../../math/triMesh.ts';
import { type ElementContext, type ElementWork, evaluateElement, newElementWork } from './stokesElement.ts';
import type { StokesState } from './stokesState.ts';
import { eachBoundaryEdge, edgeNodes } from './stokesSystem.ts';
import { EDGE } from './zipper.ts';

/** Middle of one wall edge, walls walked downstream. */
export interface WallSample {
  readonly triangle: number;
  /** Distance walked along the wall, m */
  readonly s: number;
  readonly z: number;
  readonly r: number;
  /** Shear stress on the wall, Pa; positive = melt drags it downstream */
  readonly stress: number;
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

/**
 * Shear stress on one edge: the middle node's reaction along the wall over its share 2/3 r L of the edge. Reactions
 * are more accurate than stresses taken from slopes (Babuska & Miller 1984), which tells weak eddies from noise.
 */
function edgeStress(context: ElementContext, state: StokesState, edge: WallEdge, work: ElementWork): number {
  const { mesh } = context;
  const { t, k, a, b } = edge;
  evaluateElement(context, t, state, work, false);
  const [dz, dr] = [mesh.x[b] - mesh.x[a], mesh.y[b] - mesh.y[a]];
  const at = (3 + k) * work.nc;
  const along = work.force[at] * dr + work.force[at + 1] * dz;
  return -along / ((2 / 3) * (dz * dz + dr * dr) * mesh.y[mesh.nodes[6 * t + 3 + k]]);
}

/** Shear stress along one wall, from inlet to outlet (or to the axis). */
export function wallShear(context: ElementContext, state: StokesState, tag: number): WallSample[] {
  const { mesh } = context;
  const work = newElementWork(state.components);
  let walked = 0;
  return chain(mesh, tag).map((edge) => {
    const { t, k, a, b } = edge;
    const length = Math.hypot(mesh.x[b] - mesh.x[a], mesh.y[b] - mesh.y[a]);
    const middle = mesh.nodes[6 * t + 3 + k];
    walked += length;
    const stress = edgeStress(context, state, edge, work);
    return { triangle: t, s: walked - length / 2, z: mesh.x[middle], r: mesh.y[middle], stress };
  });
}

function zeroBetween(a: WallSample, b: WallSample): number {
  return a.s + ((b.s - a.s) * a.stress) / (a.stress - b.stress);
}

/** Stretches where the shear runs back; ends interpolated between samples. */
export function reversedStretches(samples: readonly WallSample[]): ReversedStretch[] {
  const found: ReversedStretch[] = [];
  for (let i = 0; i < samples.length; i++) {
    if (samples[i].stress >= 0) continue;
    let j = i;
    while (j + 1 < samples.length && samples[j + 1].stress < 0) j++;
    const from = i > 0 ? zeroBetween(samples[i - 1], samples[i]) : samples[i].s;
    const to = j + 1 < samples.length ? zeroBetween(samples[j], samples[j + 1]) : samples[j].s;
    found.push({ from, to, samples: samples.slice(i, j + 1) });
    i = j;
  }
  return found;
}
