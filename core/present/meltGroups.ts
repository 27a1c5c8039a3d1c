/** Figures of what happens to the melt: residence, nozzle, print. */

import type { Prediction } from '../prediction/types.ts';
import { stepsPerFilamentLength } from '../print/bead.ts';
import { fromSi } from '../units.ts';
import type { Group } from './group.ts';
import { coolingRows, firmwareRows, fromLeast, lineRows, releaseRows } from './printRows.ts';
import { printTopicBasis, printTopicOf } from './printTopics.ts';
import { numberRow, quantityRow, whereFlowing } from './row.ts';
import { stepsPerCubicMm } from './steps.ts';
import type { PresentedGroup, PresentedRow } from './types.ts';

/** Keeps a number where melt flows. */
type Flowing = ReturnType<typeof whereFlowing>;

/** Residence. */
export const residence: Group = (prediction) => residenceRows(prediction, whereFlowing(prediction));

const residenceRows = ({ residence: r, dead }: Prediction, flowing: Flowing): PresentedGroup => ({
  id: 'residence',
  title: 'Residence',
  rows: [
    quantityRow({ id: 'mean', label: 'Mean', help: 'Melt volume over flow.', basis: r.basis }, flowing(r.mean), 's', 3),
    quantityRow({ id: 'min', label: 'Shortest', help: 'The first melt that leaves.' }, flowing(r.min), 's', 3),
    quantityRow({ id: 't50', label: 'Half has left by', help: 'Median.' }, flowing(r.t50), 's', 3),
    quantityRow(
      { id: 't95', label: '95 % has left by', help: 'One part in twenty stays longer.' },
      flowing(r.t95),
      's',
      3,
    ),
    quantityRow(
      { id: 't99', label: '99 % has left by', help: 'One part in a hundred stays longer.' },
      flowing(r.t99),
      's',
      3,
    ),
    quantityRow(
      {
        id: 'washout99',
        label: 'Washed out to 99 %',
        help: 'After a change of material: one part in a hundred is left.',
      },
      flowing(r.washout99),
      's',
      3,
    ),
    quantityRow(
      {
        id: 'washout999',
        label: 'Washed out to 99.9 %',
        help: 'After a change of material: one part in a thousand is left.',
      },
      flowing(r.washout999),
      's',
      3,
    ),
    ...r.parts.map((part) =>
      quantityRow(
        { id: `mean-${part.part}`, label: `Mean in the ${part.part}`, help: 'Volume of the part over flow.' },
        flowing(part.mean),
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
      flowing(dead.fractionOver3),
      '%',
      2,
    ),
    quantityRow(
      { id: 'over5', label: 'Volume older than 5 × mean', help: 'Share of the melt volume that hardly moves.' },
      flowing(dead.fractionOver5),
      '%',
      2,
    ),
  ],
});

/** Print. */
export const print: Group = (prediction) => {
  const group = printRows(prediction, whereFlowing(prediction));
  const basis = ({ id }: PresentedRow) => printTopicBasis(prediction.print, printTopicOf(id));
  return { ...group, rows: group.rows.map((row) => ({ ...row, basis: basis(row) })) };
};

/** Common diameters of filament, mm, but for the one that is set. */
const otherFilaments = ({ firmware }: Prediction['print']): number[] =>
  [1.75, 2.85].filter((diameter) => Math.abs(fromSi(firmware.filamentDiameter, 'mm') - diameter) > 1e-6);

const printRows = ({ print: p }: Prediction, flowing: Flowing): PresentedGroup => ({
  id: 'print',
  title: 'Print',
  rows: [
    quantityRow(
      { id: 'demand', label: 'Asked while laying a line', help: 'Line section times print speed.' },
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
    ...lineRows(p),
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
      flowing(stepsPerCubicMm(p.stepsPerVolume)),
      'steps/mm³',
      5,
    ),
    ...otherFilaments(p).map((diameter) =>
      numberRow(
        {
          id: `stepsPerMm-${diameter}`,
          label: `E steps per mm, Ø\u00a0${diameter}\u00a0mm`,
          help: 'For a virtual filament of this diameter, in which printer firmware counts the E axis.',
        },
        flowing(stepsPerFilamentLength(stepsPerCubicMm(p.stepsPerVolume), diameter)),
        'steps/mm',
        5,
      ),
    ),
    ...firmwareRows(p),
    fromLeast(
      quantityRow(
        {
          id: 'pressureTime',
          label: 'Pressure time constant',
          help: 'Time constant of a stopped screw for small changes, the one that open printer firmware asks for.',
        },
        flowing(p.pressureTime),
        's',
        2,
      ),
      0.001,
    ),
    ...releaseRows(p, flowing),
    ...coolingRows(p),
  ],
});

/** Nozzle. */
export const nozzle: Group = (prediction) => ({
  id: 'nozzle',
  title: 'Pressure from the screw’s end to the orifice',
  rows: prediction.nozzle.map(
    (drop, i): PresentedRow =>
      quantityRow(
        {
          id: `${i}-${drop.name}`,
          label: drop.name,
          help: 'Pressure lost in this piece.',
          basis: prediction.output.basis,
        },
        whereFlowing(prediction)(drop.pressureDrop),
        'MPa',
        3,
      ),
  ),
});
