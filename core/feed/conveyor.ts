/** Screw conveyors that fill only part of their trough: loose granules on their way to the packed screw. */

import { gravity } from '../math/constants.ts';

/**
 * Share of the free volume that granules fill and advance when friction carries no plug: trough loading of free-flowing
 * material, 30 to 45 % (conveyor guides quoting ANSI/CEMA 350), taken at its lower end.
 */
export const troughFilling = 0.3;

/**
 * Volume rate of a level screw conveyor.
 * @param diameter, shaft m; @param pitch m per turn; @param screwSpeed rev/s; @param filling of the trough, 0 to 1
 * @returns m³/s, flight not taken off. Source: conveyor design guides quoting ANSI/CEMA 350, Q = (pi/4)(D² - d²) S n psi.
 */
export const conveyorVolumeFlow = (
  diameter: number,
  shaft: number,
  pitch: number,
  screwSpeed: number,
  filling: number,
): number => (Math.PI / 4) * (diameter ** 2 - shaft ** 2) * pitch * screwSpeed * filling;

/** Resistance of loose granules against their weight: 2 to 4 in conveyor practice, 2.5 for salt-like ones. */
const looseResistance = 2.5;

/**
 * Power that moves loose granules along a conveyor.
 * @param massFlow kg/s; @param length m; @param lift m, negative where it falls
 * @param resistance friction against weight, about 2 to 4
 * @returns W, not below 0. Source: the form of ISO 7119 without its idling term: m g (lambda L + H).
 */
export const conveyorPower = (massFlow: number, length: number, lift = 0, resistance = looseResistance): number =>
  Math.max(0, massFlow * gravity * (resistance * length + lift));
