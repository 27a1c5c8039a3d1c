/** Regions of old melt: where they are, how large and how old, and which feature of the walls holds them. */

import type { TriMesh } from '../../math/triMesh.ts';
import { eachAgePoint } from './ageStatistics.ts';
import { type DwellCause, type Feature, featureAt } from './features.ts';
import { triangleCentres } from './stokesSystem.ts';

/** A connected region older than `DEAD_TIMES` times the mean, at one feature. */
export interface DeadSpot {
  /** Volume centre, m */
  readonly z: number;
  readonly r: number;
  /** Volume of the old melt, m3 */
  readonly volume: number;
  /** Its mean age, s */
  readonly meanAge: number;
  readonly feature: Feature;
  readonly cause: DwellCause;
}

/** Melt older than this many mean residence times counts as dead. */
export const DEAD_TIMES = 3;

/** Spots smaller than this share of the whole volume are left out. */
const LEAST_SHARE = 2e-4;

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

/** Triangles joined through neighbours of the same feature. */
function joined(mesh: TriMesh, start: number, old: Old, owner: Int32Array, taken: Uint8Array): number[] {
  const queue = [start];
  taken[start] = 1;
  for (let head = 0; head < queue.length; head++)
    for (let k = 0; k < 3; k++) {
      const next = mesh.neighbours[3 * queue[head] + k];
      if (next < 0 || taken[next] || old.volume[next] === 0 || owner[next] !== owner[start]) continue;
      taken[next] = 1;
      queue.push(next);
    }
  return queue;
}

/**
 * Dead spots, the one with most volume times age first.
 * @param age nodal age, s
 * @param meanTime V/Q, s
 */
export function deadSpots(
  mesh: TriMesh,
  age: Float64Array,
  meanTime: number,
  features: readonly Feature[],
): DeadSpot[] {
  const old = oldMelt(mesh, age, DEAD_TIMES * meanTime);
  const centre = triangleCentres(mesh);
  const owner = Int32Array.from({ length: mesh.triangleCount }, (_, t) =>
    featureAt(features, centre.x[t], centre.y[t]),
  );
  const taken = new Uint8Array(mesh.triangleCount);
  const spots: DeadSpot[] = [];
  for (let t = 0; t < mesh.triangleCount; t++) {
    if (taken[t] || old.volume[t] === 0) continue;
    let [volume, ageVolume, z, r] = [0, 0, 0, 0];
    for (const part of joined(mesh, t, old, owner, taken)) {
      volume += old.volume[part];
      ageVolume += old.ageVolume[part];
      z += old.volume[part] * centre.x[part];
      r += old.volume[part] * centre.y[part];
    }
    const feature = features[owner[t]];
    if (volume < LEAST_SHARE * old.total) continue;
    spots.push({ z: z / volume, r: r / volume, volume, meanAge: ageVolume / volume, feature, cause: feature.cause });
  }
  return spots.sort((a, b) => b.volume * b.meanAge - a.volume * a.meanAge);
}
