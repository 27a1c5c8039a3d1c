/**
 * Viscosity laws up to scale. A flow problem with one rate of its own (barrel speed over depth, mean speed over bore)
 * sees of a law only its family (model and exponents) and the ratio of the law's own rate, where it turns from level to
 * thinning, to the problem's rate.
 */

import type { ViscosityLaw } from '../material/viscosityLaw.ts';
import { assertNever } from '../result.ts';
import { keyNumber } from './fieldCache.ts';

/** A law without its scales. */
export interface LawFamily {
  /** model and exponents, for cache keys */
  readonly key: string;
  /** rate where the law turns, 1/s; null where it has none (Newtonian) */
  readonly rate: number | null;
  /** the law of this family with unit viscosity scale that turns at a given rate */
  readonly turningAt: (rate: number) => ViscosityLaw;
}

/** Family of a law. */
export function lawFamily(law: ViscosityLaw): LawFamily {
  switch (law.model) {
    case 'newtonian':
      return { key: 'newtonian', rate: null, turningAt: () => ({ model: 'newtonian', viscosity: 1 }) };
    case 'powerLaw':
      return {
        key: `powerLaw ${keyNumber(law.index)}`,
        rate: law.regularisingRate,
        turningAt: (rate) => ({ ...law, consistency: 1, regularisingRate: rate }),
      };
    case 'carreauYasuda': {
      const rest = law.infiniteShearViscosity / law.zeroShearViscosity;
      return {
        key: `carreauYasuda ${keyNumber(law.index)} ${keyNumber(law.transition)} ${keyNumber(rest)}`,
        rate: 1 / law.timeConstant,
        turningAt: (rate) => ({
          ...law,
          zeroShearViscosity: 1,
          infiniteShearViscosity: rest,
          timeConstant: 1 / rate,
        }),
      };
    }
    case 'cross':
      return {
        key: `cross ${keyNumber(law.index)}`,
        rate: law.criticalStress / law.zeroShearViscosity,
        turningAt: (rate) => ({ ...law, zeroShearViscosity: 1, criticalStress: rate }),
      };
    default:
      return assertNever(law);
  }
}

/** A place on an even grid between two of its points. */
export interface GridPlace {
  /** number of the grid point */
  readonly index: number;
  readonly weight: number;
}

/** The two grid points around a position in units of the spacing, with linear weights; one where it falls on a point. */
export function gridPlaces(position: number): GridPlace[] {
  const nearest = Math.round(position);
  if (Math.abs(position - nearest) < 1e-9) return [{ index: nearest, weight: 1 }];
  const index = Math.floor(position);
  const weight = position - index;
  return [
    { index, weight: 1 - weight },
    { index: index + 1, weight },
  ];
}
