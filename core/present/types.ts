/** What views, tables, reports and exports show of a prediction: text and numbers in display units, nothing computed twice. */

import type { Basis } from '../prediction/types.ts';

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

/** The verdict as the headless command prints it; units in the names; null where there is no number. */
export interface PredictionJson {
  readonly revision: string;
  readonly name: string;
  readonly designHash: string;
  readonly coreVersion: string;
  readonly converged: boolean;
  readonly limit: string;
  readonly capacities: readonly {
    readonly kind: string;
    readonly volumeFlow_mm3_s: number | null;
    readonly reserve: number | null;
  }[];
  readonly output: {
    readonly volumeFlow_mm3_s: number;
    readonly massFlow_g_min: number;
    readonly screwSpeed_rpm: number;
    readonly leakFlow_mm3_s: number;
    readonly filledLength_mm: number;
  };
  readonly pressure: { readonly head_MPa: number; readonly blocked_MPa: number; readonly stall_MPa: number };
  readonly torque_Nm: number;
  readonly torqueUsable_Nm: number;
  readonly power_W: number;
  readonly heater_W: number;
  readonly residence: {
    readonly mean_s: number;
    readonly min_s: number;
    readonly t50_s: number;
    readonly t95_s: number;
    readonly t99_s: number;
  };
  readonly dead: {
    readonly fractionOver3: number;
    readonly fractionOver5: number;
    readonly spots: readonly {
      readonly part: string;
      readonly where: string;
      readonly z_mm: number;
      readonly r_mm: number;
      readonly volume_mm3: number;
      readonly meanAge_s: number;
      readonly cause: string;
      readonly remedy: string;
    }[];
  };
  readonly colour: {
    readonly dE00_mean: number | null;
    readonly dE00_worst: number | null;
    readonly srgb: string | null;
    readonly reason: string | null;
  };
  readonly print: {
    readonly demand_mm3_s: number;
    readonly margin: number;
    readonly stepsPerMm3: number;
    readonly pressureTime_s: number;
    readonly highestSpeed_mm_s: number;
    readonly speedForDemand_rpm: number | null;
  };
  readonly findings: readonly {
    readonly code: string;
    readonly severity: string;
    readonly where: string;
    readonly saw: string;
    readonly why: string;
    readonly change: string;
    readonly z_mm: number | null;
    readonly value: number | null;
    readonly limit: number | null;
    readonly unit: string;
  }[];
}
