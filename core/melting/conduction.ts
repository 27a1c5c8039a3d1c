/** Conduction from barrel and screw core into granules and melt. */

import type { DesignMaterial } from '../design/types.ts';
import { slabNusselt } from '../heat/coefficients.ts';
import type { HeatContent } from '../heat/enthalpy.ts';

/** Heat per axial length and kelvin, W/(m K), from wall and screw core. */
export interface Sides {
  readonly wall: number;
  readonly core: number;
}

/**
 * A slab of melt heated from both faces.
 * @param conductivity W/(m K); @param depth, barrelRadius, rootRadius m
 * Coefficient of the mean temperature, first mode: pi²/2 times conductivity over depth.
 */
export function slabSides(conductivity: number, depth: number, barrelRadius: number, rootRadius: number): Sides {
  const around = (2 * Math.PI * slabNusselt * conductivity) / depth;
  return { wall: around * barrelRadius, core: around * rootRadius };
}

/** Loose granules conduct by their share of solid. */
export const looseShare = (material: Pick<DesignMaterial, 'bulkDensity' | 'solidDensity'>): number =>
  material.bulkDensity / material.solidDensity;

/**
 * Conduction of granules in a channel over that of melt, 0 to 1.
 * @param depth of the channel, m
 * Bed (first mode of the slab, pi² k/H² per volume) and grain (first mode of the sphere, 4 pi² k/d²) one behind the
 * other: the slower decides. Own arithmetic; the grain matters where it is half as large as the channel is deep.
 */
export const granuleShare = (material: DesignMaterial, depth: number): number =>
  looseShare(material) / (1 + (material.grain.d50 / (2 * depth)) ** 2);

/** Where an approach has come to. */
export interface Approached {
  /** J/kg above the solid at melting */
  readonly enthalpy: number;
  /** share of the way after which the last solid melted, null where it did not */
  readonly done: number | null;
}

/**
 * Enthalpy after being drawn towards a temperature, in equilibrium all along: solid, melting or freezing, melt.
 * @param before J/kg above the solid at melting
 * @param target K
 * @param granules, melt exchange over mass flow, J/(kg K), > 0: up to the end of melting; of melt, also freezing
 */
export function approach(
  { melting, heatOfFusion, heatCapacitySolid, heatCapacityMelt }: HeatContent,
  before: number,
  target: number,
  granules: number,
  melt: number,
): Approached {
  const above = target - melting;
  let enthalpy = before;
  let left = 1;
  let done: number | null = null;
  for (;;) {
    const solid = enthalpy < 0 || (enthalpy === 0 && above <= 0);
    if (!solid && (enthalpy < heatOfFusion || (enthalpy === heatOfFusion && above < 0))) {
      const end = above > 0 ? heatOfFusion : 0;
      const rate = above * (above > 0 ? granules : melt);
      const taken = rate === 0 ? Number.POSITIVE_INFINITY : (end - enthalpy) / rate;
      if (taken >= left) return { enthalpy: enthalpy + rate * left, done };
      left -= taken;
      enthalpy = end;
      continue;
    }
    if (!solid && left < 1 && above > 0) done ??= 1 - left;
    const edge = solid ? 0 : heatOfFusion;
    const capacity = solid ? heatCapacitySolid : heatCapacityMelt;
    const speed = (solid ? granules : melt) / capacity;
    const from = (enthalpy - edge) / capacity - above;
    const crosses = solid ? above > 0 : above < 0;
    const taken = crosses ? Math.log(-from / above) / speed : Number.POSITIVE_INFINITY;
    if (taken >= left) return { enthalpy: edge + capacity * (above + from * Math.exp(-speed * left)), done };
    left -= taken;
    enthalpy = edge;
  }
}
