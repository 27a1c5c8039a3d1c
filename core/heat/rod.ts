/** Steady heat along a rod whose sides exchange heat: the barrel and the screw core alike. */

import { solveTridiagonal } from '../math/tridiagonal.ts';

/** A rod cut into equal cells; every array has one entry per cell. */
export interface Rod {
  /** m, length of one cell */
  readonly cell: number;
  /** conductivity times cross-section, W m/K */
  readonly conduction: Float64Array;
  /** exchange with the surroundings, W/(m K), and their temperature, K */
  readonly exchange: Float64Array;
  readonly surroundings: Float64Array;
  /** heat put in whatever the temperature, W/m */
  readonly source: Float64Array;
  /** what the ends touch: temperature, K, and conductance, W/K (0 = insulated) */
  readonly startTemperature: number;
  readonly startConductance: number;
  readonly endTemperature: number;
  readonly endConductance: number;
}

/**
 * Temperature of each cell, K: d/dz(k A dT/dz) + exchange (T_s - T) + source = 0 by finite volumes, second order.
 * At least one exchange or end conductance must be above zero.
 */
export function rodTemperature(rod: Rod): Float64Array {
  const n = rod.conduction.length;
  const lower = new Float64Array(n);
  const diagonal = new Float64Array(n);
  const upper = new Float64Array(n);
  const right = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    diagonal[i] = rod.exchange[i] * rod.cell;
    right[i] = (rod.exchange[i] * rod.surroundings[i] + rod.source[i]) * rod.cell;
  }
  for (let i = 0; i + 1 < n; i++) {
    // neighbours in series: half a cell of each
    const link = 2 / (rod.cell * (1 / rod.conduction[i] + 1 / rod.conduction[i + 1]));
    diagonal[i] += link;
    diagonal[i + 1] += link;
    upper[i] = -link;
    lower[i + 1] = -link;
  }
  diagonal[0] += rod.startConductance;
  right[0] += rod.startConductance * rod.startTemperature;
  diagonal[n - 1] += rod.endConductance;
  right[n - 1] += rod.endConductance * rod.endTemperature;
  return solveTridiagonal(lower, diagonal, upper, right);
}
