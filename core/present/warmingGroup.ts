/** Figures of warming up. */

import type { Group } from './group.ts';
import { quantityRow, textRow } from './row.ts';
import type { PresentedRow } from './types.ts';

/** Warming up, where it was computed. */
export const warming: Group = ({ warmUp: w }) => ({
  id: 'warmUp',
  title: 'Warming up from cold',
  rows:
    w === null
      ? []
      : [
          durationRow('warmReady', 'All zones warm after', 'Within 2 K of their set temperatures.', w.ready, w.basis),
          durationRow(
            'mayTurn',
            'Screw may turn after',
            'All warm and the standing granulate molten through.',
            w.mayTurn,
            w.basis,
          ),
          quantityRow({ id: 'warmEnergy', label: 'Takes', help: 'Of all heaters until warm.' }, w.energy, 'W·h', 3),
          ...w.heaters.map((heater, i) =>
            durationRow(
              `warmHeater-${i}`,
              `“${heater.name}” warm after`,
              heater.tooWeak ? 'Too weak: settles below its set temperature.' : 'Within 2 K.',
              heater.readyAfter,
              null,
            ),
          ),
        ],
});

const durationRow = (id: string, label: string, help: string, value: number, basis: PresentedRow['basis']) =>
  Number.isFinite(value)
    ? quantityRow({ id, label, help, basis }, value, value < 120 ? 's' : 'min', 2)
    : textRow({ id, label, help, basis }, 'never');
