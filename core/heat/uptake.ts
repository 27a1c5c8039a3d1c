/** What granulate and melt take up in a cell, and which share of it the screw core hands over. */

import { approach } from '../melting/conduction.ts';
import type { Stream } from './stream.ts';

/** What leaves a cell, and what the core gave in it. */
export interface Uptake {
  /** specific enthalpy behind the cell, J/kg above the solid at melting */
  readonly enthalpy: number;
  /** from the screw core to the stream, W; the wall gives the rest of the rise less the heat made */
  readonly fromCore: number;
}

/**
 * Uptake in a cell.
 * @param before specific enthalpy ahead of it, J/kg
 * @param wall, core temperatures at the cell, K
 * Wall and core share the rise by their exchange; besides, heat passes from one to the other through the content, which
 * moves and so is taken as mixed: both exchanges in series. For melt this is each side's exchange times its distance
 * from the stream's mean temperature over the cell, exactly. Loose granules count as such ahead of the heated zones.
 */
export function uptakeIn(stream: Stream, i: number, before: number, wall: number, core: number): Uptake {
  const [wallSide, coreSide] = [stream.wallSide[i], stream.coreSide[i]];
  const exchange = wallSide + coreSide;
  if (!(exchange > 0)) return { enthalpy: before, fromCore: 0 };
  const target = (wallSide * wall + coreSide * core + stream.dissipation[i]) / exchange;
  const dense = exchange / stream.massFlow;
  const enthalpy = approach(stream.content, before, target, dense * stream.loose, dense).enthalpy;
  const rise = (stream.massFlow * (enthalpy - before)) / exchange;
  return { enthalpy, fromCore: coreSide * (rise + stream.through[i] * (core - target)) };
}
