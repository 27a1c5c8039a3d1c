/** What each topic of the print side rests on, in words. */

import type { Basis } from '../prediction/basisType.ts';

/** Topics of the print side, in the order of deciding. */
export const printTopicIds = ['demand', 'line', 'strand', 'release', 'cooling', 'controller'] as const;

/** One of them. */
export type PrintTopicId = (typeof printTopicIds)[number];

const round = 'A line is a rectangle with half-round sides; neighbours lie without gap.';
const wide = 'Line width at least the layer height.';

/** A basis without its doubt, per topic. */
export const printTopicBases: Readonly<Record<PrintTopicId, Omit<Basis, 'doubt'>>> = {
  demand: {
    model: 'Line section times speed, against the steady output',
    assumptions: [round, 'Travel and idle shares lower the average, not what a line asks for while it is laid.'],
    source: 'Section (w - h) h + pi h²/4, seen in open slicing code; volume balance',
    range: wide,
  },
  line: {
    model: 'Line with round sides',
    assumptions: [round, 'Outer lines of a wall take a full width, the rest the spacing; the nearest count is taken.'],
    source: 'Section (w - h) h + pi h²/4, seen in open slicing code; proportions: common practice',
    range: wide,
  },
  strand: {
    model: 'Thread that pinches off; weight of standing melt against the skin at the orifice',
    assumptions: [
      'Free melt has the viscosity of little shear at the outlet’s temperature; setting on the way is left out.',
      'Weight acts as if the machine stood upright and its melt were vented; the screw’s own hold is left out.',
    ],
    source: 'Young-Laplace; Tate 1864, Papageorgiou 1995 and Rayleigh 1879 (from memory)',
    range: 'Melt without elasticity; threads of polymer melt hold longer than said.',
  },
  release: {
    model: 'Melt as a spring that empties',
    assumptions: [
      'After a stop the stored melt leaves forward through the nozzle and back through the filled channel, as a power-law melt fitted at this flow.',
      'A reversing screw takes up the stored melt; it does not pull back a fixed volume.',
    ],
    source: 'Tait form (CRC Handbook, Wohlfarth); volume balance',
    range: 'Melt without trapped air, which stores far more.',
  },
  cooling: {
    model: 'Lumped cooling of a free line; stress of held cooling',
    assumptions: [
      'A line cools in free air as one body, its heat of fusion leaving at the setting temperature.',
      'Stress is that of full hold from setting to the bed’s and the chamber’s temperature; creep lets part of it go.',
    ],
    source: 'Lumped cooling (heat-transfer texts); Callister, eq. 17.9',
    range: 'Biot number below 0.1.',
  },
  controller: {
    model: 'Steady output per turn of the screw',
    assumptions: [
      'Steps follow steady output at this pressure; measure to calibrate.',
      'A virtual filament is a length of round wire of the same volume.',
    ],
    source: 'Steps per turn over volume per turn; conventions of open printer firmware',
    range: 'This screw speed and pressure; output per turn falls with back pressure and wear.',
  },
};
