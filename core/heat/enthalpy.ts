/** Heat content of the granulate from the feed temperature up. */

import type { DesignMaterial } from '../design/types.ts';

/** The heat properties alone, so that textbook cases need no whole material. */
export type HeatContent = Pick<DesignMaterial, 'heatCapacitySolid' | 'heatCapacityMelt' | 'heatOfFusion' | 'melting'>;

/** Where granulate stands between solid and melt. */
export interface Warmth {
  /** K */
  readonly temperature: number;
  /** 0 to 1: share of fusion taken up */
  readonly fused: number;
}

/**
 * Specific enthalpy above a reference temperature.
 * @param content heat capacities J/(kg K), fusion J/kg, melting K
 * @param from, to K
 * @returns J/kg; constant heat capacity on either side of melting, fusion at melting
 */
export function enthalpyBetween(content: HeatContent, from: number, to: number): number {
  return enthalpyOf(content, warmthAt(content, to)) - enthalpyOf(content, warmthAt(content, from));
}

/** Specific enthalpy above the solid at its melting temperature, J/kg. */
export function enthalpyOf(content: HeatContent, { temperature, fused }: Warmth): number {
  const above = temperature - content.melting;
  return fused >= 1
    ? content.heatOfFusion + content.heatCapacityMelt * above
    : fused * content.heatOfFusion + content.heatCapacitySolid * above;
}

/** Warmth of a specific enthalpy above the solid at its melting temperature, J/kg. */
export function warmthOf(content: HeatContent, enthalpy: number): Warmth {
  const { melting, heatOfFusion } = content;
  if (enthalpy < 0) return { temperature: melting + enthalpy / content.heatCapacitySolid, fused: 0 };
  if (enthalpy < heatOfFusion) return { temperature: melting, fused: enthalpy / heatOfFusion };
  return { temperature: melting + (enthalpy - heatOfFusion) / content.heatCapacityMelt, fused: 1 };
}

/** Solid below melting, melt from melting on. */
const warmthAt = (content: HeatContent, temperature: number): Warmth => ({
  temperature,
  fused: temperature >= content.melting ? 1 : 0,
});
