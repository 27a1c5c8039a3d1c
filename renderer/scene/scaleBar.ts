/** The scale bars of every picture of the machine: a round length in the reader's unit. */

import { lookQuantity, lookUnit, type NumberLook, toSi } from '../../core/index.ts';
import { scaleLength } from './frame.ts';

/** How a scale bar is drawn. */
export interface ScaleBarShape {
  /** px */
  readonly width: number;
  /** its length with unit */
  readonly label: string;
}

/**
 * A bar of a round number of millimetres or inches.
 * @param perMetre pixels that one metre of the picture takes, positive
 * @param mostPixels longest bar, px
 */
export function scaleBarShape(perMetre: number, mostPixels: number, look: NumberLook): ScaleBarShape {
  const unit = lookUnit('mm', look);
  const perUnit = perMetre * toSi(1, unit);
  const length = scaleLength(perUnit, mostPixels);
  return { width: length * perUnit, label: lookQuantity(toSi(length, unit), unit, 4, look) };
}
