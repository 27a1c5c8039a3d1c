/** Figures of the colour: how far, how sure, where from, and what the other laws come to. */

import type { ColourPrediction, Prediction } from '../prediction/types.ts';
import { formatNumber, formatQuantity } from '../units.ts';
import type { Group } from './group.ts';
import { numberRow, quantityRow, textRow } from './row.ts';
import type { PresentedRow } from './types.ts';

/** Two ends of a range in words; empty where there is none. */
const ends = (low: number | undefined, high: number | undefined): string =>
  low === undefined || high === undefined ? '' : `${formatNumber(low, 2)} to ${formatNumber(high, 2)}`;

function shiftRows({ dE00Mean, dE00Worst, range, basis }: ColourPrediction): PresentedRow[] {
  return [
    numberRow(
      {
        id: 'dE00Mean',
        label: 'Mean shift, ΔE00',
        help: 'Colour difference of the extrudate from the fresh granulate.',
        basis,
      },
      dE00Mean,
      '',
      2,
    ),
    textRow(
      { id: 'dE00MeanRange', label: 'Mean shift, low to high', help: 'By the doubt of rate and activation energy.' },
      ends(range?.dE00MeanLow, range?.dE00MeanHigh),
    ),
    numberRow(
      { id: 'dE00Worst', label: 'Worst streak, ΔE00', help: 'The oldest hundredth of the extrudate.' },
      dE00Worst,
      '',
      2,
    ),
    textRow(
      { id: 'dE00WorstRange', label: 'Worst streak, low to high', help: 'By the doubt of rate and activation energy.' },
      ends(range?.dE00WorstLow, range?.dE00WorstHigh),
    ),
  ];
}

function indexRows({ indices }: ColourPrediction): PresentedRow[] {
  if (indices === null) return [];
  return [
    numberRow(
      { id: 'yellowness', label: 'Yellowness of the mean (E313)', help: indices.note },
      indices.yellownessMean,
      '',
      3,
    ),
    numberRow({ id: 'browning', label: 'Browning index of the mean', help: indices.note }, indices.browningMean, '', 3),
  ];
}

function originRows({ origin, bleed }: ColourPrediction): PresentedRow[] {
  const parts = origin.map(({ part, share }) =>
    quantityRow(
      {
        id: `origin-${part}`,
        label: `Ageing in the ${part}`,
        help: 'Share of what changes the colour on the mean way.',
      },
      share,
      '%',
      2,
    ),
  );
  const [streak] = [...bleed].sort((a, b) => b.dE00Streak - a.dE00Streak);
  if (!streak) return parts;
  const label = 'Streak from a dead spot, ΔE00';
  const help = `${streak.part}: ${streak.where}; ${formatQuantity(streak.shareLow, '%', 2)} to ${formatQuantity(streak.share, '%', 2)} of the stream.`;
  return [...parts, numberRow({ id: 'spotStreak', label, help }, streak.dE00Streak, '', 2)];
}

/** What laws beside that of the colour come to, one row of words each. */
const lawRows = ({ laws }: ColourPrediction): PresentedRow[] =>
  laws
    .filter(({ drivesColour }) => !drivesColour)
    .map(({ id, observed, means }) => textRow({ id: `law-${id}`, label: observed, help: `Law ${id}.` }, means));

/** Colour. */
export const colour: Group = ({ colour: c }: Prediction) => ({
  id: 'colour',
  title: 'Colour',
  rows: [
    ...shiftRows(c),
    ...indexRows(c),
    ...originRows(c),
    ...lawRows(c),
    textRow({ id: 'reason', label: 'Note', help: 'Why the colour cannot be said, where it cannot.' }, c.reason ?? ''),
  ],
});
