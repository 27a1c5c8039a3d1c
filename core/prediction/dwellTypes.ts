/** How long the melt stays and where it lingers. SI units. */

import type { Basis } from './basisType.ts';

/** Residence of the melt. s. */
export interface Residence {
  readonly mean: number;
  readonly min: number;
  readonly t50: number;
  readonly t95: number;
  readonly t99: number;
  /** until 99 % and 99.9 % of what comes out entered after a change of material: t99 and t99.9 */
  readonly washout99: number;
  readonly washout999: number;
  /** time and cumulative share leaving by then */
  readonly time: Float64Array;
  readonly cumulative: Float64Array;
  /** mean time in each part, s */
  readonly parts: readonly {
    readonly part: 'channel' | 'tip' | 'nozzle';
    readonly mean: number;
    readonly volume: number;
  }[];
  /** share that has left a part by a time spent in it, s; absent where nothing flows */
  readonly partCurves?: readonly PartCurve[];
}

/** Distribution of one part alone. */
export interface PartCurve {
  readonly part: 'channel' | 'tip and nozzle';
  /** s, rising, and the share that has left by then, 0 to 1 */
  readonly time: Float64Array;
  readonly cumulative: Float64Array;
}

/** A place where melt lingers. */
export interface DeadSpot {
  readonly part: 'channel' | 'tip' | 'nozzle';
  readonly where: string;
  /** m */
  readonly z: number;
  readonly r: number;
  /** stretch of z it covers, m */
  readonly zFrom: number;
  readonly zTo: number;
  /** m³ */
  readonly volume: number;
  /** s */
  readonly meanAge: number;
  readonly cause: 'corner' | 'shoulder' | 'ledge' | 'tip' | 'no net flow';
  readonly remedy: string;
  /** extent of the colour law, colour difference and colour of melt of this age; absent where not worked out */
  readonly extent?: number | null;
  readonly dE00?: number | null;
  /** #rrggbb */
  readonly srgb?: string | null;
}

/** Share of volume that lingers. */
export interface DeadVolume {
  readonly fractionOver3: number;
  readonly fractionOver5: number;
  readonly spots: readonly DeadSpot[];
  /** what was and was not covered */
  readonly basis: Basis;
}
