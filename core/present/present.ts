/** A prediction made ready for showing: views, tables, reports and exports read this and compute nothing. */

import type { Design } from '../design/types.ts';
import type { Prediction } from '../prediction/types.ts';
import { groupsOf } from './groups.ts';
import { inputsGroup } from './inputs.ts';
import { predictionJson } from './json.ts';
import { makingGroup } from './making.ts';
import { seriesOf } from './series.ts';
import type { Presentation } from './types.ts';

/**
 * Presents a prediction in metric display units.
 * @param design adds a group with what it was run with
 */
export const present = (prediction: Prediction, design?: Design): Presentation => ({
  groups: [...groupsOf(prediction), ...(design ? [makingGroup(design), inputsGroup(design)] : [])],
  series: seriesOf(prediction),
  summaryJson: predictionJson(prediction, design),
});
