/** Eddies that never leave: where the wall shear runs back, how far they reach and how much they turn over. */

import type { TriMesh } from '../../math/triMesh.ts';
import { distanceToPiece } from './regionIssues.ts';
import type { StokesState } from './stokesElement.ts';
import { triangleVolumes } from './volumes.ts';
import { type ReversedStretch, reversedStretches, type WallSample, wallShear } from './wallShear.ts';
import { EDGE } from './zipper.ts';

/** One closed eddy on a wall. */
export interface Eddy {
  readonly wall: 'outer' | 'inner';
  /** Place of the wall corner it sits in (or the middle of its stretch), m */
  readonly z: number;
  readonly r: number;
  /** Reach along the wall upstream and downstream of that place, m */
  readonly lengthBefore: number;
  readonly lengthAfter: number;
  /** Flow that circulates over the through flow */
  readonly strength: number;
  /** m3 */
  readonly volume: number;
}

/** Stretches closer than this share of their length are one eddy: the gap is a smaller counter-eddy in the corner. */
const MERGE_SHARE = 0.3;

/** Circulation over through flow below which a stretch is numerical noise. */
const LEAST_STRENGTH = 1e-9;

function merged(stretches: readonly ReversedStretch[]): ReversedStretch[] {
  const out: ReversedStretch[] = [];
  for (const next of stretches) {
    const last = out[out.length - 1];
    const size = last ? Math.max(last.to - last.from, next.to - next.from) : 0;
    if (last && next.from - last.to < MERGE_SHARE * size)
      out[out.length - 1] = { from: last.from, to: next.to, samples: [...last.samples, ...next.samples] };
    else out.push(next);
  }
  return out;
}

/** The sharpest bend of the wall within a stretch, else its middle. */
function bend(samples: readonly WallSample[], stretch: ReversedStretch): { s: number; z: number; r: number } {
  const inside = samples.filter((sample) => sample.s >= stretch.from - 1e-12 && sample.s <= stretch.to + 1e-12);
  const middle = inside[inside.length >> 1];
  let best = { turn: 0.3, s: middle.s, z: middle.z, r: middle.r };
  const around = samples.filter((_, i) => samples[i + 1]?.s >= stretch.from && samples[i - 1]?.s <= stretch.to);
  for (let i = 0; i + 1 < around.length; i++) {
    const [a, b] = [around[i], around[i + 1]];
    const direct = Math.hypot(b.z - a.z, b.r - a.r);
    const along = b.s - a.s;
    const turn = Math.acos(Math.max(-1, Math.min(1, direct / along)));
    if (turn > best.turn) best = { turn, ...cornerBetween(samples, a, b) };
  }
  return best;
}

/** Corner between two edge middles: half the first edge on from a. */
function cornerBetween(
  samples: readonly WallSample[],
  a: WallSample,
  b: WallSample,
): { s: number; z: number; r: number } {
  const i = samples.indexOf(a);
  const before = samples[i - 1];
  const half = before ? edgeHalf(samples, i) : (b.s - a.s) / 2;
  const direction = before ? Math.hypot(a.z - before.z, a.r - before.r) : 1;
  const z = before ? a.z + ((a.z - before.z) / direction) * half : (a.z + b.z) / 2;
  const r = before ? a.r + ((a.r - before.r) / direction) * half : (a.r + b.r) / 2;
  return { s: a.s + half, z, r };
}

/** Half length of edge i: middles are half of both edges apart, so lengths follow from the wall's start. */
function edgeHalf(samples: readonly WallSample[], i: number): number {
  let half = samples[0].s;
  for (let j = 1; j <= i; j++) half = samples[j].s - samples[j - 1].s - half;
  return half;
}

interface Excess {
  /** Flow beyond the wall's value over the through flow, per node; 0 outside eddies */
  readonly share: Float64Array;
}

/** Nodes joined to a stretch through triangles that hold excess. */
function flood(mesh: TriMesh, excess: Excess, stretch: ReversedStretch, taken: Uint8Array): number[] {
  const holds = (t: number): boolean => {
    for (let a = 0; a < 6; a++) if (excess.share[mesh.nodes[6 * t + a]] > 0) return true;
    return false;
  };
  const queue = stretch.samples.map((sample) => sample.triangle).filter((t) => !taken[t] && holds(t));
  for (const t of queue) taken[t] = 1;
  for (let head = 0; head < queue.length; head++)
    for (let k = 0; k < 3; k++) {
      const next = mesh.neighbours[3 * queue[head] + k];
      if (next < 0 || taken[next] || !holds(next)) continue;
      taken[next] = 1;
      queue.push(next);
    }
  return queue;
}

function wallEddies(mesh: TriMesh, state: StokesState, excess: Excess, tag: number): Eddy[] {
  const samples = wallShear(mesh, state, tag);
  const volumes = triangleVolumes(mesh);
  const taken = new Uint8Array(mesh.triangleCount);
  return merged(reversedStretches(samples)).flatMap((stretch) => {
    const triangles = flood(mesh, excess, stretch, taken);
    let strength = 0;
    let volume = 0;
    for (const t of triangles) {
      let inside = 0;
      for (let a = 0; a < 6; a++) {
        const share = excess.share[mesh.nodes[6 * t + a]];
        strength = Math.max(strength, share);
        if (share > 0) inside++;
      }
      volume += (volumes[t] * inside) / 6;
    }
    if (strength < LEAST_STRENGTH) return [];
    const { s, z, r } = bend(samples, stretch);
    const wall = tag === EDGE.outer ? 'outer' : 'inner';
    return [
      {
        wall,
        z,
        r,
        lengthBefore: Math.max(0, s - stretch.from),
        lengthAfter: Math.max(0, stretch.to - s),
        strength,
        volume,
      },
    ];
  });
}

/**
 * All eddies on both walls, strongest first.
 * @param psi stream function, 0 on the outer wall
 * @param flux Q/(2 pi), m3/s
 */
export function findEddies(mesh: TriMesh, state: StokesState, psi: Float64Array, flux: number): Eddy[] {
  const outer = { share: psi.map((value) => Math.max(0, -value / flux)) };
  const inner = { share: psi.map((value) => Math.max(0, value / flux - 1)) };
  return [...wallEddies(mesh, state, outer, EDGE.outer), ...wallEddies(mesh, state, inner, EDGE.inner)].sort(
    (a, b) => b.strength - a.strength,
  );
}

/**
 * Length of the eddy in the first concave corner of the outer wall, upstream of it: from where the wall shear first
 * turns back, coming from upstream, to the corner.
 * @param corner place of the corner, m
 * @returns m, 0 if there is none
 */
export function eddyLengthBefore(
  mesh: TriMesh,
  state: StokesState,
  corner: { readonly z: number; readonly r: number },
): number {
  const samples = wallShear(mesh, state, EDGE.outer).filter(
    (sample) => sample.z < corner.z - 1e-12 || sample.r > corner.r,
  );
  for (let i = 1; i < samples.length; i++) {
    if (samples[i].shear >= 0 || samples[i - 1].shear < 0) continue;
    const [a, b] = [samples[i - 1], samples[i]];
    const share = a.shear / (a.shear - b.shear);
    return distanceToPiece(
      a.z + share * (b.z - a.z),
      a.r + share * (b.r - a.r),
      corner.z,
      corner.r,
      corner.z,
      corner.r,
    );
  }
  return 0;
}
