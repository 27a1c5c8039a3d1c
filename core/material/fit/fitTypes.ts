/** What goes into a fit of a viscosity law and what comes out: plain data. */

import type { Material } from '../../project/materialSchema.ts';
import type { Issue } from '../../result.ts';
import type { Rheology } from '../switchTypes.ts';

/** One measured viscosity. */
export interface RheologyPoint {
  /** 1/s, > 0 */
  readonly shearRate: number;
  /** K */
  readonly temperature: number;
  /** Pa s, > 0 */
  readonly viscosity: number;
  /** line of the pasted text, from 1; for messages */
  readonly line?: number;
}

/** Law that is fitted. */
export type FitModel = 'newtonian' | 'powerLaw' | 'carreauYasuda' | 'crossWlf';

/** Choices of a fit; each has a default. */
export interface FitOptions {
  /** how the law moves with temperature; Cross-WLF has its own way. Default 'arrhenius' */
  readonly shift?: 'none' | 'arrhenius' | 'exponential';
  /** K: reference of the shift, or T* of Cross-WLF. Default: mean temperature; for Cross-WLF 100 K below the coldest */
  readonly referenceTemperature?: number;
  /** transition a of Carreau-Yasuda held at this value. Default: fitted */
  readonly transition?: number;
  /** Pa s: viscosity at endless shear rate of Carreau-Yasuda at the reference, held. Default 0 */
  readonly infiniteShearViscosity?: number;
  /** K: A2 of Cross-WLF, held. Default 51.6 (Williams, Landel and Ferry 1955) */
  readonly a2?: number;
  /** factor by which filler thickened the measured melt; the law is that of the melt alone. Default 1 */
  readonly thickening?: number;
  /** where the points come from, in words; goes into the source of each value */
  readonly source?: string;
}

/** One constant of the fitted law in the unit of the file format. */
export interface FittedParameter {
  /** field of the stored law, e.g. `index`, `d1PaS` or `activationKJPerMol` */
  readonly name: string;
  readonly value: number;
  /** ends of the 95 % band; equal to the value where it was held */
  readonly low: number;
  readonly high: number;
  /** whether the fit moved it */
  readonly fitted: boolean;
  /** whether the points say what it is: band within a factor of 2 either way, or within 0.15 for an index */
  readonly determined: boolean;
}

/** A point beside the fitted curve. */
export interface FitResidual extends RheologyPoint {
  /** Pa s */
  readonly fitted: number;
  /** ln(measured/fitted) */
  readonly residual: number;
  /** more than three times the scatter away */
  readonly outlier: boolean;
}

/** What the points cannot say, or what is odd about them. */
export interface FitWarning {
  readonly code:
    | 'not-determined'
    | 'at-limit'
    | 'one-temperature'
    | 'narrow-shear'
    | 'repeated-points'
    | 'outliers'
    | 'not-converged'
    | 'poor-fit';
  readonly message: string;
  /** constants that it is about */
  readonly parameters: readonly string[];
}

/** Inner state of a fit, enough to draw bands from it. */
export interface FitState {
  readonly model: FitModel;
  readonly options: FitOptions;
  /** K: reference of the shift, T* for Cross-WLF */
  readonly reference: number;
  /** K: temperature at which the level is fitted */
  readonly centre: number;
  /** whether the temperature dependence is fitted; false where all points share one temperature */
  readonly moves: boolean;
  /** fitted numbers in the order of the model's own coordinates */
  readonly at: readonly number[];
  /** their covariance, row-major */
  readonly covariance: readonly number[];
  /** Student's t of the 95 % bands */
  readonly t: number;
}

/** A fitted law. */
export interface RheologyFit {
  /** the law in the shape of the file format: values, bands, source */
  readonly rheology: Rheology;
  /** range of the points, as the file format stores it */
  readonly range: NonNullable<Material['rheologyRange']>;
  readonly parameters: readonly FittedParameter[];
  /** covariance of the fitted parameters, logarithms for positive ones but the index, in the order of `parameters` that were fitted */
  readonly covariance: readonly (readonly number[])[];
  readonly residuals: readonly FitResidual[];
  /** share of the spread of ln(viscosity) that the law explains; null where the viscosities hardly spread */
  readonly rSquared: number | null;
  /** standard deviation of ln(measured/fitted) */
  readonly scatter: number;
  readonly converged: boolean;
  readonly warnings: readonly FitWarning[];
  readonly state: FitState;
}

/** Viscosity with the 95 % band of the fitted curve, Pa s. */
export interface ViscosityBand {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** A pasted table as read. */
export interface RheologyTable {
  readonly points: readonly RheologyPoint[];
  /** rows that could not be read, each with its line; nothing is dropped silently */
  readonly issues: readonly Issue[];
  /** what was assumed or found out: delimiter, units, order of columns */
  readonly notes: readonly string[];
}
