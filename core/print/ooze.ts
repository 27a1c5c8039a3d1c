/** Melt stored under pressure, and how it lets go when the screw stops. */

import type { Ranged } from '../design/types.ts';
import type { ReleaseState } from './types.ts';

/** Compressibility of a melt where the material does not tell it, 1/Pa: Tait form with remembered constants. */
export const commonCompressibility: Ranged = { value: 1e-9, low: 0.6e-9, high: 1.4e-9 };

/**
 * Compressibility from the Tait equation at no pressure.
 * @param b B(T), Pa; @param c dimensionless
 * @returns 1/Pa; C/B, CRC Handbook (C. Wohlfarth): V = V0 [1 - C ln(1 + P/B)]
 */
export const taitCompressibility = (b: number, c = 0.0894): number => c / b;

/**
 * Time in which the pressure of a stopped screw lets go.
 * @param volume melt under pressure, m³; @param nozzleResistance dp/dQ of the head, Pa s/m³
 * @param compressibility 1/Pa; @param screwResistance dp/dQ back through the stopped channel, Infinity where it is shut
 * @returns s; 1/t = (1/Rn + 1/Rs)/(kappa V): a spring (Hooke) emptying through two tubes (Poiseuille)
 */
export const pressureTime = (
  volume: number,
  nozzleResistance: number,
  compressibility: number = commonCompressibility.value,
  screwResistance: number = Number.POSITIVE_INFINITY,
): number => (compressibility * volume) / (1 / nozzleResistance + 1 / screwResistance);

/** Melt that has oozed a time after the stop, m³: total (1 - exp(-t/tau)). */
export const oozedBy = (time: number, total: number, timeConstant: number): number =>
  timeConstant > 0 ? -total * Math.expm1(-time / timeConstant) : 0;

/** Where the ooze curve ends, in time constants, and its points. */
const curve = { end: 5, points: 26 } as const;

/** What the release rests on. SI. */
export interface ReleaseInputs {
  readonly compressibility: Ranged | null;
  /** m³ at the pressure of the head, Pa */
  readonly volume: number;
  readonly pressure: number;
  /** Pa s/m³; the screw's null where unknown: then no leak back */
  readonly nozzleResistance: number;
  readonly screwResistance: number | null;
}

/** Volume stored, time constant and ooze after a stop; all nothing where no pressure or no resistance is. */
export function releaseState(inputs: ReleaseInputs): ReleaseState {
  const { volume, pressure } = inputs;
  const flows = inputs.nozzleResistance > 0;
  const nozzle = flows ? inputs.nozzleResistance : Number.POSITIVE_INFINITY;
  const screw = inputs.screwResistance ?? Number.POSITIVE_INFINITY;
  const compressibility = inputs.compressibility ?? commonCompressibility;
  const ranged = (of: (kappa: number) => number): Ranged => ({
    value: of(compressibility.value),
    low: of(compressibility.low),
    high: of(compressibility.high),
  });
  const nozzleShare = flows ? 1 / (1 + nozzle / screw) : 0;
  const stored = ranged((kappa) => (flows ? kappa * volume * pressure : 0));
  const time = ranged((kappa) => (flows ? pressureTime(volume, nozzle, kappa, screw) : 0));
  const ooze = { value: stored.value * nozzleShare, low: stored.low * nozzleShare, high: stored.high * nozzleShare };
  const times = Float64Array.from(
    { length: curve.points },
    (_, i) => (i * curve.end * time.value) / (curve.points - 1),
  );
  return {
    compressibility,
    compressibilityKnown: inputs.compressibility !== null,
    volume,
    pressure,
    stored,
    time,
    timeNozzleAlone: ranged((kappa) => (flows ? pressureTime(volume, nozzle, kappa) : 0)),
    nozzleShare,
    ooze,
    firstFlow: flows ? pressure / nozzle : 0,
    curve: { time: times, volume: times.map((t) => oozedBy(t, ooze.value, time.value)) },
  };
}
