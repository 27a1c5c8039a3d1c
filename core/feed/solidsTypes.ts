/** What is known of the granules between feed opening and melt. SI. */

/** What else is known when the state of the granules is asked for. */
export interface SolidsOptions {
  /**
   * Pressure of the melt where melting begins, Pa above ambient: what the plug must hold. It then packs over just the
   * length that this takes. Left out: a flooded plug pushes with all it has from the opening on, an upper bound.
   */
  readonly meltPressure?: number;
  /** z where granules soften, m, or null where they stay hard until they melt */
  readonly softensAt?: number | null;
}

/** What holds the supply of granules down. */
export type FeedLimit = 'hopper' | 'plug' | 'trough' | 'feeder';

/** Figures that hang on friction, at one pair of coefficients. */
export interface SolidsAtFriction {
  /** kg/s that a plug would carry without pressure rise; 0 where friction carries none */
  readonly freeFlow: number;
  /** pressure that the plug could build by where melting begins, at this flow, Pa, capped */
  readonly buildable: number;
  /** N m at the screw */
  readonly torque: number;
}

/** The granules at one flow and one speed. Arrays over stations, heat over reaches. */
export interface SolidsState {
  /** Pa above ambient; 0 before the opening, in loose starved granules, and from where melting begins */
  readonly pressure: Float64Array;
  /** share of the free area that granules take at their bulk density, 0 to 1; 0 before the opening and in the melt */
  readonly fill: Float64Array;
  /** torque of the granules on the screw, N m */
  readonly torque: number;
  /** heat of their friction per axial length, W/m, one per reach */
  readonly heat: Float64Array;
  /** angle of the plug's way to the plane across the axis under the opening, at this flow and unhindered, rad */
  readonly conveyingAngle: number;
  readonly freeAngle: number;
  /** packed zone, m; null where granules stay loose all the way */
  readonly packedFrom: number | null;
  readonly packedTo: number | null;
  readonly limitedBy: FeedLimit;
  /** at nominal friction, and at the ends of its range: barrel low with screw high, barrel high with screw low */
  readonly nominal: SolidsAtFriction;
  readonly low: SolidsAtFriction;
  readonly high: SolidsAtFriction;
  /** pressure at which granules yield at the wall and friction no longer grows, Pa; pressures are capped there */
  readonly pressureLimit: number;
  readonly capped: boolean;
  /** false where the plug cannot hold the pressure of the melt: melt works its way back */
  readonly holds: boolean;
  /** why it is doubtful, one sentence each */
  readonly doubts: readonly string[];
}
