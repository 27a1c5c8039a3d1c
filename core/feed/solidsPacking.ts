/** Where the granules are packed, and the pressure and filling that follow. */

import type { Stations } from '../geometry/types.ts';
import type { PlugWay, SolidsSpan } from './plugWay.ts';

/** How granules come in. */
export interface Supply {
  /** more is offered than is taken, so that the channel stands full under the opening */
  readonly flooded: boolean;
  /** pressure from which a plug starts, Pa, > 0: of the hopper, or of the granules' own weight */
  readonly pressure: number;
  /** friction carries no plug at this flow: granules tumble along in a channel filled in part */
  readonly tumbles: boolean;
}

/** Pressure and filling of the granules, arrays over stations. */
export interface PackedState {
  /** Pa */
  readonly pressure: Float64Array;
  /** 0 to 1 */
  readonly fill: Float64Array;
  /** 1 where packed or pressed on by the hopper, 0 where loose: what is loose weighs only itself */
  readonly pressed: Uint8Array;
  /** z from which they are packed up to the melt, m, or null */
  readonly from: number | null;
  /** Pa */
  readonly buildable: number;
  readonly capped: boolean;
  readonly holds: boolean;
}

/**
 * Packs the granules.
 * @param limit of pressure, Pa
 * @param meltPressure Pa that the plug must hold; undefined lets a flooded plug push with all it has
 * A flooded plug is pressed on by the hopper all along; a starved one is loose up to where it backs up from the melt.
 */
export function packedState(
  stations: Stations,
  span: SolidsSpan,
  way: PlugWay,
  supply: Supply,
  limit: number,
  meltPressure: number | undefined,
): PackedState {
  const { first, last } = span;
  const log = way.logPressure;
  const start = Math.log(Math.min(supply.pressure, limit));
  const top = Math.log(limit);
  const built = supply.tumbles ? 0 : Math.exp(Math.min(top, start + log[last]));
  const pushes = meltPressure === undefined && supply.flooded;
  const held = Math.min(limit, Math.max(0, meltPressure ?? 0));
  const holds = held <= built || held <= supply.pressure;
  const forward = !supply.tumbles && (pushes || !holds);
  // seen from the opening, or back from the melt; -Infinity where nothing presses
  const offset = forward ? start : Math.log(held) - log[last];
  const packedAt = supply.tumbles ? last + 1 : forward ? first : backTo(log, span, offset, start);
  const out = looseState(stations.count, span, way, supply);
  let capped = false;
  for (let i = packedAt; i <= last; i++) {
    const value = offset + log[i];
    capped ||= value > top;
    out.pressure[i] = Math.exp(Math.min(top, value));
    out.fill[i] = 1;
    out.pressed[i] = 1;
  }
  const from = packedAt < last && stations.z[last] > span.end ? Math.max(span.end, stations.z[packedAt]) : null;
  return { ...out, from, buildable: built, capped, holds };
}

/** First station of the packed zone that reaches up to the melt; one past the last where there is none. */
function backTo(log: Float64Array, { first, last }: SolidsSpan, offset: number, start: number): number {
  let at = last + 1;
  while (at > first && offset + log[at - 1] > start) at--;
  return at;
}

/** Granules that nothing holds up. */
function looseState(count: number, { first, last }: SolidsSpan, way: PlugWay, supply: Supply) {
  const pressure = new Float64Array(count);
  const fill = new Float64Array(count);
  const pressed = new Uint8Array(count);
  for (let i = first; i <= last; i++) {
    const asked = way.asked[i];
    const carried = supply.tumbles || !(way.free[i] > 0) ? asked : asked / way.free[i];
    const full = supply.flooded && !supply.tumbles;
    fill[i] = full ? 1 : Math.min(1, carried);
    pressure[i] = full ? supply.pressure : 0;
    pressed[i] = full ? 1 : 0;
  }
  return { pressure, fill, pressed };
}
