/** Checks of melt conveying in the screw channel. */

import { solveReach } from '../flow/reach.ts';
import { flowAgainst, newtonian, textbookReach } from './textbookScrew.ts';
import type { Check } from './types.ts';

const degrees = Math.PI / 180;
const screw75 = { diameter: 0.075, depth: 0.006, helix: 20 * degrees };
const groover = (place: string) => `M. P. Groover, Fundamentals of Modern Manufacturing, ch. 13, ${place}`;

/** All checks of the channel. */
export const channelChecks: readonly Check[] = [
  {
    id: 'channel.openFlowOf75mmScrew',
    stage: 'channel',
    quantity: 'Open discharge of a 75 mm screw, 6 mm deep, 20°, at 1 rev/s',
    unit: 'cm³/s',
    expected: 53.528,
    limit: 1e-4,
    measure: 'relative',
    kind: 'fromMemory',
    source: groover('example 13.1'),
    got: () => solveReach(textbookReach(screw75), newtonian(100), 1, 0).openFlow * 1e6,
  },
  {
    id: 'channel.flowAgainst7MPa',
    stage: 'channel',
    quantity: 'Flow of the same screw, 1.9 m long, against 7 MPa at 100 Pa s',
    unit: 'cm³/s',
    expected: 35.25,
    limit: 1e-4,
    measure: 'relative',
    kind: 'fromMemory',
    source: groover('example 13.1'),
    got: () => flowAgainst(screw75, 100, 1, 7e6, 1.9) * 1e6,
  },
];
