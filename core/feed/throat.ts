/** The most that the screw's first turns can bite off under the feed opening. */

import { conveyorVolumeFlow } from './conveyor.ts';

/** What is left of a turn's free volume for granules; the rest is taken off for the flight. */
const biteShare = 0.9;

/**
 * Upper limit of intake, "perfect bite": every turn takes in its whole channel.
 * @param diameter of the screw, m; @param depth of the channel, m; @param lead m
 * @returns m³ per turn; real intake is well below. Source: Griff 2016 for square pitch, 0.9 pi (D - h) h times lead.
 */
export const perfectBite = (diameter: number, depth: number, lead: number): number =>
  conveyorVolumeFlow(diameter, diameter - 2 * depth, lead, 1, biteShare);
