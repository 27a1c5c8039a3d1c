/** Capacities of the machine, at the working point and over screw speed. */

import type { Basis } from './basisType.ts';

/** What could hold the output down. */
export type CapacityKind = 'pumping' | 'feed' | 'starved' | 'torque' | 'motorSpeed' | 'heater' | 'melting' | 'grainFit';

/** One capacity at the set speed. */
export interface Capacity {
  readonly kind: CapacityKind;
  /** melt volume flow this alone would allow, m³/s; Infinity where it does not bind */
  readonly volumeFlow: number;
  /** this capacity over the actual output; 1 = it limits; Infinity where it does not bind */
  readonly reserve: number;
  readonly basis: Basis;
}

/** Output against screw speed. All arrays same length. */
export interface OutputCurve {
  /** rev/s */
  readonly screwSpeed: Float64Array;
  /** what comes out, m³/s */
  readonly volumeFlow: Float64Array;
  /** each capacity alone, m³/s; Infinity where it does not bind. `feed` is the hopper's, or the feeder's where less. */
  readonly pumping: Float64Array;
  readonly feed: Float64Array;
  readonly melting: Float64Array;
  readonly heater: Float64Array;
  readonly torqueBound: Float64Array;
  /** what holds the output at each speed; the drive where it cannot turn the screw so fast */
  readonly limit: readonly CapacityKind[];
  /** 1 where the machine works: the drive turns, all is molten and heated, and the print's demand is met */
  readonly works: Uint8Array;
  /** Pa */
  readonly headPressure: Float64Array;
  /** N m at the screw */
  readonly torque: Float64Array;
  /** usable torque of the drive at that speed, N m */
  readonly torqueAvailable: Float64Array;
}
