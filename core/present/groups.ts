/** Figures of a prediction in groups, in the order of deciding. */

import type { CapacityKind, Prediction } from '../prediction/types.ts';
import { colour } from './colourRows.ts';
import { coldEnd, feeding, melting } from './contentGroups.ts';
import type { Group } from './group.ts';
import { drive, geometry, heat } from './machineGroups.ts';
import { nozzle, print, residence } from './meltGroups.ts';
import { quantityRow, textRow, whereFlowing } from './row.ts';
import type { PresentedGroup } from './types.ts';
import { warming } from './warmingGroup.ts';

/** Names of the capacities. */
export const capacityNames: Readonly<Record<CapacityKind, string>> = {
  pumping: 'pumping against the nozzle',
  feed: 'feeding',
  starved: 'metered feed',
  torque: 'torque',
  motorSpeed: 'motor speed',
  heater: 'heater watts',
  melting: 'melting',
  grainFit: 'grain against channel',
};

const output: Group = (prediction) => outputRows(prediction, whereFlowing(prediction));

const outputRows = ({ output: o, limit }: Prediction, flowing: ReturnType<typeof whereFlowing>): PresentedGroup => ({
  id: 'output',
  title: 'Output',
  rows: [
    quantityRow(
      { id: 'volumeFlow', label: 'Melt output', help: 'Volume of melt that leaves per time.', basis: o.basis },
      o.volumeFlow,
      'mm³/s',
    ),
    quantityRow(
      { id: 'massFlow', label: 'Mass output', help: 'The same by weight, with the melt density.' },
      o.massFlow,
      'g/min',
    ),
    quantityRow(
      { id: 'screwSpeed', label: 'Screw speed', help: 'The set speed, or the fastest the drive can hold.' },
      o.screwSpeed,
      'rpm',
    ),
    textRow({ id: 'limit', label: 'Limited by', help: 'The least of all capacities.' }, capacityNames[limit]),
    quantityRow(
      { id: 'headPressure', label: 'Head pressure', help: 'Melt pressure at the end of the screw, above ambient.' },
      o.headPressure,
      'MPa',
    ),
    quantityRow(
      {
        id: 'leakFlow',
        label: 'Leak over the flight',
        help: 'Axial flow lost over the flight land at the last flight.',
      },
      flowing(o.leakFlow),
      'mm³/s',
    ),
    quantityRow(
      { id: 'filledLength', label: 'Filled length', help: 'Length of screw that is full of melt under pressure.' },
      flowing(o.filledLength),
      'mm',
    ),
  ],
});

const capacities: Group = (prediction) => ({
  id: 'capacities',
  title: 'What could limit the output',
  rows: prediction.capacities.map(({ kind, volumeFlow, basis }) => {
    const words = { id: kind, label: capacityNames[kind], help: 'Melt flow that this alone would allow.', basis };
    return Number.isFinite(volumeFlow) ? quantityRow(words, volumeFlow, 'mm³/s', 3) : textRow(words, 'does not limit');
  }),
});

/** All groups of a prediction. */
export const groupsOf = (prediction: Prediction): PresentedGroup[] =>
  [output, capacities, print, residence, colour, feeding, melting, drive, heat, coldEnd, warming, nozzle, geometry].map(
    (group) => group(prediction),
  );
