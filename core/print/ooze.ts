/** Melt stored under pressure, and how it lets go when the screw stops. */

import type { Ranged } from '../design/types.ts';
import type { ReleaseState } from './types.ts';

/** Compressibility of a melt where the material does not tell it, 1/Pa: Tait form with remembered constants. */
export const commonCompressibility: Ranged = { value: 1e-9, low: 0.6e-9, high: 1.4e-9 };

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

/**
 * Time until a share of the pressure is left after the stop.
 * @param left share of the first pressure, > 0 to 1; @param index of the flow, pressure ~ flow^n
 * @returns over the first time constant (stored volume over first flow). The spring empties through a tube of power-law
 * melt, whose flow falls faster than its pressure: left = [1 + (m - 1) t]^(-1/(m - 1)) with m = 1/n, exp(-t) at n = 1
 * (own derivation)
 */
export function timeUntilLeft(left: number, index: number): number {
  const excess = 1 / index - 1;
  return excess < newtonian ? -Math.log(left) : (left ** -excess - 1) / excess;
}

/** Closer to Newtonian than this, exponentials hold. */
const newtonian = 1e-6;

/** Least flow index; thinner melts' tails would not end in any time. */
const leastIndex = 0.1;

/** Share of the ooze where the curve ends, and its points. */
const curve = { end: 0.9, points: 19 } as const;

/** What the release rests on. SI. */
export interface ReleaseInputs {
  readonly compressibility: Ranged | null;
  /** m³ at the pressure of the head, Pa above the pressure outside */
  readonly volume: number;
  readonly pressure: number;
  /** m³/s as the screw stops */
  readonly volumeFlow: number;
  /** slopes of pressure over flow, Pa s/m³; the screw's null where unknown: then no leak back */
  readonly nozzleResistance: number;
  readonly screwResistance: number | null;
}

/** Nothing flows, so nothing is stored. */
const still = { value: 0, low: 0, high: 0 };

/** Volume stored, time constant and ooze after a stop; all nothing where no pressure or no flow is. */
export function releaseState(inputs: ReleaseInputs): ReleaseState {
  const { volume, pressure, volumeFlow, nozzleResistance: nozzle } = inputs;
  const compressibility = inputs.compressibility ?? commonCompressibility;
  const known = { compressibility, compressibilityKnown: inputs.compressibility !== null, volume };
  if (!(nozzle > 0) || !(volumeFlow > 0) || !(pressure > 0)) {
    const times = { time: still, timeNozzleAlone: still, time90: still, nozzleShare: 0, index: 1 };
    const empty = { time: new Float64Array(), volume: new Float64Array() };
    return { ...known, ...times, pressure: 0, stored: still, ooze: still, firstFlow: 0, curve: empty };
  }
  const ranged = (of: (kappa: number) => number): Ranged => ({
    value: of(compressibility.value),
    low: of(compressibility.low),
    high: of(compressibility.high),
  });
  const screw = inputs.screwResistance ?? Number.POSITIVE_INFINITY;
  const nozzleShare = 1 / (1 + nozzle / screw);
  const index = Math.min(1, Math.max(leastIndex, (nozzle * volumeFlow) / pressure));
  const first = (kappa: number) => (kappa * volume * pressure * nozzleShare) / volumeFlow;
  const total = compressibility.value * volume * pressure * nozzleShare;
  const shares = Float64Array.from({ length: curve.points }, (_, i) => (i * curve.end) / (curve.points - 1));
  return {
    ...known,
    pressure,
    index,
    stored: ranged((kappa) => kappa * volume * pressure),
    time: ranged((kappa) => pressureTime(volume, nozzle, kappa, screw)),
    timeNozzleAlone: ranged((kappa) => pressureTime(volume, nozzle, kappa)),
    time90: ranged((kappa) => first(kappa) * timeUntilLeft(1 - curve.end, index)),
    nozzleShare,
    ooze: ranged((kappa) => kappa * volume * pressure * nozzleShare),
    firstFlow: volumeFlow,
    curve: {
      time: shares.map((share) => first(compressibility.value) * timeUntilLeft(1 - share, index)),
      volume: shares.map((share) => share * total),
    },
  };
}
