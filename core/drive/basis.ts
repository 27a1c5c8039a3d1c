/** What drive and strength rest on, in words. */

import type { Basis } from '../prediction/basisType.ts';

/** Basis of torque, strength, bearing and walls. */
export const mechanicsBasis: Omit<Basis, 'doubt'> = {
  model: 'Shear of the melt on the barrel; torsion of every root and step; thick tubes under pressure',
  assumptions: [
    'Torque of granules in the feed, of melt in the filled channel, in the film on the granules, over the flight land and round the tip.',
    'The root alone carries the torque, all of it at every place, as when a plug jams at the tip; steps raise the stress by their factor.',
    'Bending, keyseats and the flight’s foot are not counted; bending breaks more screws than torque.',
    'Margins hold yield against torsion and thrust together (Tresca), under the motor’s full torque and the highest pressure.',
    'Thrust is the pressure at the screw’s end on the full bore.',
    'Blocked pressure: no flow at this speed, melt temperatures as running, viscosity without its pressure rise; the motor stalls where torque, growing with pressure on a straight line from running to blocked, meets its pull-out torque.',
    'Walls: long plain tubes; threads, holes and the edge of the feed opening are not seen.',
    'Bearing: rated life of clean, turning races; a slow screw is judged by the static rating.',
  ],
  source:
    'Tadmor & Klein 1970 (power); elementary torsion; step factors after Peterson’s chart (fit from memory, within 3 % of Gere, Mechanics of Materials, problem 3.11-3); Lamé 1852; Euler; ISO 281 exponents (from memory)',
  range: 'Running hot. A cold start can take the motor’s full torque.',
};
