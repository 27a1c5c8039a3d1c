/** How fast a laid line gives up its heat. */

import { lineArea, linePerimeter } from './bead.ts';
import type { CoolingState } from './types.ts';

/** Heat transfer of a line in room air, W/(m² K), where the design does not tell: own estimate, 15 still to 60 blown. */
const commonCoolingCoefficient = 30;

/** Biot number up to which a body counts as of one temperature; heat-transfer textbooks. */
const lumpedBiot = 0.1;

/**
 * Inner over outer resistance to heat.
 * @param coefficient W/(m² K); @param size volume over surface, m; @param conductivity W/(m K)
 */
export const biotNumber = (coefficient: number, size: number, conductivity: number): number =>
  (coefficient * size) / conductivity;

/** What cooling rests on. SI, K. */
export interface CoolingInputs {
  /** line width and layer height, m; print speed, m/s */
  readonly width: number;
  readonly height: number;
  readonly speed: number;
  readonly conductivity: number;
  readonly density: number;
  readonly heatCapacity: number;
  /** J/kg, given up before the line sets */
  readonly heatOfFusion: number;
  readonly outlet: number;
  /** null where the material does not tell */
  readonly setTemperature: number | null;
  readonly air: number;
  readonly coefficient: number | null;
}

/**
 * Lumped cooling of a free line.
 * Time to set: tau ln[(T0 - Ta)/(Ts - Ta)], and the heat of fusion given up at the setting temperature. Contact with
 * the layer below shortens it, warm neighbours lengthen it; above the lumped range the core sets later than said.
 */
export function coolingState(inputs: CoolingInputs): CoolingState {
  const { width, height, air, outlet, setTemperature } = inputs;
  const coefficient = inputs.coefficient ?? commonCoolingCoefficient;
  const size = lineArea(width, height) / linePerimeter(width, height);
  const biot = biotNumber(coefficient, size, inputs.conductivity);
  const perKelvin = (inputs.density * size) / coefficient;
  const timeConstant = perKelvin * inputs.heatCapacity;
  const sets = setTemperature !== null && setTemperature > air && coefficient > 0;
  const setTime = sets
    ? timeConstant * Math.log(Math.max(1, (outlet - air) / (setTemperature - air))) +
      (perKelvin * inputs.heatOfFusion) / (setTemperature - air)
    : null;
  return {
    coefficient,
    coefficientKnown: inputs.coefficient !== null,
    air,
    biot,
    lumped: biot < lumpedBiot,
    timeConstant,
    setTime,
    reason: setTemperature === null ? 'unknown' : sets ? null : 'neverSets',
    setLength: setTime === null ? null : setTime * inputs.speed,
  };
}
