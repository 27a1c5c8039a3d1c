/** A validated revision in SI units: the only input of geometry and prediction. Made by validateDesign alone. */

import type { ViscosityLaw } from '../material/viscosityLaw.ts';

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
}

/** A number with an optional doubt range, same unit. */
export interface Ranged {
  readonly value: number;
  readonly low: number;
  readonly high: number;
}

/** First-, n-th or zero-order Arrhenius law. */
export interface DegradationLaw {
  readonly id: string;
  readonly observed: string;
  readonly order: number;
  /** 1/s times the unit of the extent */
  readonly rateAtReference: Ranged;
  /** K */
  readonly referenceTemperature: number;
  /** J/mol */
  readonly activation: Ranged;
  /** K, range in which the law was measured */
  readonly validFrom: number;
  readonly validTo: number;
}

/** A granulate in SI units, temperatures K. */
export interface DesignMaterial {
  readonly id: string;
  readonly name: string;
  readonly invented: boolean;
  readonly form: string;
  /** isothermal law at a temperature (K) and pressure (Pa), filler included */
  readonly viscosityLaw: (temperature: number, pressure: number) => ViscosityLaw;
  /** where the viscosity law was fitted or checked: K and 1/s; null where unknown */
  readonly rheologyRange: {
    readonly from: number;
    readonly to: number;
    readonly shearFrom: number;
    readonly shearTo: number;
  } | null;
  /** kg/m³ */
  readonly meltDensity: number;
  readonly solidDensity: number;
  readonly bulkDensity: number;
  /** grain sizes, m */
  readonly grain: { readonly d10: number; readonly d50: number; readonly d90: number; readonly aspectRatio: number };
  readonly frictionOnBarrel: Ranged;
  readonly frictionOnScrew: Ranged;
  /** rad or null where unknown */
  readonly angleOfRepose: number | null;
  /** W/(m K) */
  readonly conductivity: number;
  /** J/(kg K) */
  readonly heatCapacitySolid: number;
  readonly heatCapacityMelt: number;
  /** J/kg */
  readonly heatOfFusion: number;
  /** K */
  readonly softening: number;
  readonly melting: number;
  /** N/m or null */
  readonly surfaceTension: number | null;
  /** of the cooled print: Pa, Pa, 1/K, -, K; null where unknown */
  readonly mechanical: {
    readonly young: number;
    readonly strength: number;
    readonly expansion: number;
    readonly poisson: number;
    readonly setTemperature: number;
  } | null;
  /** K */
  readonly windowLow: number;
  readonly windowHigh: number;
  readonly maxSafe: number;
  readonly degradation: readonly DegradationLaw[];
  readonly colourLaw: string | null;
  readonly colourAnchors: readonly {
    readonly extent: number;
    readonly lab: readonly [number, number, number];
  }[];
  readonly cautions: readonly string[];
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
}

/** One revision, validated, with the process and print demand it is judged by. */
export interface Design {
  readonly [validated]: true;
  readonly revisionId: string;
  readonly revisionName: string;
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
}
