/** Messages between the window and the worker that fits viscosity laws. Plain data only. */

import type { FitModel, FitOptions, Issue, RheologyFit, RheologyPoint } from '../../core/index.ts';

/** What the window asks for. */
export interface FitAsk {
  readonly points: readonly RheologyPoint[];
  readonly model: FitModel;
  readonly options: FitOptions;
  /** filler of the measured melt, whose share is taken out; null = the melt alone was measured */
  readonly filler: { readonly volumeFraction: number; readonly maxPacking: number } | null;
}

/** The fitted law at one temperature, each list as long as the drawing's shear rates. Viscosities in Pa s. */
export interface FitCurve {
  /** as written beside the curve */
  readonly temperature: string;
  readonly value: readonly number[];
  readonly low: readonly number[];
  readonly high: readonly number[];
  /** readings nearest to this temperature; null where none was taken at that shear rate */
  readonly points: readonly (number | null)[];
}

/** Readings and curves, ready to be drawn. */
export interface FitDrawing {
  /** 1/s, rising; one entry for each reading besides those of the curves */
  readonly rates: readonly number[];
  readonly curves: readonly FitCurve[];
  /** readings far from the curve */
  readonly outliers: readonly (number | null)[];
  /** smallest and largest viscosity of readings and curves, Pa s */
  readonly span: readonly [number, number];
  /** temperatures of the readings, told apart at steps of more than 2 K */
  readonly temperatures: number;
}

/** What the worker says. */
export type FitAnswer =
  | { readonly kind: 'refused'; readonly issues: readonly Issue[] }
  | {
      readonly kind: 'fit';
      readonly fit: RheologyFit;
      readonly drawing: FitDrawing;
      /** standard deviation of measured over fitted, % */
      readonly scatterPercent: number;
    };
