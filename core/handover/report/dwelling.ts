/** Where melt stays long: maps from solved fields, and the table of dead spots. */

import type { DeadSpot } from '../../prediction/types.ts';
import { formatNumber, formatQuantity, fromSi } from '../../units.ts';
import { dwellPictures } from './dwellPicture.ts';
import { type Block, type Cell, cell, paragraph, type ReportSection, table } from './model.ts';
import { idOf, type ReportSubject, titleOf } from './source.ts';

const seconds = (value: number): string => (Number.isFinite(value) ? formatNumber(value, 3) : '–');

function spotRow(spot: DeadSpot, i: number): (string | Cell)[] {
  const mm = (si: number) => formatNumber(fromSi(si, 'mm'), 4);
  const stained = spot.dE00 === undefined || spot.dE00 === null;
  return [
    cell(String(i + 1), { strong: true }),
    `${spot.part}: ${spot.where}`,
    spot.zTo > spot.zFrom ? `${mm(spot.zFrom)} to ${mm(spot.zTo)}` : mm(spot.z),
    formatQuantity(spot.volume, 'mm³', 3).replace(' mm³', ''),
    seconds(spot.meanAge),
    stained ? cell('–') : cell(formatNumber(spot.dE00, 2), spot.srgb ? { swatch: spot.srgb } : {}),
    `${spot.cause}. ${spot.remedy}`,
  ];
}

/** The table, or why there is none. */
function spotBlocks(subject: ReportSubject): Block[] {
  const { dead, fields, output } = subject.prediction;
  if (!fields) return [paragraph('Dead spots were not looked for: they need solved fields.')];
  if (dead.spots.length === 0) return [paragraph('No dead spot was found in channel, tip or nozzle.')];
  const older = [dead.fractionOver3, dead.fractionOver5].map((share) => `${formatNumber(100 * share, 2)} %`);
  return [
    table(
      idOf(subject, 'dead-spots'),
      'Dead spots: where melt lingers, and what would help',
      [
        'No.|5',
        'Where|21',
        'From – to (mm)|13',
        'Volume (mm³)|10|right',
        'Age (s)|8|right',
        'ΔE00|12|right',
        'Cause and remedy|31',
      ],
      dead.spots.map(spotRow),
    ),
    ...(output.flows
      ? [paragraph(`${older[0]} of the melt’s volume is older than 3 × mean, ${older[1]} older than 5 × mean.`)]
      : []),
  ];
}

function mapBlocks(subject: ReportSubject): Block[] {
  const { revision, design, prediction } = subject;
  const { channel, head } = dwellPictures(revision, design, prediction);
  const numbers = prediction.dead.spots.length > 0 ? ' Numbers are those of the table of dead spots.' : '';
  const spots = prediction.dead.spots.map((spot, i) => `${i + 1}: ${spot.part}, ${spot.where}`).join('; ');
  const list = spots === '' ? 'No dead spot is marked.' : `Dead spots: ${spots}.`;
  return [
    ...(channel
      ? [
          {
            kind: 'figure' as const,
            id: idOf(subject, 'map-channel'),
            caption: `Time spent in each place of the molten channel over the mean there, in a half-plane through the axis; radii stretched ${channel.stretch} times.${numbers}`,
            alt: `Map of the melt-filled channel between the flights, coloured by time spent over the mean: light where melt moves on, dark where it lingers. ${list}`,
            picture: channel.picture,
          },
        ]
      : []),
    ...(head
      ? [
          {
            kind: 'figure' as const,
            id: idOf(subject, 'map-head'),
            caption: `The same for tip and nozzle, over the mean of tip and nozzle; true to scale.${numbers}`,
            alt: `Map of the melt around the tip and in the nozzle, coloured by time spent over the mean. ${list}`,
            picture: head.picture,
          },
        ]
      : []),
  ];
}

/** Maps and dead spots of one revision. */
export function dwellSection(subject: ReportSubject): ReportSection {
  const { prediction } = subject;
  const { residence, output, dead } = prediction;
  const parts = residence.parts.map(({ part, mean }) => `${part} ${formatNumber(mean, 3)} s`).join(', ');
  const told = output.flows
    ? `Melt stays ${formatNumber(residence.mean, 3)} s on average (${parts}); 95 % has left after ${formatNumber(residence.t95, 3)} s, 99 % after ${formatNumber(residence.t99, 3)} s.`
    : 'Nothing flows at the set speed, so nothing can be said of how long melt stays.';
  return {
    id: idOf(subject, 'dwell'),
    title: titleOf(subject, 'Where melt stays long'),
    blocks: [
      paragraph(told),
      ...(prediction.fields ? [] : [paragraph('No field was solved, so there is no map.', 'warning')]),
      ...mapBlocks(subject),
      ...spotBlocks(subject),
      ...(dead.basis.doubt === null ? [] : [paragraph(`Doubtful here: ${dead.basis.doubt}`, 'warning')]),
    ],
  };
}
