/** The machine-readable verdict: units in the names of fields or beside the numbers; null where there is no number. */

import type { BetterForWhat } from '../compare/account.ts';
import type { Basis } from '../prediction/types.ts';
import type { ColourJson } from './jsonColour.ts';
import type { ContentJson } from './jsonContent.ts';
import type { StrengthJson } from './jsonDrive.ts';
import type { PrintSideJson } from './jsonPrint.ts';

/** A number, or null where there is none. */
type Maybe = number | null;

/** The verdict as the headless command prints it. Ages, times and volumes are null where nothing flows. */
export interface PredictionJson extends ContentJson {
  readonly revision: string;
  readonly name: string;
  readonly designHash: string;
  readonly coreVersion: string;
  /** what the numbers rest on, and in words what that leaves out */
  readonly fields: 'solved' | 'formula';
  readonly fieldsNote: string;
  /** whether weighed trials have set factors on the model */
  readonly calibrationNote: string;
  readonly converged: boolean;
  readonly flows: boolean;
  /** whether the machine is invented; null where the design was not given */
  readonly projectInvented: boolean | null;
  readonly material: { readonly id: string; readonly name: string; readonly invented: boolean } | null;
  readonly limit: string;
  readonly capacities: readonly {
    readonly kind: string;
    readonly volumeFlow_mm3_s: Maybe;
    readonly reserve: Maybe;
    readonly basis: Basis;
  }[];
  readonly output: {
    readonly volumeFlow_mm3_s: number;
    readonly massFlow_g_min: number;
    readonly screwSpeed_rpm: number;
    readonly leakFlow_mm3_s: Maybe;
    readonly filledLength_mm: Maybe;
    readonly basis: Basis;
  };
  readonly pressure: { readonly head_MPa: number; readonly blocked_MPa: number; readonly stall_MPa: Maybe };
  readonly torque_Nm: Maybe;
  readonly torqueUsable_Nm: number;
  readonly power_W: Maybe;
  readonly heater_W: number;
  readonly drive: DriveJson;
  readonly heat: HeatJson;
  readonly residence: ResidenceJson;
  readonly dead: DeadJson;
  readonly colour: ColourJson;
  readonly print: PrintJson;
  readonly findings: readonly FindingJson[];
}

/** Drive and strength. */
export interface DriveJson extends StrengthJson {
  readonly torque_Nm: Maybe;
  readonly torqueLand_Nm: Maybe;
  readonly torqueUsable_Nm: number;
  readonly power_W: Maybe;
  readonly motorSpeed_rpm: number;
  readonly rootShear_MPa: Maybe;
  readonly rootShearFull_MPa: number;
  readonly thrust_N: Maybe;
  readonly basis: Basis;
}

/** Heat. */
export interface HeatJson {
  readonly product_W: number;
  readonly dissipation_W: number;
  readonly loss_W: number;
  /** parts of the loss: to still air, to cooling jackets, through the screw into its drive end */
  readonly ambient_W: number;
  readonly coolant_W: number;
  readonly driveEnd_W: number;
  readonly heater_W: number;
  /** what the heaters bring within their watts */
  readonly given_W: number;
  readonly outlet_C: number;
  readonly zones: readonly {
    readonly name: string;
    readonly part: string;
    readonly setTemperature_C: number;
    readonly reached_C: number;
    readonly given_W: number;
    readonly needed_W: number;
    readonly installed_W: number;
    readonly duty: string;
  }[];
  readonly installed_W: number;
  readonly basis: Basis;
}

/** Residence and washing out. */
export interface ResidenceJson {
  readonly mean_s: Maybe;
  readonly min_s: Maybe;
  readonly t50_s: Maybe;
  readonly t95_s: Maybe;
  readonly t99_s: Maybe;
  readonly washout99_s: Maybe;
  readonly washout999_s: Maybe;
  readonly parts: readonly { readonly part: string; readonly mean_s: Maybe; readonly volume_mm3: number }[];
  readonly basis: Basis;
}

/** Melt that lingers. */
export interface DeadJson {
  readonly fractionOver3: Maybe;
  readonly fractionOver5: Maybe;
  readonly spots: readonly {
    readonly part: string;
    readonly where: string;
    readonly z_mm: number;
    readonly zFrom_mm: number;
    readonly zTo_mm: number;
    readonly r_mm: number;
    readonly volume_mm3: number;
    readonly meanAge_s: number;
    readonly cause: string;
    readonly remedy: string;
    readonly dE00: Maybe;
    readonly srgb: string | null;
  }[];
  readonly basis: Basis;
}

/** Print demand against supply; steps are motor microsteps. */
export interface PrintJson extends PrintSideJson {
  readonly demand_mm3_s: number;
  readonly meanDemand_mm3_s: number;
  readonly margin: number;
  readonly passesPerWall: number;
  readonly stepsPerMm3: Maybe;
  readonly pressureTime_s: Maybe;
  readonly highestSpeed_mm_s: number;
  readonly speedForDemand_rpm: Maybe;
  readonly basis: Basis;
}

/** What was found; value and limit in `unit`. */
export interface FindingJson {
  readonly code: string;
  readonly severity: string;
  readonly where: string;
  readonly saw: string;
  readonly why: string;
  readonly change: string;
  readonly z_mm: Maybe;
  readonly value: Maybe;
  readonly limit: Maybe;
  readonly unit: string;
}

/** A comparison as the headless command prints it; values of a row in its `unit`, '' for a bare number. */
export interface ComparisonJson {
  readonly revisions: readonly {
    readonly id: string;
    readonly name: string;
    readonly limit: string;
    readonly fields: 'solved' | 'formula';
    readonly flows: boolean;
    readonly converged: boolean;
    readonly material: PredictionJson['material'];
  }[];
  readonly projectInvented: boolean;
  readonly notes: readonly string[];
  readonly rows: readonly {
    readonly id: string;
    readonly label: string;
    readonly unit: string;
    readonly modelError: number;
    readonly values: readonly {
      readonly value: Maybe;
      readonly text: string;
      readonly change: Maybe;
      readonly verdict: string;
    }[];
  }[];
  readonly account: readonly string[];
  /** which revision is better for what, from the same numbers; shares are of the runner-up */
  readonly answer: BetterForWhat;
}
