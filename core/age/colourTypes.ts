/** What the colour prediction takes, and names of what it gives. */

import type { DesignMaterial } from '../design/types.ts';
import type { ColourPrediction } from '../prediction/types.ts';
import type { HeatSegment } from './lawRun.ts';
import type { KineticLaw } from './laws.ts';

export type { ColourRange } from '../prediction/types.ts';

/** The part of a material that its colour rests on; a DesignMaterial is one. */
export type ColouredMaterial = Pick<DesignMaterial, 'name' | 'invented' | 'colourLaw' | 'colourAnchors'> & {
  readonly degradation: readonly KineticLaw[];
};

/** Melt temperature, K: one for all, or the mean time (s) and temperature (K) of each part in order of passing. */
export type MeltHeat = number | readonly HeatSegment[];

/** Colour prediction with all it tells; null where the colour cannot be said. */
export type ColourDetail = ColourPrediction;
