/** Regions of old melt: where they are, how large and how old, and which feature of the walls holds them. */

import type { TriMesh } from '../../math/triMesh.ts';
import { eachAgePoint } from './ageStatistics.ts';
import { type DwellCause, type Feature, featureAt } from './features.ts';
import { triangleCentres } from './stokesSystem.ts';

/** A connected region older than `DEAD_TIMES` times the mean, old for one reason. */
export interface DeadSpot {
  /** Volume centre, m */
  readonly z: number;
  readonly r: number;
  /** Volume of the old melt, m3 */
  readonly volume: number;
  /** Its mean age, s */
  readonly meanAge: number;
  /** Wall feature that holds most of it */
  readonly feature: Feature;
  readonly cause: DwellCause;
}

/** Melt older than this many mean residence times counts as dead. */
const DEAD_TIMES = 3;

/** Spots smaller than this share of the whole volume are left out. */
const LEAST_SHARE = 5e-4;

interface Old {
  /** Old volume per triangle, m3 */
  readonly volume: Float64Array;
  /** Old volume times age per triangle, m3 s */
  readonly ageVolume: Float64Array;
  readonly total: number;
}

function oldMelt(mesh: TriMesh, age: Float64Array, limit: number): Old {
  const volume = new Float64Array(mesh.triangleCount);
  const ageVolume = new Float64Array(mesh.triangleCount);
  let total = 0;
  eachAgePoint(mesh, age, (t, value, v) => {
    total += v;
    if (value <= limit) return;
    volume[t] += v;
    ageVolume[t] += v * value;
  });
  return { volume, ageVolume, total };
}

/** Same reason, same wall: melt of both counts as one spot where it touches. */
const sameReason = (a: Feature, b: Feature): boolean => a.cause === b.cause && a.wall === b.wall;

/** Old triangles joined through neighbours that are old for the same reason. */
function joined(mesh: TriMesh, start: number, old: Old, owner: readonly Feature[], taken: Uint8Array): number[] {
  const queue = [start];
  taken[start] = 1;
  for (let head = 0; head < queue.length; head++)
    for (let k = 0; k < 3; k++) {
      const next = mesh.neighbours[3 * queue[head] + k];
      if (next < 0 || taken[next] || old.volume[next] === 0 || !sameReason(owner[next], owner[start])) continue;
      taken[next] = 1;
      queue.push(next);
    }
  return queue;
}

/** Feature that holds most volume times age of a spot. */
function mainFeature(parts: readonly number[], old: Old, owner: readonly Feature[]): Feature {
  const weights = new Map<Feature, number>();
  for (const t of parts) weights.set(owner[t], (weights.get(owner[t]) ?? 0) + old.ageVolume[t]);
  return [...weights].reduce((best, next) => (next[1] > best[1] ? next : best))[0];
}

/**
 * Dead spots, the one with most volume times age first.
 * @param age nodal age, s
 * @param meanTime V/Q, s
 * @param features walls and corners of the region
 */
export function deadSpots(
  mesh: TriMesh,
  age: Float64Array,
  meanTime: number,
  features: readonly Feature[],
): DeadSpot[] {
  const old = oldMelt(mesh, age, DEAD_TIMES * meanTime);
  const centre = triangleCentres(mesh);
  const owner = Array.from(centre.x, (x, t) => features[featureAt(features, x, centre.y[t])]);
  const taken = new Uint8Array(mesh.triangleCount);
  const spots: DeadSpot[] = [];
  for (let t = 0; t < mesh.triangleCount; t++) {
    if (taken[t] || old.volume[t] === 0) continue;
    const parts = joined(mesh, t, old, owner, taken);
    let [volume, ageVolume, z, r] = [0, 0, 0, 0];
    for (const part of parts) {
      volume += old.volume[part];
      ageVolume += old.ageVolume[part];
      z += old.volume[part] * centre.x[part];
      r += old.volume[part] * centre.y[part];
    }
    if (volume < LEAST_SHARE * old.total) continue;
    const feature = mainFeature(parts, old, owner);
    spots.push({ z: z / volume, r: r / volume, volume, meanAge: ageVolume / volume, feature, cause: feature.cause });
  }
  return spots.sort((a, b) => b.volume * b.meanAge - a.volume * a.meanAge);
}
