/** Which way a screw must turn, in words that can be checked at the machine. */

import type { Design } from '../../design/types.ts';

/** Sense of turning as someone at the drive sees it, looking along the screw towards the nozzle. */
export type Sense = 'clockwise' | 'counter-clockwise';

/**
 * The sense in which the flights move towards the nozzle. A right-hand flight's angle grows with z; a point of it at a
 * fixed angle moves forward where the screw turns by a negative angle about z, which is counter-clockwise seen along z
 * (from the drive). Bolts show the same: turned clockwise from its head a right-hand one draws what it holds towards
 * the head.
 */
export const senseOf = (hand: Design['screw']['hand']): Sense => (hand === 'left' ? 'clockwise' : 'counter-clockwise');

/** The whole sentence. */
export const directionText = ({ screw }: Design): string =>
  `Seen from the drive, looking towards the nozzle, the screw must turn ${senseOf(screw.hand)}: its flight is ${screw.hand}-hand, and the other way it pushes the melt back into the hopper.`;
