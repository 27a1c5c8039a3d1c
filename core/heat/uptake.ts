/** What granulate and melt take up in a cell, and which share of it the screw core hands over. */

import type { HeatContent } from './enthalpy.ts';
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
  const enthalpy = drawn(stream.content, before, target, dense * stream.loose, dense);
  const rise = (stream.massFlow * (enthalpy - before)) / exchange;
  return { enthalpy, fromCore: coreSide * (rise + stream.through[i] * (core - target)) };
}

/**
 * Specific enthalpy, J/kg, after being drawn towards a temperature, in equilibrium all along: solid, melting or
 * freezing, and melt in turn. Continuous in all arguments.
 * @param target K
 * @param loose, dense exchange over mass flow, J/(kg K): granules up to the end of melting; melt, also freezing
 */
function drawn(content: HeatContent, before: number, target: number, loose: number, dense: number): number {
  const { melting, heatOfFusion, heatCapacitySolid, heatCapacityMelt } = content;
  const above = target - melting;
  const rate = above * (above > 0 ? loose : dense);
  let enthalpy = before;
  let left = 1;
  for (let stage = 0; stage < 3; stage++) {
    const molten = enthalpy > heatOfFusion || (enthalpy >= heatOfFusion && above >= 0);
    if (!molten && enthalpy >= 0 && (enthalpy > 0 || above > 0)) {
      const end = above > 0 ? heatOfFusion : 0;
      const taken = rate === 0 ? Number.POSITIVE_INFINITY : (end - enthalpy) / rate;
      if (taken >= left) return enthalpy + rate * left;
      enthalpy = end;
      left -= taken;
      continue;
    }
    const edge = molten ? heatOfFusion : 0;
    const capacity = molten ? heatCapacityMelt : heatCapacitySolid;
    const speed = (molten ? dense : loose) / capacity;
    const from = (enthalpy - edge) / capacity - above;
    // where melting lies between here and the target, only so far
    const crosses = molten ? above < 0 : above > 0;
    const taken = crosses ? Math.log(-from / above) / speed : Number.POSITIVE_INFINITY;
    if (taken >= left) return edge + capacity * (above + from * Math.exp(-speed * left));
    enthalpy = edge;
    left -= taken;
  }
  return enthalpy;
}
