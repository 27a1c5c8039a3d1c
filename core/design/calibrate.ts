/** The named factors that weighed trials may set on the model, applied to a design. */

import { thickened } from '../material/filler.ts';
import type { KineticLaw } from '../material/kineticLaws.ts';
import type { DesignMaterial, Ranged } from '../material/types.ts';
import type { Design, DesignCalibration } from './types.ts';

/** Factors in the order in which the material meets what they scale. */
export const factorNames = ['feed', 'wallFriction', 'viscosity', 'colourRate'] as const;

/** Name of a factor. */
export type FactorName = (typeof factorNames)[number];

/** One dimensionless number per factor, > 0; 1 = the model as it stands. */
export type Factors = Readonly<Record<FactorName, number>>;

/** The model as it stands. */
export const plainFactors: Factors = { feed: 1, wallFriction: 1, viscosity: 1, colourRate: 1 };

const scaled = ({ value, low, high }: Ranged, factor: number): Ranged => ({
  value: value * factor,
  low: low * factor,
  high: high * factor,
});

/** A law that runs `factor` times as fast at every temperature; a lag shortens with it. */
function hastened(law: KineticLaw, factor: number): KineticLaw {
  const faster = <T extends { readonly rateAtReference: Ranged }>(step: T): T => ({
    ...step,
    rateAtReference: scaled(step.rateAtReference, factor),
  });
  if (!('kind' in law)) return faster(law);
  switch (law.kind) {
    case 'scission':
      return faster(law);
    case 'twoStep':
      return { ...law, first: faster(law.first), second: faster(law.second) };
    case 'lag':
      return { ...faster(law), lagAtReference: law.lagAtReference / factor };
  }
}

function materialWith(material: DesignMaterial, { wallFriction, viscosity, colourRate }: Factors): DesignMaterial {
  return {
    ...material,
    frictionOnBarrel: scaled(material.frictionOnBarrel, wallFriction),
    viscosityLaw: (temperature, pressure) => thickened(material.viscosityLaw(temperature, pressure), viscosity),
    degradation: material.degradation.map((law) => (law.id === material.colourLaw ? hastened(law, colourRate) : law)),
  };
}

/** Values of a calibration's factors. */
const factorsOf = ({ feed, wallFriction, viscosity, colourRate }: DesignCalibration): Factors => ({
  feed: feed.value,
  wallFriction: wallFriction.value,
  viscosity: viscosity.value,
  colourRate: colourRate.value,
});

/**
 * A design whose material carries the factors of its calibration: viscosity, friction on the barrel, rate of the law
 * that drives the colour. The feed factor stays in `calibration`, where the feed capacity reads it.
 * @param design as converted, factors not yet applied; the caller applies them once, where the design is made
 * @returns the design itself where it has no calibration
 */
export function calibrated(design: Design): Design {
  const { calibration, material } = design;
  return calibration === null ? design : { ...design, material: materialWith(material, factorsOf(calibration)) };
}

const alone = (value: number): Ranged => ({ value, low: value, high: value });

/**
 * A design with trial factors, for fits and samples.
 * @param design one without calibration, else its factors would count twice
 * @param factors dimensionless, > 0
 * @throws RangeError where the design is calibrated already
 */
export function withFactors(design: Design, factors: Factors): Design {
  if (design.calibration !== null) throw new RangeError('The design is calibrated already.');
  const { feed, wallFriction, viscosity, colourRate } = factors;
  return calibrated({
    ...design,
    calibration: {
      id: 'trial-factors',
      name: 'trial factors',
      date: null,
      materialId: design.material.id,
      trials: [],
      feed: alone(feed),
      wallFriction: alone(wallFriction),
      viscosity: alone(viscosity),
      colourRate: alone(colourRate),
    },
  });
}
