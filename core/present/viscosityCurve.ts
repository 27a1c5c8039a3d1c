/** A material's viscosity against shear rate, in display units. */

import { hasViscosity, viscosityLawOf } from '../material/rheology.ts';
import { viscosityAt } from '../material/viscosityLaw.ts';
import type { Material } from '../project/materialSchema.ts';
import { toSi, unitLabel } from '../units.ts';
import type { PresentedSeries } from './types.ts';

/** Shear rates shown, 1/s: below a slow channel up to a fine nozzle. */
const [slowest, fastest] = [0.1, 1e4] as const;
const pointsPerDecade = 12;

const rates = Float64Array.from(
  { length: Math.round(Math.log10(fastest / slowest) * pointsPerDecade) + 1 },
  (_, index) => slowest * 10 ** (index / pointsPerDecade),
);

/**
 * Curves at the low end, the middle and the high end of the working temperatures, filler included, no pressure.
 * @param material stored material
 * @returns three curves of viscosity (Pa·s) over shear rate (1/s, 0.1 to 10 000, evenly spaced logarithms); the window
 *   may be out of order while it is being edited, the curves then follow it. None where no law is known
 */
export function viscosityCurve(
  material: Pick<Material, 'rheology' | 'filler' | 'windowLowC' | 'windowHighC'>,
): readonly PresentedSeries[] {
  if (!hasViscosity(material)) return [];
  const law = viscosityLawOf(material);
  const [low, high] = [material.windowLowC.value, material.windowHighC.value];
  return [low, (low + high) / 2, high].map((celsius) => {
    const isothermal = law(toSi(celsius, '°C'), 0);
    return {
      id: 'viscosityCurve',
      title: 'Viscosity against shear rate',
      name: `${Number(celsius.toFixed(1))} °C`,
      xLabel: 'Shear rate',
      xUnit: unitLabel('1/s'),
      yLabel: 'Viscosity',
      yUnit: unitLabel('Pa·s'),
      x: rates,
      y: rates.map((rate) => viscosityAt(isothermal, rate)),
    };
  });
}
