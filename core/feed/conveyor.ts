/** Screw conveyors that fill only part of their trough: loose granules on their way to the packed screw. */

import { interpolateLinear } from '../math/interpolate.ts';

const gravity = 9.81;

/**
 * Share of the free volume that granules fill and advance when friction carries no plug: trough loading of free-flowing
 * material, 30 to 45 % (conveyor guides quoting ANSI/CEMA 350), taken at its lower end.
 */
export const troughFilling = 0.3;

/** Resistance of loose granules against their weight: 2 to 4 in conveyor practice, 2.5 for salt-like ones. */
export const looseResistance = 2.5;

/** Slope in rad and share of the level capacity that is left; worksheet citing Alexandrov. */
const slopes = [0, 5, 10, 15, 20].map((degrees) => (degrees * Math.PI) / 180);
const shares = [1, 0.9, 0.8, 0.7, 0.65];

/** Share of the level capacity that a conveyor keeps on a rising slope. @param slope rad, 0 to 20 degrees; held beyond */
export const inclinationFactor = (slope: number): number => interpolateLinear(slopes, shares, slope);

/**
 * Volume rate of a screw conveyor that fills its trough only in part.
 * @param diameter, shaft m; @param pitch m per turn; @param screwSpeed rev/s; @param filling 0 to 1
 * @param slope rising, rad, 0 to 20 degrees
 * @returns m³/s. Source: conveyor design guides quoting ANSI/CEMA 350, Q = (pi/4)(D² - d²) S n psi C.
 */
export function conveyorVolumeFlow(
  diameter: number,
  shaft: number,
  pitch: number,
  screwSpeed: number,
  filling: number,
  slope = 0,
): number {
  return (Math.PI / 4) * (diameter ** 2 - shaft ** 2) * pitch * screwSpeed * filling * inclinationFactor(slope);
}

/**
 * Power that moves loose granules along a conveyor.
 * @param massFlow kg/s; @param length m; @param lift m, negative where it falls
 * @param resistance friction against weight, about 2 to 4
 * @returns W, not below 0. Source: the form of ISO 7119 without its idling term: m g (lambda L + H).
 */
export const conveyorPower = (massFlow: number, length: number, lift = 0, resistance = looseResistance): number =>
  Math.max(0, massFlow * gravity * (resistance * length + lift));
