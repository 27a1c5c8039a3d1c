/** Figures of what happens to the melt: residence, colour, nozzle, print. */

import { stepsPerFilamentLength } from '../print/bead.ts';
import type { Group } from './group.ts';
import { numberRow, quantityRow, textRow } from './row.ts';
import type { PresentedRow } from './types.ts';

/** Residence. */
export const residence: Group = ({ residence: r, dead }) => ({
  id: 'residence',
  title: 'Residence',
  rows: [
    quantityRow({ id: 'mean', label: 'Mean', help: 'Melt volume over flow.', basis: r.basis }, r.mean, 's', 3),
    quantityRow({ id: 'min', label: 'Shortest', help: 'The first melt that leaves.' }, r.min, 's', 3),
    quantityRow({ id: 't50', label: 'Half has left by', help: 'Median.' }, r.t50, 's', 3),
    quantityRow({ id: 't95', label: '95 % has left by', help: 'One part in twenty stays longer.' }, r.t95, 's', 3),
    quantityRow({ id: 't99', label: '99 % has left by', help: 'One part in a hundred stays longer.' }, r.t99, 's', 3),
    quantityRow(
      {
        id: 'washout999',
        label: 'Washed out to 99.9 %',
        help: 'After a change of material: one part in a thousand is left.',
      },
      r.washout999,
      's',
      3,
    ),
    ...r.parts.map((part) =>
      quantityRow(
        { id: `mean-${part.part}`, label: `Mean in the ${part.part}`, help: 'Volume of the part over flow.' },
        part.mean,
        's',
        3,
      ),
    ),
    quantityRow(
      {
        id: 'over3',
        label: 'Volume older than 3 × mean',
        help: 'Share of the melt volume that lingers.',
        basis: dead.basis,
      },
      dead.fractionOver3,
      '%',
      2,
    ),
    quantityRow(
      { id: 'over5', label: 'Volume older than 5 × mean', help: 'Share of the melt volume that hardly moves.' },
      dead.fractionOver5,
      '%',
      2,
    ),
  ],
});

/** Colour. */
export const colour: Group = ({ colour: c }) => ({
  id: 'colour',
  title: 'Colour',
  rows: [
    numberRow(
      {
        id: 'dE00Mean',
        label: 'Mean shift, dE00',
        help: 'Colour difference of the extrudate from the fresh granulate.',
        basis: c.basis,
      },
      c.dE00Mean,
      '',
      2,
    ),
    numberRow(
      { id: 'dE00Worst', label: 'Worst streak, dE00', help: 'The oldest hundredth of the extrudate.' },
      c.dE00Worst,
      '',
      2,
    ),
    textRow({ id: 'reason', label: 'Note', help: 'Why the colour cannot be said, where it cannot.' }, c.reason ?? ''),
  ],
});

/** Print. */
export const print: Group = ({ print: p }) => ({
  id: 'print',
  title: 'Print',
  rows: [
    quantityRow(
      { id: 'demand', label: 'Asked while laying a line', help: 'Line section times print speed.', basis: p.basis },
      p.demand,
      'mm³/s',
    ),
    quantityRow(
      { id: 'meanDemand', label: 'Asked on average', help: 'Over travel and idle shares.' },
      p.meanDemand,
      'mm³/s',
    ),
    numberRow({ id: 'margin', label: 'Supply over demand', help: 'At least 1 is wanted.' }, p.margin, '×', 3),
    quantityRow(
      { id: 'highestSpeed', label: 'Fastest print', help: 'Print speed that uses all the output.' },
      p.highestSpeed,
      'mm/s',
      3,
    ),
    quantityRow(
      { id: 'speedForDemand', label: 'Screw speed for the demand', help: 'Where the output meets the demand.' },
      p.speedForDemand,
      'rpm',
      3,
    ),
    numberRow(
      { id: 'passesPerWall', label: 'Passes per wall', help: 'Lines side by side for the wall thickness.' },
      p.passesPerWall,
      '',
      3,
    ),
    numberRow(
      {
        id: 'stepsPerMm3',
        label: 'Motor steps per mm³',
        help: 'Microsteps per volume at this pressure; measure to calibrate.',
      },
      p.stepsPerVolume * 1e-9,
      'steps/mm³',
      5,
    ),
    ...[1.75, 2.85].map((diameter) =>
      numberRow(
        {
          id: `stepsPerMm-${diameter}`,
          label: `Steps per mm of virtual ${diameter} mm filament`,
          help: 'For firmware that thinks in filament length (steps per unit of the E axis).',
        },
        stepsPerFilamentLength(p.stepsPerVolume * 1e-9, diameter),
        'steps/mm',
        5,
      ),
    ),
    quantityRow(
      {
        id: 'pressureTime',
        label: 'Pressure lets go in',
        help: 'Time constant of a stopped screw through the nozzle; firmware calls it pressure advance.',
      },
      p.pressureTime,
      's',
      2,
    ),
  ],
});

/** Nozzle. */
export const nozzle: Group = ({ nozzle: drops }) => ({
  id: 'nozzle',
  title: 'Pressure from the screw’s end to the orifice',
  rows: drops.map(
    (drop, i): PresentedRow =>
      quantityRow(
        { id: `${i}-${drop.name}`, label: drop.name, help: 'Pressure lost in this piece.' },
        drop.pressureDrop,
        'MPa',
        3,
      ),
  ),
});
