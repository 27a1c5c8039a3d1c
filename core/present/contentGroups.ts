/** Figures of feeding, melting and the cold end. */

import type { Prediction } from '../prediction/types.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import type { Group } from './group.ts';
import { numberRow, quantityRow, textRow, whereFlowing } from './row.ts';
import type { PresentedGroup, PresentedRow } from './types.ts';

/** What holds the supply of granules down. */
const feedLimits = {
  hopper: 'the hopper’s outlet or opening',
  plug: 'the screw’s own intake',
  trough: 'the screw’s own intake, loose as in a trough',
  feeder: 'the feeder',
} as const;

/** Granules between hopper and melt. */
export const feeding: Group = (prediction) => ({
  id: 'feeding',
  title: 'Hopper and granules',
  rows: [...outletRows(prediction), ...emptyingRows(prediction), ...plugRows(prediction, whereFlowing(prediction))],
});

function outletRows({ solids: { hopper, basis } }: Prediction): PresentedRow[] {
  const { cohesive } = hopper;
  return [
    quantityRow(
      {
        id: 'hopperDischarge',
        label: 'Hopper lets out',
        help: 'By gravity, through outlet and feed opening, if nothing arches.',
        basis,
      },
      hopper.discharge,
      'g/min',
      3,
    ),
    numberRow(
      { id: 'outletRatio', label: 'Outlet over largest granule', help: 'Narrow outlets arch; there is no safe ratio.' },
      hopper.outletRatio,
      `of ${formatNumber(hopper.outletRatioWanted, 2)} wanted`,
      3,
    ),
    quantityRow(
      {
        id: 'cohesiveOutlet',
        label: 'Least outlet for its cohesion',
        help: cohesive.assumed ? 'Cohesion is not known; free-flowing granulate is assumed.' : 'After Jenike.',
      },
      cohesive.outlet,
      'mm',
      3,
    ),
  ];
}

function emptyingRows({ solids: { hopper } }: Prediction): PresentedRow[] {
  return [
    textRow(
      {
        id: 'hopperFlow',
        label: 'Hopper empties',
        help: 'In a funnel, granules at the wall stand until the end and age beside a warm throat.',
      },
      hopper.flow.kind === 'mass' ? 'all at once (mass flow)' : 'through a funnel',
    ),
    quantityRow(
      {
        id: 'throatPressure',
        label: 'Pressure on the screw',
        help: 'Of the granulate in the hopper; walls carry the rest.',
      },
      hopper.throatPressure,
      'Pa',
      3,
    ),
  ];
}

function plugRows({ solids: s }: Prediction, flowing: ReturnType<typeof whereFlowing>): PresentedRow[] {
  const packed = s.packedFrom !== null && s.packedTo !== null ? s.packedTo - s.packedFrom : 0;
  const free = (value: number) => formatQuantity(value, 'g/min', 3);
  return [
    textRow(
      { id: 'feedLimitedBy', label: 'Supply held down by', help: 'Whatever of feeder, hopper and screw gives least.' },
      feedLimits[s.limitedBy],
    ),
    textRow(
      {
        id: 'plugFree',
        label: 'A plug alone would carry',
        help: 'Without pressure to push against: at nominal friction, and between the ends of its range. Where this is less, granules tumble along loose as in a trough, 30 % of a turn, and the feed capacity counts that.',
        basis: s.basis,
      },
      `${free(s.nominal.freeFlow)} (${free(s.low.freeFlow)} to ${free(s.high.freeFlow)})`,
    ),
    quantityRow(
      { id: 'packedLength', label: 'Packed length', help: 'Of granules pressed together ahead of the melt.' },
      flowing(packed),
      'mm',
      3,
    ),
    quantityRow(
      {
        id: 'buildable',
        label: 'Plug could build',
        help: 'Pressure by where melting begins, at this flow; capped where granules yield.',
      },
      flowing(s.nominal.buildable),
      'MPa',
      2,
    ),
  ];
}

/** Melting. */
export const melting: Group = (prediction) => meltingRows(prediction, whereFlowing(prediction));

const meltingRows = ({ melting: m }: Prediction, flowing: ReturnType<typeof whereFlowing>): PresentedGroup => ({
  id: 'melting',
  title: 'Melting',
  rows: [...placeRows(m), ...engagementRows(m, flowing)],
});

const place = (value: number | null) => (value === null ? 'beyond the screw' : formatQuantity(value, 'mm', 3));

/** Where granules soften, begin to melt and are molten. */
const placeRows = (m: Prediction['melting']): PresentedRow[] => [
  quantityRow(
    { id: 'softensAt', label: 'Softens at z', help: 'Where granules begin to stick.', basis: m.basis },
    m.softensAt,
    'mm',
    3,
  ),
  quantityRow({ id: 'meltsFrom', label: 'First melt at z', help: 'Where melt first appears.' }, m.meltsFrom, 'mm', 3),
  textRow(
    {
      id: 'meltedAt',
      label: 'Molten by z',
      help: 'Nothing solid left. In brackets: by conduction alone, and by a film on a packed bed.',
      basis: m.basis,
    },
    `${place(m.ends.suited)} (${place(m.ends.conduction)}; ${place(m.ends.film)})`,
  ),
];

/** How the flights end against the melt. */
const engagementRows = (
  { engagement }: Prediction['melting'],
  flowing: ReturnType<typeof whereFlowing>,
): PresentedRow[] => [
  quantityRow(
    {
      id: 'flightInMelt',
      label: 'Flight in the melt',
      help: 'Length of flight behind the end of melting; negative where the flights end before it and push no melt.',
    },
    flowing(engagement.beyond),
    'mm',
    3,
  ),
  quantityRow(
    { id: 'unmelted', label: 'Solid at the last flight', help: 'Share of the mass that is not yet molten there.' },
    flowing(engagement.unmelted),
    '%',
    2,
  ),
];

const creepRow = (
  state: string,
  word: string,
  { coldEnd: creep, lostShare }: Prediction['coldEnd']['running'],
): PresentedRow =>
  textRow(
    {
      id: `creep-${state}`,
      label: `Heat creeping back, ${word}`,
      help: 'Through wall or heat break, and through the screw core; the share of the heaters’ watts lost this way.',
    },
    `${formatQuantity(creep.wall, 'W', 2)} + ${formatQuantity(creep.core, 'W', 2)} (${formatQuantity(lostShare, '%', 2)})`,
  );

/** Cold end. */
export const coldEnd: Group = ({ coldEnd: c }) => ({
  id: 'coldEnd',
  title: 'Throat and heat creep',
  rows: (['running', 'standing'] as const).flatMap((state) => {
    const word = state === 'running' ? 'running' : 'standing hot';
    const { margin, wall, core } = c[state];
    return [
      quantityRow(
        {
          id: `throatMargin-${state}`,
          label: `Below softening, ${word}`,
          help: 'Softening less the hottest of wall, core and granules under the feed opening.',
          basis: c.basis,
        },
        margin,
        'ΔK',
        3,
      ),
      quantityRow(
        { id: `throatWall-${state}`, label: `Wall in the throat, ${word}`, help: 'Hottest under the feed opening.' },
        wall,
        '°C',
        3,
      ),
      quantityRow(
        { id: `throatCore-${state}`, label: `Screw in the throat, ${word}`, help: 'Hottest under the feed opening.' },
        core,
        '°C',
        3,
      ),
      creepRow(state, word, c[state]),
    ];
  }),
});
