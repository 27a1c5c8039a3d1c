/** The shape of a function that makes one group of figures. */

import type { Prediction } from '../prediction/types.ts';
import type { PresentedGroup } from './types.ts';

/** Makes one group of figures from a prediction. */
export type Group = (prediction: Prediction) => PresentedGroup;
