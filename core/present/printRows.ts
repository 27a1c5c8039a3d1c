/** Rows of line, firmware, release, strand, cooling and cooling stress. */

import type { PrintMatch } from '../prediction/types.ts';
import { formatNumber, formatQuantity, fromSi } from '../units.ts';
import { numberRow, quantityRow, textRow } from './row.ts';
import type { PresentedRow } from './types.ts';

/** Empties what says nothing where no melt moves. */
type Flowing = (value: number) => number | null;

const strandWords = {
  strand: 'stays a strand',
  sags: 'necks and sags',
  drips: 'breaks into drops',
} as const;

const stressWords = {
  low: 'below half the strength',
  risky: 'above half the strength',
  exceeds: 'above the strength',
} as const;

/** Section and proportions of the line. */
export const lineRows = ({ line }: PrintMatch): PresentedRow[] => [
  quantityRow({ id: 'lineArea', label: 'Line section', help: 'With rounded sides.' }, line.area, 'mm²', 4),
  quantityRow(
    { id: 'rectangleArea', label: 'as a rectangle', help: 'What some calculators take; an upper bound.' },
    line.rectangleArea,
    'mm²',
    4,
  ),
  quantityRow(
    { id: 'fittedWidth', label: 'Width that fills the wall', help: 'With the passes below and no gap.' },
    line.fittedWidth,
    'mm',
    3,
  ),
  textRow(
    { id: 'lineToBore', label: 'Line to bore', help: 'Width 1.05 to 1.5 and height 0.2 to 0.8 bores lay well.' },
    `${formatNumber(line.widthOverBore, 3)} wide, ${formatNumber(line.heightOverBore, 3)} high`,
  ),
];

/** Steps and release as firmware wants them. */
export const firmwareRows = ({ firmware }: PrintMatch): PresentedRow[] => [
  numberRow(
    {
      id: 'stepsPerMm-set',
      label: `E steps per mm, Ø\u00a0${formatNumber(fromSi(firmware.filamentDiameter, 'mm'), 4)}\u00a0mm`,
      help: firmware.lengthIsVolume
        ? `With a virtual filament of ${formatQuantity(firmware.filamentDiameter, 'mm', 7)}, 1 mm of which is 1 mm³.`
        : 'For the virtual filament that the print settings give.',
    },
    firmware.stepsPerLength === null ? null : firmware.stepsPerLength / 1000,
    'steps/mm',
    5,
  ),
  quantityRow(
    { id: 'fullStepVolume', label: 'Melt per full step', help: 'The grain in which the motor can meter.' },
    firmware.fullStepVolume,
    'mm³',
    3,
  ),
  quantityRow(
    { id: 'demandStepRate', label: 'Microsteps at the demand', help: 'While a line is laid.' },
    firmware.demandStepRate,
    '1/s',
    3,
  ),
  quantityRow(
    {
      id: 'releaseAngle',
      label: 'Turn back to release',
      help: 'Takes up the stored melt without slip; a screw does not pull back a fixed volume.',
    },
    firmware.releaseAngle,
    '°',
    3,
  ),
  quantityRow(
    { id: 'releaseLength', label: 'the same as virtual filament', help: 'For a retract length.' },
    firmware.releaseLength,
    'mm',
    3,
  ),
];

const range = ({ low, high }: { low: number; high: number }, unit: 'mm³' | 's'): string =>
  ` Range ${formatNumber(fromSi(low, unit), 2)} to ${formatQuantity(high, unit, 2)}.`;

/** A quantity that means nothing once it is below `least` of its unit; the number itself stays. */
export function fromLeast(row: PresentedRow, least: number): PresentedRow {
  const tiny = row.value !== null && row.value > 0 && row.value < least;
  return tiny ? { ...row, text: `below ${least} ${row.unit}` } : row;
}

/** Ooze and dripping. */
export const releaseRows = ({ release, drip }: PrintMatch, flowing: Flowing): PresentedRow[] => [
  fromLeast(
    quantityRow(
      {
        id: 'ooze',
        label: 'Oozes after a stop',
        help: `Stored melt that leaves forward.${range(release.ooze, 'mm³')}`,
      },
      flowing(release.ooze.value),
      'mm³',
      3,
    ),
    0.001,
  ),
  fromLeast(
    quantityRow(
      {
        id: 'oozeTime',
        label: 'nine tenths of it within',
        help: `Thin melts have a long tail.${range(release.time90, 's')}`,
      },
      flowing(release.time90.value),
      's',
      3,
    ),
    0.001,
  ),
  quantityRow(
    { id: 'nozzleShare', label: 'Share that goes forward', help: 'The rest leaks back through the screw.' },
    flowing(release.nozzleShare),
    '%',
    3,
  ),
  fromLeast(
    quantityRow(
      {
        id: 'dripRate',
        label: 'Drips at standstill',
        help: 'Upright, vented, the screw’s hold left out: at most this.',
      },
      drip.rate,
      'mm³/s',
      3,
    ),
    0.001,
  ),
  quantityRow(
    { id: 'dropMass', label: 'a drop weighs', help: 'Hanging from the orifice’s rim.' },
    drip.dropMass,
    'mg',
    2,
  ),
];

/** Strand, cooling and stress. */
export const coolingRows = ({ strand, cooling, crack }: PrintMatch): PresentedRow[] => [
  textRow(
    { id: 'strand', label: 'Free melt', help: 'Pinch-off time against the time across the gap to the layer.' },
    strand.verdict === null ? 'cannot be told' : strandWords[strand.verdict],
  ),
  numberRow(
    { id: 'strandNumber', label: 'Pinch-off over gap time', help: 'Below 1 drops, from 10 a strand.' },
    strand.number,
    '×',
    3,
  ),
  numberRow(
    {
      id: 'capillaryNumber',
      label: 'Capillary number',
      help: 'Viscous over capillary force; well above 1 holds shape.',
    },
    strand.capillary,
    '',
    3,
  ),
  quantityRow(
    {
      id: 'setTime',
      label: 'A free line sets in',
      help: cooling.lumped ? 'In air, as one body.' : 'In air; the line is thick, its core sets later.',
    },
    cooling.setTime,
    's',
    2,
  ),
  textRow(
    { id: 'coolingStress', label: 'Stress of cooling, held', help: 'From setting to the cooler of bed and chamber.' },
    crack.verdict === null
      ? 'cannot be told: the material’s mechanics are unknown'
      : `${formatQuantity(Math.max(crack.bedStress ?? 0, crack.chamberStress ?? 0), 'MPa', 3)}, ${stressWords[crack.verdict]}`,
  ),
  wantedRow(crack),
];

/** Colder than this no room is in which one prints, K; own choice. */
const coldestRoom = 283.15;

/** The temperature that bed and chamber should have, and whether they have it. */
function wantedRow({ wantedTemperature, bed, chamber }: PrintMatch['crack']): PresentedRow {
  const words = {
    id: 'wantedBed',
    label: 'Bed and chamber at least',
    help: 'Keeps that stress under half the strength.',
  };
  if (wantedTemperature !== null && wantedTemperature < coldestRoom) return textRow(words, 'any room will do');
  const row = quantityRow(words, wantedTemperature, '°C', 3);
  const met = wantedTemperature !== null && wantedTemperature <= Math.min(bed, chamber);
  return met ? { ...row, text: `${row.text}, is met` } : row;
}
