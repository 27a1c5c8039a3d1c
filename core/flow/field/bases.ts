/** Spline bases of half a channel, graded towards the sliding barrel corner. */

import { gradedBreaks } from '../../math/gradedBreaks.ts';
import { type SplineBasis, splineBasis } from '../../math/splineBasis.ts';
import { halfWidthAt, type SectionShape } from './sectionShape.ts';

/** Mesh and order; the defaults meet 1 % (Newtonian) and 2 % (shear-thinning) with reserve. */
export interface SpaceOptions {
  /** Spline degree, 2 or 3. */
  readonly degree: number;
  /** Multiplies every cell size; 1 is the standard mesh, 0.5 halves all cells. */
  readonly coarseness: number;
}

/** Graded bases: fine at the sliding barrel corner, fair at the root, growing with distance from both. */
export function channelBases(shape: SectionShape, options: SpaceOptions): { across: SplineBasis; up: SplineBasis } {
  const half = halfWidthAt(shape, 1);
  const unit = Math.min(1, 2 * half) * options.coarseness;
  const acrossBreaks = gradedBreaks(1, {
    atStart: (0.02 * unit) / half,
    atEnd: Number.POSITIVE_INFINITY,
    growth: 0.4 * options.coarseness,
    largest: Math.min(0.2, Number.POSITIVE_INFINITY) * options.coarseness,
  });
  const upBreaks = gradedBreaks(1, {
    atStart: 0.08 * unit,
    atEnd: 0.02 * unit,
    growth: 0.4 * options.coarseness,
    largest: 0.15 * options.coarseness,
  });
  return { across: splineBasis(acrossBreaks, options.degree), up: splineBasis(upBreaks, options.degree) };
}
