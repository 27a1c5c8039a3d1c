/** Bearing, motor, gear and driver as lines of the parts list. Figures are the design's. */

import { formatNumber, formatQuantity } from '../../units.ts';
import type { HandoverSubject } from '../types.ts';
import { type Part, unknown } from './part.ts';

/** Thrust that the bearing meets, where it was predicted. */
function thrustFigures({ prediction }: HandoverSubject): string[] {
  if (!prediction) return [];
  const { thrust, thrustBlocked } = prediction.drive;
  const force = (value: number) => formatQuantity(value, 'N', 3);
  return [`predicted thrust ${force(thrust)} running, ${force(thrustBlocked)} with the nozzle blocked`];
}

function bearingPart(subject: HandoverSubject): Part {
  const { bearing } = subject.design.drive;
  const rating = (load: number | null) => (load === null ? unknown : formatQuantity(load, 'N', 4));
  const ratings = bearing && [
    `static rating ${rating(bearing.staticLoad)}`,
    `dynamic rating ${rating(bearing.dynamicLoad)}`,
  ];
  return {
    name: bearing ? `thrust bearing, ${bearing.kind}` : 'thrust bearing',
    quantity: bearing ? 1 : null,
    source: 'buy',
    figures: [...(ratings ?? [unknown]), ...thrustFigures(subject)],
  };
}

/** Thrust bearing, motor with its driver, and the gear where there is one; ratings and thrust in N, torque in N·m. */
export function driveParts(subject: HandoverSubject): Part[] {
  const { drive } = subject.design;
  const { motorCurve } = drive;
  const best = motorCurve.reduce((a, b) => (b.torque > a.torque ? b : a));
  const last = motorCurve[motorCurve.length - 1] ?? best;
  const gear: Part = {
    name: 'gear',
    quantity: 1,
    source: 'buy',
    figures: [
      `ratio ${formatNumber(drive.gearRatio, 4)}`,
      `efficiency ${formatNumber(100 * drive.gearEfficiency, 3)} %`,
    ],
  };
  const at = ({ speed, torque }: { speed: number; torque: number }) =>
    `${formatQuantity(torque, 'N·m', 3)} at ${formatQuantity(speed, 'rpm', 3)}`;
  return [
    bearingPart(subject),
    {
      name: 'stepping motor',
      quantity: 1,
      source: 'buy',
      figures: [
        `pull-out ${at(best)}, ${at(last)}`,
        `${drive.fullStepsPerTurn} full steps a turn`,
        `frame and current ${unknown}`,
      ],
    },
    ...(drive.gearRatio === 1 ? [] : [gear]),
    {
      name: 'motor driver',
      quantity: 1,
      source: 'buy',
      figures: [`${drive.microsteps} microsteps a full step`, `current and voltage ${unknown}`],
    },
  ];
}
