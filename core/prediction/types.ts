/** The whole prediction of one design: plain data and typed arrays, SI units. */

import type { DesignCalibration } from '../design/types.ts';
import type { MechanicalState, SteppingRate, TorqueParts } from '../drive/types.ts';
import type { Finding } from '../findings/types.ts';
import type { GeometrySummary, Stations } from '../geometry/types.ts';
import type { SolvedFields } from '../path/viewTypes.ts';
import type { PrintState } from '../print/types.ts';
import type { Basis } from './basisType.ts';
import type { Capacity, CapacityKind, OutputCurve } from './capacityTypes.ts';
import type { ColourPrediction } from './colourTypes.ts';
import type { ColdEndReport, MeltingReport, SolidsReport, WarmUpReport } from './contentTypes.ts';
import type { DeadVolume, Residence } from './dwellTypes.ts';
import type { PredictionOptions } from './options.ts';

export type { Finding, Severity } from '../findings/types.ts';
export type { Basis } from './basisType.ts';
export type { Capacity, CapacityKind, OutputCurve } from './capacityTypes.ts';
export type {
  ColourAtShare,
  ColourIndices,
  ColourOrigin,
  ColourPrediction,
  ColourRange,
  LawOutcome,
  MolarMassLoss,
  SpotBleed,
} from './colourTypes.ts';
export type { DeadSpot, DeadVolume, Residence } from './dwellTypes.ts';
export type { PredictionOptions } from './options.ts';

/** Melt, wall and pressure along z, one value per station. */
export interface AxialState {
  /** K */
  readonly wallTemperature: Float64Array;
  /** core of the screw, K */
  readonly screwTemperature: Float64Array;
  readonly meltTemperature: Float64Array;
  /** mean of what is still solid, K; melting where none is left */
  readonly solidTemperature: Float64Array;
  /** 0 to 1: melted share of the mass */
  readonly moltenShare: Float64Array;
  /** width of the solid bed over that of the channel, 0 to 1, and thickness of the film on it, m; 0 = none */
  readonly bed: Float64Array;
  readonly film: Float64Array;
  /** how each reach melts, see meltingModel; one less than stations */
  readonly meltingModel: Uint8Array;
  /** Pa above ambient, of granules and then of melt; 0 where the channel is not full */
  readonly pressure: Float64Array;
  /** of melt: 0 empty to 1 full */
  readonly fill: Float64Array;
  /** of granules and melt together: 0 empty to 1 full */
  readonly filling: Float64Array;
  /** 1 where molten by the wall temperature */
  readonly molten: Uint8Array;
  /** 1/s, representative channel shear rate */
  readonly shearRate: Float64Array;
  /** Pa s */
  readonly viscosity: Float64Array;
}

/** Pressure drop of one nozzle segment. */
export interface NozzleDrop {
  readonly name: string;
  /** Pa */
  readonly pressureDrop: number;
  /** apparent wall shear rate at the narrow end, 1/s */
  readonly wallShearRate: number;
  /** K */
  readonly temperature: number;
}

/** Drive and strength. */
export interface DriveLoad extends MechanicalState {
  /** N m at the screw: melt channel, flight clearance, total */
  readonly torqueChannel: number;
  readonly torqueClearance: number;
  readonly torque: number;
  /** the same by cause, with what is not computed as null */
  readonly parts: TorqueParts;
  /** N m at which the motor stalls at this speed, and that over the torque; null without torque */
  readonly torquePullout: number;
  readonly motorMargin: number | null;
  /** the motor's steps at this speed */
  readonly stepping: SteppingRate;
  /** N m usable at this speed */
  readonly torqueUsable: number;
  /** mechanical power at the screw, W */
  readonly power: number;
  /** motor speed, rev/s */
  readonly motorSpeed: number;
  /** highest motor speed of the curve, rev/s */
  readonly motorSpeedMax: number;
  /** shear stress in the least root at this torque and at full motor torque, Pa */
  readonly rootShear: number;
  readonly rootShearFull: number;
  /** N */
  readonly thrust: number;
  /** closed discharge at this speed: Pa and N m if the drive held it */
  readonly blockedPressure: number;
  readonly blockedTorque: number;
  /** Pa at which the motor stalls as the discharge closes, not below running; null where it holds the blocked pressure */
  readonly stallPressure: number | null;
}

/** A heated zone of the barrel, or the nozzle, at the working point. */
export interface HeaterLoad {
  readonly name: string;
  readonly part: 'zone' | 'nozzle';
  /** K: wanted, and mean of the wall under the heater */
  readonly setTemperature: number;
  readonly reached: number;
  /** W: given; needed if every heater had what it needs; installed */
  readonly power: number;
  readonly needed: number;
  readonly maxPower: number;
  /** holds its set temperature; gives all it has and stays below; is off and stays above */
  readonly duty: 'held' | 'weak' | 'off';
}

/** Heat of the machine, W: given + dissipation = product + loss. */
export interface HeatDemand {
  /** taken up by the granulate on its way out of the nozzle */
  readonly product: number;
  /** supplied by dissipation in the melt */
  readonly dissipation: number;
  /** ambient + coolant + driveEnd */
  readonly loss: number;
  /** to still air, to cooling jackets, through the screw into its drive end; negative where heat comes in */
  readonly ambient: number;
  readonly coolant: number;
  readonly driveEnd: number;
  /** what the heaters must bring so that each holds its set temperature */
  readonly heater: number;
  /** what they bring, each within its watts */
  readonly given: number;
  /** most melt flow at which every heater holds its set temperature, m³/s, and whose watts end it; null where none do */
  readonly holdingFlow: number | null;
  readonly holdingLimit: string | null;
  /** watts of all heaters, nozzle included */
  readonly installed: number;
  /** temperature of what leaves the nozzle, K */
  readonly outlet: number;
  /** heated zones with the flow, then the nozzle */
  readonly zones: readonly HeaterLoad[];
}

/** Print demand against supply. */
export interface PrintMatch extends PrintState {
  /** K of the melt at the orifice, at which the print side is taken */
  readonly outlet: number;
  /** m² */
  readonly lineArea: number;
  /** m³/s while laying a line */
  readonly demand: number;
  /** m³/s on average over travel and idle */
  readonly meanDemand: number;
  /** supply over demand */
  readonly margin: number;
  /** m/s */
  readonly highestSpeed: number;
  readonly passesPerWall: number;
  /** motor microsteps per m³ of output at this pressure */
  readonly stepsPerVolume: number;
  /** s in which the pressure of a stopped screw lets go, forward and back; 0 where nothing flows */
  readonly pressureTime: number;
  /** rev/s that would meet the demand, or null if no speed of the drive does */
  readonly speedForDemand: number | null;
}

/** Everything predicted of one design. */
export interface Prediction {
  readonly revisionId: string;
  readonly revisionName: string;
  readonly designHash: string;
  readonly coreVersion: string;
  readonly options: PredictionOptions;
  /** factors from weighed trials that this was predicted with; null without */
  readonly calibration: DesignCalibration | null;
  readonly geometry: GeometrySummary;
  readonly stations: Stations;
  readonly axial: AxialState;
  readonly nozzle: readonly NozzleDrop[];
  readonly capacities: readonly Capacity[];
  readonly limit: CapacityKind;
  readonly output: {
    /**
     * false where nothing comes out: residence, dead volume, colour, steps per volume and loads then tell nothing and
     * stand at zero
     */
    readonly flows: boolean;
    /** m³/s of melt */
    readonly volumeFlow: number;
    /** kg/s */
    readonly massFlow: number;
    /** rev/s; 0 where the drive cannot turn the screw */
    readonly screwSpeed: number;
    /** Pa above ambient at the end of the screw; the back pressure where nothing flows */
    readonly headPressure: number;
    /** leaking back over the flights, m³/s, at the last flighted station */
    readonly leakFlow: number;
    /** m of screw filled with melt */
    readonly filledLength: number;
    readonly basis: Basis;
  };
  readonly curve: OutputCurve;
  readonly residence: Residence & { readonly basis: Basis };
  readonly dead: DeadVolume;
  readonly colour: ColourPrediction;
  readonly drive: DriveLoad & { readonly basis: Basis };
  readonly heat: HeatDemand & { readonly basis: Basis };
  readonly solids: SolidsReport;
  readonly melting: MeltingReport;
  readonly coldEnd: ColdEndReport;
  /** null where it was not asked for */
  readonly warmUp: WarmUpReport | null;
  readonly print: PrintMatch & { readonly basis: Basis };
  readonly findings: readonly Finding[];
  /** solved fields for views; null where formulas alone were asked for, or nothing flows */
  readonly fields: SolvedFields | null;
  /** false where an iteration did not converge; the findings say which */
  readonly converged: boolean;
}
