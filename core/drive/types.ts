/** Plain-data results of drive and strength. SI. */

/** Torque on the screw by what causes it, N m; null where that part is not computed. */
export interface TorqueParts {
  /** granules rubbing on barrel and screw in the feed */
  readonly solids: number | null;
  /** melt film between granules and barrel */
  readonly film: number | null;
  /** melt in the channel */
  readonly channel: number;
  /** melt between flight land and barrel */
  readonly clearance: number;
  /** melt round the turning tip */
  readonly tip: number;
}

/** A place where the screw carries torque. */
export interface RootPlace {
  /** thinnest place of a section; step between two sections; shank; step from shank to first section */
  readonly kind: 'root' | 'shoulder' | 'shank' | 'shankShoulder';
  /** m; negative on the shank */
  readonly z: number;
  /** thinner diameter there, m */
  readonly diameter: number;
  /** thicker diameter of a step, m; the same as `diameter` where there is none */
  readonly thick: number;
  /** fillet of the step, m; null where unknown or no step */
  readonly fillet: number | null;
  /** stress concentration in torsion; 1 where there is no step */
  readonly factor: number;
}

/** Stress of a place. */
export interface RootStress extends RootPlace {
  /** torsional shear with its concentration, Pa: running, and under the motor's full torque */
  readonly running: number;
  readonly full: number;
  /** compression by the thrust, Pa, added to full torque in the margin */
  readonly compression: number;
  /** yield over the equivalent stress under full torque and greatest thrust; null without load */
  readonly margin: number | null;
}

/** Load on the thrust bearing. */
export interface BearingLoad {
  /** static rating over thrust, running and with the discharge blocked; null without thrust */
  readonly staticMargin: number | null;
  readonly staticMarginBlocked: number | null;
  /** turns and seconds that 90 % of such bearings outlast at the running thrust; null without dynamic rating or thrust */
  readonly lifeTurns: number | null;
  readonly lifeTime: number | null;
}

/** Wall under inner pressure. */
export interface WallStress {
  readonly part: 'barrel' | 'heat break' | 'nozzle';
  /** m */
  readonly inner: number;
  readonly outer: number;
  /** hoop stress at the bore of the thick wall, and greatest shear times two there, Pa */
  readonly hoop: number;
  readonly equivalent: number;
  /** pressure times radius over wall, Pa: the thin-wall estimate */
  readonly thinHoop: number;
}

/** Stepping of the motor at the working point. */
export interface SteppingRate {
  /** 1/s */
  readonly fullSteps: number;
  readonly microsteps: number;
}

/** All that follows from torque, thrust and pressure. */
export interface MechanicalState {
  readonly roots: readonly RootStress[];
  /** place with the least margin */
  readonly worstRoot: RootStress;
  /** wind-up of shank and sections, rad: running, and under full torque (all torque taken at the tip) */
  readonly twist: number;
  readonly twistFull: number;
  /** N at the highest pressure that screw and motor can build */
  readonly thrustBlocked: number;
  /** Pa */
  readonly mostPressure: number;
  /** null where no bearing is given */
  readonly bearing: BearingLoad | null;
  /** axial load at which the screw would bow if held at the drive end alone, and at both ends, N */
  readonly bucklingFree: number;
  readonly bucklingHeld: number;
  /** under the highest pressure */
  readonly walls: readonly WallStress[];
  /** Pa; null where unknown */
  readonly pressureLimit: number | null;
}
