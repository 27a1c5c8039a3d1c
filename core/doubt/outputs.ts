/** The figures whose spread a study of doubt follows. */

import { type ComparedQuantity, comparedQuantities } from '../compare/quantities.ts';
import type { Prediction } from '../prediction/types.ts';

const followed = [
  'volumeFlow',
  'margin',
  'headPressure',
  'torque',
  'mean',
  't95',
  'dE00Mean',
  'dE00Worst',
  'blockedPressure',
  'heater',
];

/** Figures in the order in which a study gives them. */
export const doubtOutputs: readonly ComparedQuantity[] = followed.flatMap((id) =>
  comparedQuantities.filter((quantity) => quantity.id === id),
);

/** Values of the figures, SI; NaN where there is no number. */
export const outputValues = (prediction: Prediction): Float64Array =>
  Float64Array.from(doubtOutputs, (quantity) => quantity.value(prediction) ?? Number.NaN);
