/** Dead spots of tip and nozzle, in machine coordinates. */

import type { Design } from '../design/types.ts';
import type { DeadSpot as SolvedSpot } from '../flow/tip/deadSpots.ts';
import { placeSegments } from '../geometry/bore.ts';
import { tipShape } from '../geometry/tip.ts';
import type { HeadField } from './headField.ts';
import { headRemedy } from './headRemedies.ts';
import type { FoundSpot } from './spotTypes.ts';

/** Name of the piece of bore at a place, and whether the screw's tip still reaches there. */
function placeOf(design: Design, z: number): { readonly name: string; readonly part: 'tip' | 'nozzle' } {
  const index = placeSegments(design).findIndex(({ start, end }) => z >= start && z < end);
  const name = index < 0 ? "the barrel's end" : `the piece “${design.nozzle.segments[index].name}”`;
  return { name, part: index < 0 || z < tipShape(design).end ? 'tip' : 'nozzle' };
}

/** Spots that belong to one feature are one spot: the solver cuts them where they are thin. */
function merged(spots: readonly SolvedSpot[]): SolvedSpot[] {
  const groups = new Map<string, SolvedSpot>();
  for (const spot of spots) {
    const { wall, kind, index } = spot.feature;
    // the many chords of a round tip are one feature
    const key = spot.cause === 'tip' ? 'tip' : `${wall} ${kind} ${index}`;
    const before = groups.get(key);
    if (!before) groups.set(key, spot);
    else {
      const volume = before.volume + spot.volume;
      const mean = (of: (each: SolvedSpot) => number) => (of(before) * before.volume + of(spot) * spot.volume) / volume;
      groups.set(key, {
        ...before,
        z: mean((s) => s.z),
        r: mean((s) => s.r),
        volume,
        meanAge: mean((s) => s.meanAge),
      });
    }
  }
  return [...groups.values()];
}

function described(design: Design, head: HeadField, spot: SolvedSpot, before: number, scale: number): FoundSpot[] {
  const { cause } = spot;
  // the slow layer on a plain wall is no fault of the shape
  if (cause === 'wall') return [];
  const z = head.region.inlet + spot.z * head.region.unit;
  const { name, part } = placeOf(design, z);
  const where = {
    corner: `corner of the bore at ${name}`,
    shoulder: `wall of the entry at ${name}`,
    ledge: `ledge at ${name}`,
    tip: 'in front of the screw tip',
  }[cause];
  const size = Math.sqrt(spot.volume / (2 * Math.PI * Math.max(spot.r, 1e-3))) * head.region.unit;
  const remedy = headRemedy(design, cause, z);
  return [
    {
      ...{ part, where, z, zFrom: z - size / 2, zTo: z + size / 2, r: spot.r * head.region.unit },
      ...{ volume: spot.volume * head.volumeUnit, meanAge: before + spot.meanAge * scale, cause, remedy },
    },
  ];
}

/**
 * Dead spots of the head: older than three times its own mean.
 * @param before mean time in the channel, s; @param scale s per unit of the field's age
 * @param least m³; smaller ones are left out
 */
export function headSpots(design: Design, head: HeadField, before: number, scale: number, least: number): FoundSpot[] {
  return merged(head.field.spots ?? [])
    .flatMap((spot) => described(design, head, spot, before, scale))
    .filter((spot) => spot.volume > least);
}
