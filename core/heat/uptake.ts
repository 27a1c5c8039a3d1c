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

/** An enthalpy reached, and the share of the cell's length in which the stream conducted as loose granules do. */
interface Drawn {
  readonly enthalpy: number;
  readonly loose: number;
}

/**
 * Uptake in a cell.
 * @param before specific enthalpy ahead of it, J/kg
 * @param wall, core temperatures at the cell, K
 * The core's part is the integral of its exchange times (core - stream) over the cell, in closed form: the same integral
 * with the rise of enthalpy gives the mean temperature of the stream. Heat that loose granules do not take up stays
 * with the wall.
 */
export function uptakeIn(stream: Stream, i: number, before: number, wall: number, core: number): Uptake {
  const [wallSide, coreSide] = [stream.wallSide[i], stream.coreSide[i]];
  const exchange = wallSide + coreSide;
  if (!(exchange > 0)) return { enthalpy: before, fromCore: 0 };
  const target = (wallSide * wall + coreSide * core + stream.dissipation[i]) / exchange;
  const dense = exchange / stream.massFlow;
  const { enthalpy, loose } = drawn(stream.content, before, target, dense * stream.loose, dense);
  const conducting = 1 - loose + loose * stream.loose;
  const rise = (stream.massFlow * (enthalpy - before)) / exchange;
  return { enthalpy, fromCore: coreSide * (rise + conducting * (core - target)) };
}

/**
 * Specific enthalpy, J/kg, after being drawn towards a temperature, in equilibrium all along: solid, melting or
 * freezing, and melt in turn. Continuous in all arguments.
 * @param target K
 * @param loose, dense exchange over mass flow, J/(kg K): granules up to the end of melting; melt, also freezing
 */
function drawn(content: HeatContent, before: number, target: number, loose: number, dense: number): Drawn {
  const { melting, heatOfFusion, heatCapacitySolid, heatCapacityMelt } = content;
  const above = target - melting;
  const rate = above * (above > 0 ? loose : dense);
  let enthalpy = before;
  let left = 1;
  let asLoose = 0;
  for (let stage = 0; stage < 3; stage++) {
    const molten = enthalpy > heatOfFusion || (enthalpy >= heatOfFusion && above >= 0);
    if (!molten && enthalpy >= 0 && (enthalpy > 0 || above > 0)) {
      const end = above > 0 ? heatOfFusion : 0;
      const taken = rate === 0 ? Number.POSITIVE_INFINITY : (end - enthalpy) / rate;
      if (taken >= left) return { enthalpy: enthalpy + rate * left, loose: asLoose + (above > 0 ? left : 0) };
      enthalpy = end;
      left -= taken;
      if (above > 0) asLoose += taken;
      continue;
    }
    const edge = molten ? heatOfFusion : 0;
    const capacity = molten ? heatCapacityMelt : heatCapacitySolid;
    const speed = (molten ? dense : loose) / capacity;
    const from = (enthalpy - edge) / capacity - above;
    // where melting lies between here and the target, only so far
    const crosses = molten ? above < 0 : above > 0;
    const taken = crosses ? Math.log(-from / above) / speed : Number.POSITIVE_INFINITY;
    if (taken >= left) {
      const reached = edge + capacity * (above + from * Math.exp(-speed * left));
      return { enthalpy: reached, loose: asLoose + (molten ? 0 : left) };
    }
    enthalpy = edge;
    left -= taken;
    if (!molten) asLoose += taken;
  }
  return { enthalpy, loose: asLoose };
}
