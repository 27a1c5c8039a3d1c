/** What the weight of the melt does at an open orifice. */

import type { NozzleSegment } from '../design/types.ts';
import { conePressureDrop } from '../flow/cone.ts';
import { pipeFlow } from '../flow/pipe.ts';
import { gravity } from '../math/constants.ts';
import type { DripState } from './types.ts';

/** Share of the ideal drop that falls off; from memory, 0.6 to 0.75 by the size of the tip. */
const fallingShare = 0.65;

/**
 * Pressure that the skin of an orifice holds.
 * @param surfaceTension N/m; @param radius m
 * @returns Pa; 2 gamma/R, Young-Laplace
 */
const capillaryPressure = (surfaceTension: number, radius: number): number => (2 * surfaceTension) / radius;

/**
 * Head of melt that the meniscus of an orifice can hold.
 * @param surfaceTension N/m; @param radius of the orifice, m; @param density kg/m³
 * @returns m; 2 gamma/(rho g R)
 */
export const heldHead = (surfaceTension: number, radius: number, density: number): number =>
  capillaryPressure(surfaceTension, radius) / (density * gravity);

/**
 * Pressure over flow of a thin (Newtonian) melt through the nozzle, Pa s/m³.
 * @param viscosity Pa s; @param segments of the nozzle; flat steps are left out, so the rate is an upper bound
 */
export function slowResistance(viscosity: number, segments: readonly NozzleSegment[]): number {
  const law = { model: 'newtonian', viscosity } as const;
  return segments.reduce((sum, { length, startDiameter, endDiameter }) => {
    if (!(length > 0)) return sum;
    const [from, to] = [startDiameter / 2, endDiameter / 2];
    return sum + (from === to ? pipeFlow(law, from, 1).gradient * length : conePressureDrop(law, from, to, length, 1));
  }, 0);
}

/** Mass of a drop that falls off a tip, kg: 0.65 x 2 pi R gamma/g (Tate 1864; the share from memory). */
export const dropMass = (surfaceTension: number, tipRadius: number): number =>
  (fallingShare * 2 * Math.PI * tipRadius * surfaceTension) / gravity;

/**
 * Melt above the orifice of an upright machine, m: from a place in the barrel to its end, and the nozzle.
 * @param barrelLength m; @param from m along the barrel; @param segments of the nozzle
 */
export const meltColumn = (
  barrelLength: number,
  from: number,
  segments: readonly Pick<NozzleSegment, 'length'>[],
): number => barrelLength - from + segments.reduce((sum, { length }) => sum + length, 0);

/** What dripping rests on. SI. */
export interface DripInputs {
  /** m of melt above the orifice */
  readonly column: number;
  readonly density: number;
  readonly surfaceTension: number | null;
  /** Pa s of the slow melt */
  readonly viscosity: number;
  readonly segments: readonly NozzleSegment[];
}

/**
 * Dripping of a machine that stands upright, vented above its melt.
 * A drop hangs from the orifice's rim. The hold of a stopped, filled screw is left out, so the rate is an upper bound.
 */
export function dripState({ column, density, surfaceTension, viscosity, segments }: DripInputs): DripState {
  const radius = segments[segments.length - 1].endDiameter / 2;
  const weight = density * gravity * column;
  const held = surfaceTension === null ? null : capillaryPressure(surfaceTension, radius);
  const resistance = slowResistance(viscosity, segments);
  const rate = resistance > 0 ? Math.max(0, weight - (held ?? 0)) / resistance : 0;
  const mass = surfaceTension === null || rate === 0 ? null : dropMass(surfaceTension, radius);
  return {
    column,
    weight,
    held,
    drips: held === null ? null : weight > held,
    rate,
    dropMass: mass,
    dropTime: mass === null ? null : mass / (density * rate),
    viscosity,
  };
}
