/** Where a half-plane through the axis cuts the channel between two flights. */

import type { Stations } from '../geometry/types.ts';

/** A channel cut by a half-plane, between the centres of two flights, and the flighted stretch it belongs to. m. */
export interface FlightGap {
  readonly before: number;
  readonly middle: number;
  readonly after: number;
  readonly from: number;
  readonly to: number;
}

/** A flighted stretch of one number of starts. */
interface Stretch {
  readonly first: number;
  readonly last: number;
  /** turns of flight up to each of its stations */
  readonly turns: readonly number[];
}

/** Turns from one station to the next: the integral of dz / lead for a linear lead. */
function turnsBetween({ z, lead }: Stations, i: number): number {
  const [length, change] = [z[i + 1] - z[i], lead[i + 1] - lead[i]];
  if (Math.abs(change) < 1e-9 * lead[i]) return length / lead[i];
  return (length / change) * Math.log(lead[i + 1] / lead[i]);
}

function stretches(stations: Stations): Stretch[] {
  const found: { first: number; last: number; turns: number[] }[] = [];
  let total = 0;
  for (let i = 0; i + 1 < stations.count; i++) {
    const open = found[found.length - 1];
    const goesOn = open?.last === i && stations.starts[open.first] === stations.starts[i];
    if (!stations.flighted[i] || !(stations.lead[i + 1] > 0)) continue;
    const step = stations.z[i + 1] > stations.z[i] ? turnsBetween(stations, i) : 0;
    if (goesOn) {
      open.last = i + 1;
      open.turns.push(total + step);
    } else found.push({ first: i, last: i + 1, turns: [total, total + step] });
    total += step;
  }
  return found;
}

/** z (m) at which a stretch has made `turns`; beyond its ends by the lead there. */
function whereTurned({ z, lead }: Stations, { first, last, turns }: Stretch, wanted: number): number {
  const end = turns.length - 1;
  if (wanted < turns[0]) return z[first] + (wanted - turns[0]) * lead[first];
  if (wanted > turns[end]) return z[last] + (wanted - turns[end]) * lead[last];
  const next = Math.max(
    1,
    turns.findIndex((value) => value >= wanted),
  );
  const low = first + next - 1;
  const own = wanted - turns[next - 1];
  const [length, change] = [z[low + 1] - z[low], lead[low + 1] - lead[low]];
  if (length <= 0) return z[low];
  if (Math.abs(change) < 1e-9 * lead[low]) return z[low] + own * lead[low];
  return z[low] + ((lead[low] * length) / change) * Math.expm1((own * change) / length);
}

/**
 * Channels cut by the half-plane at an azimuth (rad from +x towards +y, as the solid is placed), in order along z.
 * A middle may lie up to half a pitch outside its stretch, where only part of the channel is there.
 * @param hand a left-hand screw is the mirror image in y
 */
export function flightGaps(stations: Stations, azimuth: number, hand: 'right' | 'left'): FlightGap[] {
  const wanted = (hand === 'left' ? -azimuth : azimuth) / (2 * Math.PI);
  return stretches(stations).flatMap((stretch) => {
    const { first, last, turns } = stretch;
    const starts = stations.starts[first];
    const [from, to] = [stations.z[first], stations.z[last]];
    const lowest = Math.ceil((turns[0] - wanted) * starts - 1);
    const highest = Math.floor((turns[turns.length - 1] - wanted) * starts);
    return Array.from({ length: highest - lowest + 1 }, (_, k) => {
      const at = (half: number) => whereTurned(stations, stretch, wanted + (lowest + k + half) / starts);
      return { before: at(0), middle: at(0.5), after: at(1), from, to };
    });
  });
}
