/** Plain-data results of the print side. SI; null where something needed is not known. */

import type { Ranged } from '../design/types.ts';

/** Section and place of a laid line. */
export interface LineState {
  /** m²: with rounded sides, and width times height */
  readonly area: number;
  readonly rectangleArea: number;
  /** m between neighbours */
  readonly spacing: number;
  readonly passes: number;
  /** line width with which these passes fill the wall exactly, m */
  readonly fittedWidth: number;
  readonly widthOverBore: number;
  readonly heightOverBore: number;
  readonly width: 'narrow' | 'good' | 'wide';
  readonly height: 'thin' | 'good' | 'high';
}

/** What a firmware wants to be told; data only. Steps are microsteps of the motor. */
export interface FirmwareNumbers {
  readonly stepsPerScrewTurn: number;
  /** 1/m³ of melt at the working pressure; null where nothing flows */
  readonly stepsPerVolume: number | null;
  /** virtual filament: m, m² */
  readonly filamentDiameter: number;
  readonly filamentArea: number;
  /** true where 1 mm of filament is 1 mm³, so that lengths are volumes */
  readonly lengthIsVolume: boolean;
  /** 1/m of virtual filament: the step setting of the extruding axis */
  readonly stepsPerLength: number | null;
  /** melt per full step and per microstep, m³ */
  readonly fullStepVolume: number | null;
  readonly microstepVolume: number | null;
  /** at the print's demand: screw rev/s in proportion, microsteps 1/s */
  readonly demandScrewSpeed: number | null;
  readonly demandStepRate: number | null;
  /** turn back that lets the stored melt go without slip, rad, and the same as virtual filament, m */
  readonly releaseAngle: number | null;
  readonly releaseLength: number | null;
  /** s: what a controller that feeds ahead by the pressure wants */
  readonly advanceTime: number | null;
}

/** Melt stored under pressure and how it lets go after a stop. */
export interface ReleaseState {
  /** 1/Pa, and whether the material tells it or the common range was taken */
  readonly compressibility: Ranged;
  readonly compressibilityKnown: boolean;
  /** volume that, at the head's pressure, stores as much as all the melt, m³ */
  readonly volume: number;
  /** Pa */
  readonly pressure: number;
  /** m³ */
  readonly stored: Ranged;
  /** time constant for small changes at this pressure: with the leak back through the screw, s, and without, s */
  readonly time: Ranged;
  readonly timeNozzleAlone: Ranged;
  /** s until nine tenths of the ooze are out */
  readonly time90: Ranged;
  /** of the flow through the nozzle: pressure ~ flow to this power; below 1 the tail is long */
  readonly index: number;
  /** share of the stored melt that leaves through the nozzle, 0 to 1 */
  readonly nozzleShare: number;
  /** m³ that ooze in the end */
  readonly ooze: Ranged;
  /** m³/s as the screw stops */
  readonly firstFlow: number;
  /** after the stop: s, and m³ oozed until then; up to nine tenths */
  readonly curve: { readonly time: Float64Array; readonly volume: Float64Array };
}

/** Weight of the standing melt against the skin at the orifice. */
export interface DripState {
  /** height of melt above the orifice if the machine stands upright, m */
  readonly column: number;
  /** Pa: weight, and what the skin holds; null where the surface tension is unknown */
  readonly weight: number;
  readonly held: number | null;
  /** null where that cannot be told */
  readonly drips: boolean | null;
  /** m³/s, the screw's own hold left out; without skin where that is unknown */
  readonly rate: number;
  /** kg of one drop and s between drops; null where unknown or none falls */
  readonly dropMass: number | null;
  readonly dropTime: number | null;
  /** Pa s, of the slow melt */
  readonly viscosity: number;
}

/** Whether the free melt keeps together on its way from orifice to layer. */
export interface StrandState {
  readonly verdict: 'strand' | 'sags' | 'drips' | null;
  /** break-up time over the time across the gap; null without surface tension or flow */
  readonly number: number | null;
  readonly capillary: number | null;
  readonly ohnesorge: number | null;
  readonly weber: number | null;
  /** s */
  readonly breakupTime: number | null;
  readonly gapTime: number | null;
  /** m, m/s, Pa s */
  readonly radius: number;
  readonly speed: number;
  readonly viscosity: number;
}

/** How fast a free line cools. */
export interface CoolingState {
  /** W/(m² K), and whether the design tells it */
  readonly coefficient: number;
  readonly coefficientKnown: boolean;
  /** K round the line */
  readonly air: number;
  readonly biot: number;
  /** true where the line is nearly of one temperature (Biot number below 0.1) */
  readonly lumped: boolean;
  /** s */
  readonly timeConstant: number;
  /** s until it sets; null where it cannot be told or never sets in this air */
  readonly setTime: number | null;
  readonly reason: 'unknown' | 'neverSets' | null;
  /** m of line laid meanwhile at the print's speed */
  readonly setLength: number | null;
}

/** Stress as the set print cools on. */
export interface CrackState {
  /** low below half the strength, risky up to it, exceeds above; null where it cannot be told */
  readonly verdict: 'low' | 'risky' | 'exceeds' | null;
  /** Pa: near the bed, away from it, strength; null where the material's mechanics are unknown */
  readonly bedStress: number | null;
  readonly chamberStress: number | null;
  readonly strength: number | null;
  /** greater of both over the strength */
  readonly share: number | null;
  /** bed and chamber from this on, K, leave half the strength */
  readonly wantedTemperature: number | null;
  /** K taken, and whether the design tells them or ambient stands in */
  readonly bed: number;
  readonly chamber: number;
  readonly bedKnown: boolean;
  readonly chamberKnown: boolean;
}

/** Everything on the print side. */
export interface PrintState {
  readonly line: LineState;
  readonly firmware: FirmwareNumbers;
  readonly release: ReleaseState;
  readonly drip: DripState;
  readonly strand: StrandState;
  readonly cooling: CoolingState;
  readonly crack: CrackState;
}
