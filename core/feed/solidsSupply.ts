/** What feeder and hopper offer, against what the screw takes. */

import type { Design } from '../design/types.ts';
import { smoothRamp } from '../math/ramp.ts';
import { hopperState } from './hopper.ts';

/** Offered over taken, from which the feed backs up at all, and from which it stands wholly full. Own choice. */
const backing = { begins: 1.001, full: 1.1 } as const;

/** What the feed could deliver, kg/s: the lesser of a metering feeder, where there is one, and the hopper's discharge. */
export const offeredRate = (design: Design): number =>
  Math.min(design.process.starvedRate ?? Number.POSITIVE_INFINITY, hopperState(design).discharge);

/**
 * How far the granules back up under the opening, 0 to 1.
 * @param offered, taken kg/s
 * 0: the screw takes all that comes and runs partly filled; 1: more comes than it takes, and the channel stands full, no
 * matter whether from a hopper or from a feeder. A channel floods at the first surplus; the ramp is there lest
 * predictions jump with it.
 */
export const backedUp = (offered: number, taken: number): number =>
  taken > 0 ? smoothRamp(offered / taken, backing.begins, backing.full) : 1;
