/** What the colour prediction takes and gives beyond the shared prediction types. */

import type { DesignMaterial } from '../design/types.ts';
import type { ColourPrediction } from '../prediction/types.ts';
import type { Lab } from './cielab.ts';
import type { HeatSegment } from './kinetics.ts';
import type { KineticLaw } from './laws.ts';

/** The part of a material that its colour rests on; a DesignMaterial is one. */
export type ColouredMaterial = Pick<DesignMaterial, 'name' | 'invented' | 'colourLaw' | 'colourAnchors'> & {
  readonly degradation: readonly KineticLaw[];
};

/** Melt temperature, K: one for all, or the mean time (s) and temperature (K) of each part in order of passing. */
export type MeltHeat = number | readonly HeatSegment[];

/** Spread of the colour from the doubt ranges of rate and activation energy. */
export interface ColourRange {
  readonly dE00MeanLow: number;
  readonly dE00MeanHigh: number;
  readonly dE00WorstLow: number;
  readonly dE00WorstHigh: number;
  /** mean colour at the low and the high end */
  readonly labMeanLow: Lab;
  readonly labMeanHigh: Lab;
}

/** Colour prediction with its worst streak, extents and range; null where the colour cannot be said. */
export interface ColourDetail extends ColourPrediction {
  readonly labWorst: Lab | null;
  /** #rrggbb */
  readonly srgbWorst: string | null;
  /** false where the screen cannot show the mean colour and it was cut */
  readonly srgbInGamut: boolean | null;
  /** flux-weighted mean extent, and extent of the worst streak; unit of the colour law */
  readonly extentMean: number | null;
  readonly extentWorst: number | null;
  readonly range: ColourRange | null;
}
