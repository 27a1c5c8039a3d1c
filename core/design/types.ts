/** A validated revision in SI units: the only input of geometry and prediction. Made by validateDesign alone. */

import type { DesignMaterial, Ranged } from '../material/types.ts';

export type { DegradationLaw, DesignMaterial, Ranged } from '../material/types.ts';

declare const validated: unique symbol;

/** A flighted stretch of screw. Lengths m, angles rad. */
export interface FlightedSection {
  readonly kind: 'flighted';
  /** m */
  readonly length: number;
  /** axial advance of one flight per turn at start and end, m */
  readonly leadStart: number;
  readonly leadEnd: number;
  /** m */
  readonly rootDiameterStart: number;
  readonly rootDiameterEnd: number;
  readonly starts: number;
  /** axial width of the land at the flight's tip, m */
  readonly flightWidth: number;
  /** flank angle from the plane normal to the axis, rad; 0 = square */
  readonly flankAngle: number;
  /** m */
  readonly rootFillet: number;
}

/** A stretch without a flight. */
export interface PlainSection {
  readonly kind: 'plain';
  /** m */
  readonly length: number;
  /** m */
  readonly rootDiameterStart: number;
  readonly rootDiameterEnd: number;
}

/** A stretch of the screw. */
export type ScrewSection = FlightedSection | PlainSection;

/** End of the screw: its body starts at the last root diameter; the pin stands ahead of the body. */
export interface ScrewTip {
  readonly kind: 'flat' | 'cone' | 'hemisphere';
  /** included angle of the cone, rad; pi for flat, 0 unused for hemisphere */
  readonly includedAngle: number;
  /** m; 0 = none */
  readonly pinDiameter: number;
  /** m */
  readonly pinLength: number;
}

/** The screw; z = 0 where the bore and the first section begin, z grows with the flow. */
export interface Screw {
  readonly hand: 'right' | 'left';
  /** barrel radius minus flight radius, m */
  readonly radialClearance: number;
  readonly sections: readonly ScrewSection[];
  readonly tip: ScrewTip;
  /** m */
  readonly shankDiameter: number;
  /** m */
  readonly shankLength: number;
  /** between shank and screw, m; null where unknown */
  readonly shankFillet: number | null;
  readonly steel: {
    readonly name: string;
    /** Pa */
    readonly yieldStress: number;
    /** Pa */
    readonly young: number;
    /** W/(m K) */
    readonly conductivity: number;
    /** 1/K */
    readonly expansion: number;
  };
}

/** A stretch of the barrel's length with its own thermal duty. m, K, W. */
export type Zone =
  | {
      readonly kind: 'heated';
      readonly name: string;
      readonly start: number;
      readonly end: number;
      readonly setTemperature: number;
      readonly maxPower: number;
    }
  | { readonly kind: 'insulated'; readonly name: string; readonly start: number; readonly end: number }
  | {
      readonly kind: 'cooled';
      readonly name: string;
      readonly start: number;
      readonly end: number;
      readonly coolantTemperature: number;
    };

/** The barrel, bore from z = 0 to length. SI. */
export interface Barrel {
  readonly boreDiameter: number;
  readonly outerDiameter: number;
  readonly length: number;
  readonly conductivity: number;
  /** by volume, J/(m³ K); null where unknown */
  readonly heatCapacity: number | null;
  /** Pa; null where unknown */
  readonly pressureLimit: number | null;
  readonly feedOpening: { readonly start: number; readonly length: number; readonly width: number };
  readonly zones: readonly Zone[];
  readonly heatBreak: {
    readonly start: number;
    readonly length: number;
    readonly wall: number;
    readonly conductivity: number;
  } | null;
}

/** A straight piece of the bore after the barrel; length 0 is a flat shoulder or ledge. m. */
export interface NozzleSegment {
  readonly name: string;
  readonly length: number;
  readonly startDiameter: number;
  readonly endDiameter: number;
}

/** Everything the melt passes after the barrel, from z = barrel.length on. SI. */
export interface Nozzle {
  readonly segments: readonly NozzleSegment[];
  readonly outerDiameter: number;
  /** K */
  readonly setTemperature: number;
  /** W */
  readonly maxPower: number;
}

/** The hopper. m, rad. */
export interface Hopper {
  readonly outletDiameter: number;
  readonly wallHalfAngle: number;
  readonly height: number;
  readonly wallFriction: number;
  readonly gap: number;
  readonly agitation: 'none' | 'stirrer' | 'vibration';
}

/** Motor, gear and stepping. */
export interface Drive {
  /** pull-out torque over motor speed, rising speed: rev/s and N m */
  readonly motorCurve: readonly { readonly speed: number; readonly torque: number }[];
  readonly gearRatio: number;
  readonly gearEfficiency: number;
  readonly usableTorqueShare: number;
  readonly fullStepsPerTurn: number;
  readonly microsteps: number;
  /** axial bearing, N; null where unknown */
  readonly bearing: {
    readonly kind: 'ball' | 'roller';
    readonly staticLoad: number;
    readonly dynamicLoad: number | null;
  } | null;
}

/** How the machine is run. SI, K. */
export interface Process {
  /** rev/s */
  readonly screwSpeed: number;
  /** kg/s where a feeder meters, null when flooded */
  readonly starvedRate: number | null;
  readonly ambient: number;
  readonly feedTemperature: number;
  /** Pa above ambient at the orifice */
  readonly backPressure: number;
  /** dE2000 that is still accepted */
  readonly acceptableDeltaE: number;
}

/** What the print asks for. SI. */
export interface PrintDemand {
  readonly lineWidth: number;
  readonly layerHeight: number;
  readonly speed: number;
  readonly wallThickness: number;
  readonly travelShare: number;
  readonly idleShare: number;
  readonly nozzleHeight: number;
  /** around the laid line, K; null where unknown */
  readonly bedTemperature: number | null;
  readonly chamberTemperature: number | null;
  /** heat transfer of the laid line to the air, W/(m² K); null where unknown */
  readonly coolingCoefficient: number | null;
  /** virtual filament of the controller, m; null = the one of which 1 mm is 1 mm³ */
  readonly filamentDiameter: number | null;
}

/** Named factors found from weighed trials, applied on the owner's word only. */
export interface DesignCalibration {
  readonly id: string;
  readonly name: string;
  readonly date: string | null;
  /** id of the material that the trials ran */
  readonly materialId: string;
  readonly trials: readonly string[];
  /** on the feed capacity, the viscosity, the friction on the barrel, and the rate of the law that drives the colour */
  readonly feed: Ranged;
  readonly viscosity: Ranged;
  readonly wallFriction: Ranged;
  readonly colourRate: Ranged;
}

/** One revision, validated, with the process and print demand it is judged by. */
export interface Design {
  readonly [validated]: true;
  readonly revisionId: string;
  readonly revisionName: string;
  /** whether the project calls its machine and figures invented */
  readonly invented: boolean;
  /** content hash of the revision, its material, process and print demand */
  readonly hash: string;
  readonly screw: Screw;
  readonly barrel: Barrel;
  readonly nozzle: Nozzle;
  readonly hopper: Hopper;
  readonly drive: Drive;
  readonly material: DesignMaterial;
  readonly process: Process;
  readonly print: PrintDemand;
  /** null where the revision is predicted without */
  readonly calibration: DesignCalibration | null;
}
