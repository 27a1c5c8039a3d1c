/** Figures of the machine: geometry, drive, heat. */

import type { Prediction } from '../prediction/types.ts';
import { formatQuantity } from '../units.ts';
import type { Group } from './group.ts';
import { numberRow, quantityRow, textRow, whereFlowing } from './row.ts';
import { strengthRows } from './strengthRows.ts';
import type { PresentedGroup, PresentedRow } from './types.ts';

/** Geometry. */
export const geometry: Group = ({ geometry: g }) => ({
  id: 'geometry',
  title: 'Geometry',
  rows: [
    numberRow(
      {
        id: 'compressionRatio',
        label: 'Compression',
        help: 'Free volume per turn at the feed over that at the last flight.',
      },
      g.compressionRatio,
      '',
      3,
    ),
    quantityRow(
      {
        id: 'feedVolumePerTurn',
        label: 'Feed volume per turn',
        help: 'Free volume of one turn under the feed opening.',
      },
      g.feedVolumePerTurn,
      'cm³',
      3,
    ),
    quantityRow(
      { id: 'channelVolume', label: 'Channel volume', help: 'Free volume of the whole screw channel.' },
      g.channelVolume,
      'cm³',
      3,
    ),
    quantityRow(
      { id: 'headVolume', label: 'Tip and nozzle volume', help: 'Melt between the last flight and the orifice.' },
      g.tipVolume + g.nozzleVolume,
      'cm³',
      3,
    ),
    quantityRow(
      {
        id: 'tipGap',
        label: 'Gap ahead of the tip',
        help: 'From the foremost point to the first narrowing; negative inside a cone.',
      },
      g.tipGap,
      'mm',
      3,
    ),
    quantityRow(
      { id: 'leastRoot', label: 'Least root diameter', help: 'The thinnest place that carries torque.' },
      g.leastRootDiameter,
      'mm',
      3,
    ),
  ],
});

/** Drive. */
export const drive: Group = (prediction) => driveRows(prediction, whereFlowing(prediction));

const driveRows = ({ drive: d }: Prediction, flowing: ReturnType<typeof whereFlowing>): PresentedGroup => ({
  id: 'drive',
  title: 'Drive and strength',
  rows: [
    quantityRow(
      { id: 'torque', label: 'Torque', help: 'Of granules and melt on the screw.', basis: d.basis },
      flowing(d.torque),
      'N·m',
      3,
    ),
    quantityRow(
      {
        id: 'torqueClearance',
        label: 'of it over the flight land',
        help: 'Shear in the gap between flight and barrel.',
      },
      flowing(d.torqueClearance),
      'N·m',
      3,
    ),
    quantityRow(
      { id: 'torqueUsable', label: 'Torque available', help: 'What the drive may give at this speed.' },
      d.torqueUsable,
      'N·m',
      3,
    ),
    quantityRow({ id: 'power', label: 'Power at the screw', help: 'Torque times speed.' }, flowing(d.power), 'W', 3),
    quantityRow(
      { id: 'motorSpeed', label: 'Motor speed', help: 'Screw speed times gear ratio.' },
      d.motorSpeed,
      'rpm',
      3,
    ),
    quantityRow(
      { id: 'rootShear', label: 'Shear in the root', help: 'Torsional stress of the least root when running.' },
      flowing(d.rootShear),
      'MPa',
      3,
    ),
    quantityRow(
      {
        id: 'rootShearFull',
        label: 'with the motor’s full torque',
        help: 'The same when a jam takes all the motor has.',
      },
      d.rootShearFull,
      'MPa',
      3,
    ),
    quantityRow({ id: 'thrust', label: 'Thrust', help: 'Axial force on the bearing.' }, flowing(d.thrust), 'N', 3),
    quantityRow(
      {
        id: 'blockedPressure',
        label: 'Pressure when blocked',
        help: 'With the discharge closed at this speed, if the motor can hold it.',
      },
      d.blockedPressure,
      'MPa',
      3,
    ),
    stallRow(d.stallPressure),
    ...strengthRows(d, flowing),
  ],
});

/** A motor that holds the blocked pressure has no pressure at which it stalls. */
function stallRow(stallPressure: number | null): PresentedRow {
  const words = { id: 'stallPressure', label: 'Pressure at which the motor stalls', help: 'As the discharge closes.' };
  return stallPressure === null ? textRow(words, 'does not stall') : quantityRow(words, stallPressure, 'MPa', 3);
}

/** How a heater runs. */
const dutyWords = {
  held: 'held',
  weak: 'gives all it has and stays below',
  off: 'off and stays above',
} as const;

/** Heat. */
export const heat: Group = ({ heat: h }) => ({
  id: 'heat',
  title: 'Heat',
  rows: [
    quantityRow(
      { id: 'product', label: 'Into the granulate', help: 'Warming and melting.', basis: h.basis },
      h.product,
      'W',
      3,
    ),
    quantityRow(
      { id: 'dissipation', label: 'From shear', help: 'Made by the screw in the melt.' },
      h.dissipation,
      'W',
      3,
    ),
    quantityRow({ id: 'loss', label: 'Losses', help: 'To the air, to cooling and to the cold end.' }, h.loss, 'W', 3),
    quantityRow({ id: 'ambient', label: 'of it to the air', help: 'Still air and radiation.' }, h.ambient, 'W', 3),
    quantityRow(
      { id: 'coolant', label: 'of it to cooling', help: 'Cooled zones; negative: heats.' },
      h.coolant,
      'W',
      3,
    ),
    quantityRow(
      { id: 'driveEnd', label: 'of it to the drive end', help: 'Through the screw; negative: heat comes in.' },
      h.driveEnd,
      'W',
      3,
    ),
    quantityRow(
      { id: 'heater', label: 'Heaters must bring', help: 'Steady running, every set temperature held.' },
      h.heater,
      'W',
      3,
    ),
    quantityRow({ id: 'given', label: 'Heaters bring', help: 'Each within its own watts.' }, h.given, 'W', 3),
    quantityRow({ id: 'installed', label: 'Installed', help: 'Watts of all heaters.' }, h.installed, 'W', 3),
    ...h.zones.map((zone, i) =>
      textRow(
        { id: `heater-${i}`, label: `Heater “${zone.name}”`, help: 'Wall under the heater, and how the heater runs.' },
        `${formatQuantity(zone.reached, '°C', 4)} of ${formatQuantity(zone.setTemperature, '°C', 4)}, ${dutyWords[zone.duty]}`,
      ),
    ),
  ],
});
