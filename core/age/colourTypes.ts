/** What the colour prediction takes, and names of what it gives. */

import type { DesignMaterial } from '../design/types.ts';
import type { KineticLaw } from './laws.ts';

export type { ColourRange } from '../prediction/types.ts';

/** The part of a material that its colour rests on; a DesignMaterial is one. */
export type ColouredMaterial = Pick<DesignMaterial, 'name' | 'invented' | 'colourLaw' | 'colourAnchors'> & {
  readonly degradation: readonly KineticLaw[];
};
