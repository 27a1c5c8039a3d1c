/** Rows of strength, bearing, walls and stepping. */

import type { DriveLoad } from '../prediction/types.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import { numberRow, quantityRow, textRow } from './row.ts';
import type { PresentedRow } from './types.ts';

/** Names of the places that carry torque. */
const placeNames = {
  root: 'root',
  shoulder: 'step between sections',
  shank: 'shank',
  shankShoulder: 'step from shank to screw',
} as const;

/** Torque by cause; `flowing` empties what says nothing where no melt moves. */
const torquePartRows = ({ parts }: DriveLoad, flowing: (value: number) => number | null): PresentedRow[] => {
  const unknown = (value: number | null) => (value === null ? null : flowing(value));
  return [
    quantityRow(
      { id: 'torqueChannelPart', label: 'Torque in the channel', help: 'Shear of the melt between screw and barrel.' },
      flowing(parts.channel),
      'N·m',
      3,
    ),
    quantityRow(
      { id: 'torqueTip', label: 'Torque round the tip', help: 'Melt dragged round by the turning tip.' },
      flowing(parts.tip),
      'N·m',
      3,
    ),
    quantityRow(
      { id: 'torqueFilm', label: 'Torque in the melt film', help: 'Film between granules and barrel.' },
      unknown(parts.film),
      'N·m',
      3,
    ),
    quantityRow(
      { id: 'torqueSolids', label: 'Torque of granules', help: 'Granules rubbing in the feed; empty: not computed.' },
      unknown(parts.solids),
      'N·m',
      3,
    ),
  ];
};

const motorRows = (d: DriveLoad, flowing: (value: number) => number | null): PresentedRow[] => [
  numberRow(
    { id: 'motorMargin', label: 'Stall over running', help: 'Pull-out torque over torque; 1.5 to 2 is wanted.' },
    d.motorMargin === null ? null : flowing(d.motorMargin),
    '×',
    3,
  ),
  quantityRow(
    { id: 'fullSteps', label: 'Full steps', help: 'Steppers may shake at some rates, often below 60 a second.' },
    d.stepping.fullSteps,
    '1/s',
    3,
  ),
  quantityRow(
    { id: 'microstepRate', label: 'Microsteps', help: 'What the controller must make for this motor alone.' },
    d.stepping.microsteps,
    '1/s',
    3,
  ),
];

const rootRows = ({ worstRoot, twistFull }: DriveLoad): PresentedRow[] => [
  textRow(
    { id: 'weakestPlace', label: 'Weakest place', help: 'Least margin of yield under full torque and thrust.' },
    `${placeNames[worstRoot.kind]}, ${formatQuantity(worstRoot.diameter, 'mm', 3)} at ${formatQuantity(worstRoot.z, 'mm', 3)}`,
  ),
  numberRow(
    {
      id: 'stepFactor',
      label: 'its stress concentration',
      help: '1 without a step; 2.2 for a sharp or unknown fillet.',
    },
    worstRoot.factor,
    '×',
    3,
  ),
  quantityRow(
    { id: 'worstShear', label: 'its shear under full torque', help: 'With the stress concentration.' },
    worstRoot.full,
    'MPa',
    3,
  ),
  numberRow(
    { id: 'rootMargin', label: 'its margin to yield', help: 'Torsion and thrust together; bending is not counted.' },
    worstRoot.margin,
    '×',
    3,
  ),
  quantityRow(
    { id: 'twistFull', label: 'Wind-up under full torque', help: 'Twist from shank to tip.' },
    twistFull,
    '°',
    3,
  ),
];

const thrustRows = (d: DriveLoad): PresentedRow[] => [
  quantityRow(
    { id: 'thrustBlocked', label: 'Thrust when blocked', help: 'At the highest pressure the motor can hold.' },
    d.thrustBlocked,
    'N',
    3,
  ),
  quantityRow(
    { id: 'bucklingFree', label: 'Bows when held at one end', help: 'Euler load of the least root; then it rubs.' },
    d.bucklingFree,
    'N',
    3,
  ),
  textRow(
    { id: 'bearingMargin', label: 'Bearing margin at rest', help: 'Static rating over thrust: running; blocked.' },
    d.bearing === null
      ? 'no bearing given'
      : `${times(d.bearing.staticMargin)}; ${times(d.bearing.staticMarginBlocked)}`,
  ),
  quantityRow(
    { id: 'bearingLife', label: 'Bearing life', help: 'That nine in ten outlast at the running thrust.' },
    d.bearing?.lifeTime ?? null,
    'h',
    3,
  ),
  ...d.walls.map((wall) =>
    quantityRow(
      {
        id: `wall-${wall.part.replace(' ', '-')}`,
        label: `Stress of the ${wall.part} wall`,
        help: 'Greatest-shear equivalent at the bore under the highest pressure, to hold against yield.',
      },
      wall.equivalent,
      'MPa',
      3,
    ),
  ),
];

const times = (value: number | null): string => (value === null ? '–' : `${formatNumber(value, 3)} ×`);

/** Rows after the drive's main figures. */
export const strengthRows = (d: DriveLoad, flowing: (value: number) => number | null): PresentedRow[] => [
  ...torquePartRows(d, flowing),
  ...motorRows(d, flowing),
  ...rootRows(d),
  ...thrustRows(d),
];
