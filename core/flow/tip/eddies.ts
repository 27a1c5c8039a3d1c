/** Eddies that never leave: where the wall shear runs back, how far they reach and how much they turn over. */

import type { TriMesh } from '../../math/triMesh.ts';
import { distanceToPiece } from './clearance.ts';
import type { Feature } from './features.ts';
import type { ElementContext } from './stokesElement.ts';
import type { StokesState } from './stokesState.ts';
import { triangleVolume } from './volumes.ts';
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

/** An eddy's volume ends where its circulation has sunk to this share of its strongest. */
const EDGE_SHARE = 0.002;

/** Circulation over through flow below which a stretch is numerical noise. */
const LEAST_STRENGTH = 1e-9;

interface Place {
  /** Distance along the wall, m */
  readonly s: number;
  readonly z: number;
  readonly r: number;
}

/** Corners of one wall with their distance along it: between the two samples that a corner lies most nearly between. */
function cornersAlong(samples: readonly WallSample[], features: readonly Feature[], wall: Feature['wall']): Place[] {
  return features
    .filter((feature) => feature.kind === 'corner' && feature.wall === wall)
    .map(({ z0: z, r0: r }) => {
      let best = { s: 0, z, r };
      let least = Number.POSITIVE_INFINITY;
      for (let i = 0; i + 1 < samples.length; i++) {
        const before = Math.hypot(z - samples[i].z, r - samples[i].r);
        const after = Math.hypot(z - samples[i + 1].z, r - samples[i + 1].r);
        if (before + after >= least) continue;
        least = before + after;
        best = { s: samples[i].s + ((samples[i + 1].s - samples[i].s) * before) / (before + after), z, r };
      }
      return best;
    });
}

/** Two stretches on either side of a corner are one eddy: between them only its weak inmost counter-eddies turn. */
function merged(stretches: readonly ReversedStretch[], corners: readonly Place[]): ReversedStretch[] {
  const out: ReversedStretch[] = [];
  for (const next of stretches) {
    const last = out[out.length - 1];
    const size = last ? Math.max(last.to - last.from, next.to - next.from) : 0;
    const around = last && corners.some((corner) => corner.s >= last.to && corner.s <= next.from);
    if (last && around && next.from - last.to < size)
      out[out.length - 1] = { from: last.from, to: next.to, samples: [...last.samples, ...next.samples] };
    else out.push(next);
  }
  return out;
}

/** The wall corner a stretch surrounds or nearly touches, else its own middle. */
function seat(stretch: ReversedStretch, corners: readonly Place[]): Place {
  const size = stretch.to - stretch.from;
  const outside = (place: Place): number => Math.max(stretch.from - place.s, place.s - stretch.to, 0);
  const near = [...corners].sort((a, b) => outside(a) - outside(b))[0];
  if (near && outside(near) < size) return near;
  const middle = stretch.samples[stretch.samples.length >> 1];
  return { s: (stretch.from + stretch.to) / 2, z: middle.z, r: middle.r };
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

/** Strongest circulation among some triangles, and the volume where it exceeds a small share of that. */
function measure(mesh: TriMesh, excess: Excess, triangles: readonly number[]): { strength: number; volume: number } {
  let strength = 0;
  for (const t of triangles)
    for (let a = 0; a < 6; a++) strength = Math.max(strength, excess.share[mesh.nodes[6 * t + a]]);
  let volume = 0;
  for (const t of triangles) {
    let inside = 0;
    for (let a = 0; a < 6; a++) if (excess.share[mesh.nodes[6 * t + a]] > EDGE_SHARE * strength) inside++;
    volume += (triangleVolume(mesh, t) * inside) / 6;
  }
  return { strength, volume };
}

function wallEddies(
  context: ElementContext,
  state: StokesState,
  excess: Excess,
  features: readonly Feature[],
  tag: number,
): Eddy[] {
  const { mesh } = context;
  const samples = wallShear(context, state, tag);
  const wall = tag === EDGE.outer ? 'outer' : 'inner';
  const corners = cornersAlong(samples, features, wall);
  const taken = new Uint8Array(mesh.triangleCount);
  return merged(reversedStretches(samples), corners).flatMap((stretch) => {
    const { strength, volume } = measure(mesh, excess, flood(mesh, excess, stretch, taken));
    if (strength < LEAST_STRENGTH) return [];
    const { s, z, r } = seat(stretch, corners);
    const reach = { lengthBefore: Math.max(0, s - stretch.from), lengthAfter: Math.max(0, stretch.to - s) };
    return [{ wall, z, r, ...reach, strength, volume }];
  });
}

/**
 * All eddies on both walls, strongest first.
 * @param psi stream function, 0 on the outer wall
 * @param flux Q/(2 pi), m3/s
 * @param features corners of the walls
 */
export function findEddies(
  context: ElementContext,
  state: StokesState,
  psi: Float64Array,
  flux: number,
  features: readonly Feature[],
): Eddy[] {
  const outer = { share: psi.map((value) => Math.max(0, -value / flux)) };
  const inner = { share: psi.map((value) => Math.max(0, value / flux - 1)) };
  return [
    ...wallEddies(context, state, outer, features, EDGE.outer),
    ...wallEddies(context, state, inner, features, EDGE.inner),
  ].sort((a, b) => b.strength - a.strength);
}

/**
 * Length of the eddy in the first concave corner of the outer wall, upstream of it: from where the wall shear first
 * turns back, coming from upstream, to the corner.
 * @param corner place of the corner, m
 * @returns m, 0 if there is none
 */
export function eddyLengthBefore(
  context: ElementContext,
  state: StokesState,
  corner: { readonly z: number; readonly r: number },
): number {
  const samples = wallShear(context, state, EDGE.outer).filter(
    (sample) => sample.z < corner.z - 1e-12 || sample.r > corner.r,
  );
  for (let i = 1; i < samples.length; i++) {
    if (samples[i].stress >= 0 || samples[i - 1].stress < 0) continue;
    const [a, b] = [samples[i - 1], samples[i]];
    const share = a.stress / (a.stress - b.stress);
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
