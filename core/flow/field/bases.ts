/** Spline bases of half a channel, graded towards the sliding barrel corner. */

import { gradedBreaks } from '../../math/gradedBreaks.ts';
import { type SplineBasis, splineBasis } from '../../math/splineBasis.ts';
import { halfWidthAt, type SectionShape } from './sectionShape.ts';

/** Mesh and order. */
export interface SpaceOptions {
  /** Spline degree, 2 or 3. */
  readonly degree: number;
  /** Cell size at the corner of barrel and flank, where the wall speed jumps, in depths (or widths if smaller). */
  readonly cornerCell: number;
  /** Cell size at the root, in the same unit. */
  readonly rootCell: number;
  /** Growth of the cell size per unit of distance from corner or root. */
  readonly growth: number;
  /** Largest cell across the depth, in depths. */
  readonly largest: number;
}

/** Every cell size times a factor; 0.5 gives the twice finer mesh. */
export function refined(options: SpaceOptions, factor: number): SpaceOptions {
  return {
    degree: options.degree,
    cornerCell: options.cornerCell * factor,
    rootCell: options.rootCell * factor,
    growth: options.growth * factor,
    largest: options.largest * factor,
  };
}

/** Graded bases: fine at the sliding barrel corner, fair at the root, growing with distance from both. */
export function channelBases(shape: SectionShape, options: SpaceOptions): { across: SplineBasis; up: SplineBasis } {
  const half = halfWidthAt(shape, 1);
  const unit = Math.min(1, 2 * half);
  const acrossBreaks = gradedBreaks(1, {
    atStart: (options.cornerCell * unit) / half,
    atEnd: Number.POSITIVE_INFINITY,
    growth: options.growth,
    largest: options.largest * 1.5,
  });
  const upBreaks = gradedBreaks(1, {
    atStart: options.rootCell * unit,
    atEnd: options.cornerCell * unit,
    growth: options.growth,
    largest: options.largest,
  });
  return { across: splineBasis(acrossBreaks, options.degree), up: splineBasis(upBreaks, options.degree) };
}
