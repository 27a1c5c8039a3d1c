/** A granulate as the stages see it: SI units, kelvin. */

import type { KineticLaw } from './kineticLaws.ts';
import type { ViscosityLaw } from './viscosityLaw.ts';

/** A number with an optional doubt range, same unit. */
export interface Ranged {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** First-, n-th or zero-order Arrhenius law. */
export interface DegradationLaw {
  readonly id: string;
  readonly observed: string;
  readonly order: number;
  /** 1/s times the unit of the extent */
  readonly rateAtReference: Ranged;
  /** K */
  readonly referenceTemperature: number;
  /** J/mol */
  readonly activation: Ranged;
  /** K, range in which the law was measured */
  readonly validFrom: number;
  readonly validTo: number;
}

/** A granulate in SI units, temperatures K. */
export interface DesignMaterial {
  readonly id: string;
  readonly name: string;
  readonly invented: boolean;
  readonly form: string;
  /** isothermal law at a temperature (K) and pressure (Pa), filler included */
  readonly viscosityLaw: (temperature: number, pressure: number) => ViscosityLaw;
  /** where the viscosity law was fitted or checked: K and 1/s; null where unknown */
  readonly rheologyRange: {
    readonly from: number;
    readonly to: number;
    readonly shearFrom: number;
    readonly shearTo: number;
  } | null;
  /** kg/m³ */
  readonly meltDensity: number;
  readonly solidDensity: number;
  readonly bulkDensity: number;
  /** grain sizes, m */
  readonly grain: { readonly d10: number; readonly d50: number; readonly d90: number; readonly aspectRatio: number };
  readonly frictionOnBarrel: Ranged;
  readonly frictionOnScrew: Ranged;
  /** rad or null where unknown */
  readonly angleOfRepose: number | null;
  /** effective angle of internal friction in bulk, rad, or null */
  readonly internalFriction: number | null;
  /** unconfined strength in the hopper, Pa, or null where unknown; 0 = free-flowing */
  readonly unconfinedStrength: number | null;
  /** W/(m K) */
  readonly conductivity: number;
  /** J/(kg K) */
  readonly heatCapacitySolid: number;
  readonly heatCapacityMelt: number;
  /** J/kg */
  readonly heatOfFusion: number;
  /** K */
  readonly softening: number;
  readonly melting: number;
  /** N/m or null */
  readonly surfaceTension: number | null;
  /** 1/Pa or null where unknown */
  readonly meltCompressibility: Ranged | null;
  /** of the cooled print: Pa, Pa, 1/K, -, K; null where unknown */
  readonly mechanical: {
    readonly young: number;
    readonly strength: number;
    readonly expansion: number;
    readonly poisson: number;
    readonly setTemperature: number;
  } | null;
  /** K */
  readonly windowLow: number;
  readonly windowHigh: number;
  readonly maxSafe: number;
  readonly degradation: readonly KineticLaw[];
  readonly colourLaw: string | null;
  readonly colourAnchors: readonly {
    readonly extent: number;
    readonly lab: readonly [number, number, number];
  }[];
  readonly cautions: readonly string[];
}
