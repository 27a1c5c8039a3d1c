/** What the print side rests on, in words. */

import type { Basis } from '../prediction/basisType.ts';

/** Basis of lines, steps, release, dripping, strand, cooling and cracking. */
export const printSideBasis: Omit<Basis, 'doubt'> = {
  model: 'Line with round sides; melt as a spring that empties; thread that pinches off; lumped cooling; held cooling',
  assumptions: [
    'A line is a rectangle with half-round sides; neighbours lie without gap.',
    'Steps follow steady output at this pressure; measure to calibrate.',
    'After a stop the stored melt leaves forward through the nozzle and back through the filled channel, as a power-law melt fitted at this flow.',
    'A reversing screw takes up the stored melt; it does not pull back a fixed volume.',
    'Weight acts as if the machine stood upright and its melt were vented; the screw’s own hold is left out.',
    'Free melt has the viscosity of little shear at the outlet’s temperature; setting on the way is left out.',
    'A line cools in free air as one body, its heat of fusion leaving at the setting temperature.',
    'Stress is that of full hold from setting to the bed’s and the chamber’s temperature; creep lets part of it go.',
  ],
  source:
    'Section (w - h) h + pi h²/4, seen in open slicing code; Tait form (CRC Handbook, Wohlfarth); Young-Laplace; Tate 1864, Papageorgiou 1995 and Rayleigh 1879 (from memory); lumped cooling (heat-transfer texts); Callister, eq. 17.9',
  range: 'Line width at least the layer height; Biot number below 0.1; output per turn must be measured.',
};
