/** Heat content of the granulate from the feed temperature up. */

import type { DesignMaterial } from '../design/types.ts';

/** The heat properties alone, so that textbook cases need no whole material. */
export type HeatContent = Pick<DesignMaterial, 'heatCapacitySolid' | 'heatCapacityMelt' | 'heatOfFusion' | 'melting'>;

/**
 * Specific enthalpy above a reference temperature.
 * @param content heat capacities J/(kg K), fusion J/kg, melting K
 * @param from, to K
 * @returns J/kg; constant heat capacity on either side of melting, fusion at melting
 */
export function enthalpyBetween(content: HeatContent, from: number, to: number): number {
  const solid = (t: number) => content.heatCapacitySolid * Math.min(t, content.melting);
  const melt = (t: number) => content.heatCapacityMelt * Math.max(0, t - content.melting);
  const fused = (t: number) => (t >= content.melting ? content.heatOfFusion : 0);
  return solid(to) + melt(to) + fused(to) - solid(from) - melt(from) - fused(from);
}
