/** Loss of a hot cylinder to still air: natural convection and radiation. */

import { gravity } from '../math/constants.ts';
import { emissivity } from './coefficients.ts';

/** W/(m² K⁴), CODATA. */
const stefanBoltzmann = 5.670374e-8;
/** Air at 300 K and 1 bar (Incropera & DeWitt, table A.4, from memory); powers of T within 2 % from 250 to 550 K. */
const air = { conductivity: 0.0263, viscosity: 15.89e-6, prandtl: 0.7 };

/**
 * Coefficient of natural convection round a horizontal cylinder, W/(m² K).
 * @param diameter m; Rayleigh number up to 1e12
 * @param surface, ambient K; differences below 1 K count as 1 K
 * Source: Churchill & Chu 1975 (Int. J. Heat Mass Transfer 18, 1049; Incropera & DeWitt, equation 9.34), from memory; within 20 %. A barrel that stands
 * upright loses up to a quarter less.
 */
export function convectionCoefficient(diameter: number, surface: number, ambient: number): number {
  const film = (surface + ambient) / 2;
  const viscosity = air.viscosity * (film / 300) ** 1.75;
  const conductivity = air.conductivity * (film / 300) ** 0.86;
  const apart = Math.max(1, Math.abs(surface - ambient));
  const rayleigh = (gravity * apart * diameter ** 3 * air.prandtl) / (film * viscosity ** 2);
  const damping = (1 + (0.559 / air.prandtl) ** (9 / 16)) ** (8 / 27);
  return (conductivity / diameter) * (0.6 + (0.387 * rayleigh ** (1 / 6)) / damping) ** 2;
}

/** Radiation of a grey surface into wide surroundings as a coefficient, W/(m² K). Temperatures K. */
export const radiationCoefficient = (surface: number, ambient: number, emitted: number): number =>
  emitted * stefanBoltzmann * (surface ** 2 + ambient ** 2) * (surface + ambient);

/**
 * Both together for an oxidised or painted surface, W/(m² K).
 * @param diameter m
 * @param surface, ambient K
 */
export const stillAirCoefficient = (diameter: number, surface: number, ambient: number): number =>
  convectionCoefficient(diameter, surface, ambient) + radiationCoefficient(surface, ambient, emissivity.value);
