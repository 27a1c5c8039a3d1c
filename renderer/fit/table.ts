/** From what is typed to what a worker is asked. */

import {
  type FitOptions,
  type Material,
  parseRheologyTable,
  type Result,
  type RheologyTable,
} from '../../core/index.ts';
import { readNumber } from '../fields/quantity.ts';
import { fitText } from '../strings/fit.ts';
import type { FitAsk } from './protocol.ts';
import type { FitDraft } from './store.ts';

/** The transition that Carreau's own law has. */
const carreauTransition = 2;

const temperatureSpec = {
  key: 'temperature',
  label: fitText.oneTemperature,
  unit: '°C',
  help: fitText.oneTemperatureHelp,
} as const;

/** The table as read, or why it cannot be; null where nothing was pasted. */
export function readTable({ text, temperature }: Pick<FitDraft, 'text' | 'temperature'>): Result<RheologyTable> | null {
  if (text.trim() === '') return null;
  if (temperature.trim() === '') return parseRheologyTable(text);
  const all = readNumber(temperature, temperatureSpec, ['temperature']);
  return all.ok ? parseRheologyTable(text, all.value) : all;
}

function optionsOf({ model, shift, holdTransition, from }: FitDraft): FitOptions {
  return {
    source: from.trim() === '' ? fitText.fromDefault : from.trim(),
    ...(model === 'crossWlf' ? {} : { shift }),
    ...(model === 'carreauYasuda' && holdTransition ? { transition: carreauTransition } : {}),
  };
}

/** What the worker is asked; null where there is nothing to fit. */
export function askOf(draft: FitDraft, table: Result<RheologyTable> | null, filler: Material['filler']): FitAsk | null {
  if (!table?.ok || table.value.points.length === 0) return null;
  return {
    points: table.value.points,
    model: draft.model,
    options: optionsOf(draft),
    filler:
      draft.filled && filler
        ? { volumeFraction: filler.volumeFraction.value, maxPacking: filler.maxPacking.value }
        : null,
  };
}

/** How many temperatures, told apart at whole kelvins. */
export const temperatureCount = ({ points }: RheologyTable): number =>
  new Set(points.map(({ temperature }) => Math.round(temperature))).size;
