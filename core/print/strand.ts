/** Whether free melt stays a strand or beads up into drops. */

import type { StrandState } from './types.ts';

/** Thinning of a viscous thread, dimensionless speed: Papageorgiou 1995 (from memory). */
const viscousPinch = 0.0709;

/** Inertial growth rate of the fastest disturbance, dimensionless: Rayleigh 1879 (from memory). */
const inertialGrowth = 0.343;

/**
 * Time in which a thread of melt of a radius pinches off by its viscosity.
 * @param viscosity Pa s; @param radius m; @param surfaceTension N/m
 * @returns s; R eta/(0.0709 gamma), Papageorgiou 1995 (from memory)
 */
export const pinchTime = (viscosity: number, radius: number, surfaceTension: number): number =>
  (radius * viscosity) / (viscousPinch * surfaceTension);

/** Time in which a disturbance of a thin liquid's jet grows e-fold, s: sqrt(rho R³/gamma)/0.343, Rayleigh (from memory). */
export const inertialTime = (density: number, radius: number, surfaceTension: number): number =>
  Math.sqrt((density * radius ** 3) / surfaceTension) / inertialGrowth;

/** Viscous over capillary force: eta v/gamma. */
const capillaryNumber = (viscosity: number, speed: number, surfaceTension: number): number =>
  (viscosity * speed) / surfaceTension;

/** Viscous over inertial and capillary times: eta/sqrt(rho gamma R); above 1 the break-up is viscous. */
export const ohnesorgeNumber = (viscosity: number, density: number, radius: number, surfaceTension: number): number =>
  viscosity / Math.sqrt(density * surfaceTension * radius);

/** Inertia over capillarity, rho v² D/gamma with the diameter; a thin liquid jets above about 4. */
const weberNumber = (density: number, speed: number, radius: number, surfaceTension: number): number =>
  (density * speed * speed * 2 * radius) / surfaceTension;

/** Break-up over gap time below which drops form, and from which a strand stands; own choice. */
export const strandLimits = { drips: 1, strand: 10 } as const;

/** Melt up to this viscosity, Pa s, sags at best and wants the nozzle on the work; own estimate. */
const saggingViscosity = 10;

/** What the verdict rests on. SI. */
export interface StrandInputs {
  /** of the melt at the orifice's temperature and little shear, Pa s */
  readonly viscosity: number;
  readonly density: number;
  readonly surfaceTension: number | null;
  /** of the orifice, m */
  readonly radius: number;
  readonly volumeFlow: number;
  /** from orifice to layer, m */
  readonly gap: number;
}

/**
 * Numbers and verdict of the free strand.
 * Break-up takes the viscous and the inertial time together; setting, swell and drawing out are left out, so a strand
 * that freezes on its way holds longer than this says.
 */
export function strandState(inputs: StrandInputs): StrandState {
  const { viscosity, density, surfaceTension: tension, radius, volumeFlow, gap } = inputs;
  const speed = volumeFlow / (Math.PI * radius * radius);
  const breakupTime =
    tension === null ? null : pinchTime(viscosity, radius, tension) + inertialTime(density, radius, tension);
  const gapTime = speed > 0 ? gap / speed : null;
  const number = breakupTime === null || gapTime === null ? null : breakupTime / gapTime;
  return {
    verdict: number === null ? null : verdictOf(number, viscosity),
    number,
    capillary: tension === null || !(speed > 0) ? null : capillaryNumber(viscosity, speed, tension),
    ohnesorge: tension === null ? null : ohnesorgeNumber(viscosity, density, radius, tension),
    weber: tension === null || !(speed > 0) ? null : weberNumber(density, speed, radius, tension),
    breakupTime,
    gapTime,
    radius,
    speed,
    viscosity,
  };
}

function verdictOf(number: number, viscosity: number): StrandState['verdict'] {
  if (number < strandLimits.drips) return 'drips';
  return number < strandLimits.strand || viscosity <= saggingViscosity ? 'sags' : 'strand';
}
