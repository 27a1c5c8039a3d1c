/** What views, tables, reports and exports show of a prediction: text and numbers in display units, nothing computed twice. */

import type { Basis } from '../prediction/types.ts';
import type { PredictionJson } from './jsonTypes.ts';

/** One figure. */
export interface PresentedRow {
  readonly id: string;
  readonly label: string;
  /** number in the shown unit; null where there is none */
  readonly value: number | null;
  readonly unit: string;
  /** number and unit as text */
  readonly text: string;
  readonly help: string;
  readonly basis: Basis | null;
}

/** Figures that belong together. */
export interface PresentedGroup {
  readonly id: string;
  readonly title: string;
  readonly rows: readonly PresentedRow[];
}

/** One curve; several with the same id share a plot. */
export interface PresentedSeries {
  readonly id: string;
  readonly title: string;
  /** name of this curve in its plot */
  readonly name: string;
  readonly xLabel: string;
  readonly xUnit: string;
  readonly yLabel: string;
  readonly yUnit: string;
  readonly x: Float64Array;
  readonly y: Float64Array;
}

/** The whole. */
export interface Presentation {
  readonly groups: readonly PresentedGroup[];
  readonly series: readonly PresentedSeries[];
  /** the machine-readable verdict, see predictionJson */
  readonly summaryJson: PredictionJson;
}
