/** Colour of the extrudate: swatches, how sure, and the worst streak. */

import type { ColourPrediction } from '../../prediction/types.ts';
import { formatNumber } from '../../units.ts';
import { type Block, type Cell, cell, paragraph, type ReportSection, table } from './model.ts';
import { idOf, type ReportSubject, titleOf } from './source.ts';

const number = (value: number | null | undefined): string =>
  value === null || value === undefined ? '–' : formatNumber(value, 3);

const labText = (lab: ColourPrediction['labMean']): string =>
  lab === null ? '–' : lab.map((value) => formatNumber(value, 3)).join(' / ');

const swatch = (name: string, srgb: string | null): Cell => cell(name, srgb === null ? {} : { swatch: srgb });

function swatchTable(subject: ReportSubject): Block {
  const { colour: c } = subject.prediction;
  const range = (low: number | undefined, high: number | undefined) =>
    low === undefined || high === undefined ? '–' : `${formatNumber(low, 2)} to ${formatNumber(high, 2)}`;
  const shares = c.distribution.map((at) => [
    swatch(
      at.share === 0
        ? 'The least aged'
        : `${formatNumber(100 * at.share, 3)} % of the output is aged no more than this`,
      at.srgb,
    ),
    ...[labText(at.lab), number(at.dE00), '–'],
  ]);
  return table(
    idOf(subject, 'swatches'),
    'Colours under daylight (D65, 2° observer); fields as near as a screen or printer shows them',
    ['Colour|46', 'L* / a* / b*|24', 'ΔE00 to fresh|12|right', 'Low to high|18|right'],
    [
      [swatch('Fresh granulate', c.srgbFresh), labText(c.labFresh), '0', '–'],
      [
        swatch('Extrudate, mean', c.srgb),
        labText(c.labMean),
        number(c.dE00Mean),
        range(c.range?.dE00MeanLow, c.range?.dE00MeanHigh),
      ],
      [
        swatch('Worst streak: the oldest hundredth', c.srgbWorst),
        ...[labText(c.labWorst), number(c.dE00Worst), range(c.range?.dE00WorstLow, c.range?.dE00WorstHigh)],
      ],
      ...shares,
    ],
  );
}

function bleedTable(subject: ReportSubject): Block[] {
  const { bleed } = subject.prediction.colour;
  if (bleed.length === 0) return [];
  return [
    table(
      idOf(subject, 'bleed'),
      'Streaks that dead spots shed into the stream',
      [
        'Dead spot|38',
        'Held (s)|12|right',
        'Share of the stream|18|right',
        'Streak, ΔE00|16|right',
        'Mixed in, ΔE00 added|16|right',
      ],
      bleed.map((spot) => [
        swatch(`${spot.part}: ${spot.where}`, spot.srgb),
        number(spot.held),
        `${formatNumber(100 * spot.shareLow, 2)} to ${formatNumber(100 * spot.share, 2)} %`,
        `${formatNumber(spot.dE00Streak, 2)} to ${formatNumber(spot.dE00StreakHigh, 2)}`,
        spot.dE00Added < 0.001 ? 'below 0.001' : number(spot.dE00Added),
      ]),
    ),
  ];
}

function lawTable(subject: ReportSubject): Block[] {
  const { laws } = subject.prediction.colour;
  if (laws.length === 0) return [];
  return [
    table(
      idOf(subject, 'laws'),
      'What each law of ageing comes to',
      ['Observed|26', 'Drives the colour|12', 'What it means|40', 'Range|22'],
      laws.map(({ observed, drivesColour, means, outside }) => [
        ...[observed, drivesColour ? 'yes' : 'no', means, outside ?? 'inside its temperatures'],
      ]),
    ),
  ];
}

/** The colour of one revision, or why it cannot be said. */
export function colourSection(subject: ReportSubject): ReportSection {
  const { colour: c } = subject.prediction;
  const { acceptableDeltaE } = subject.design.process;
  const said =
    c.dE00Mean === null
      ? [paragraph(`The colour cannot be said: ${c.reason ?? 'no law of colour is known for this granulate.'}`)]
      : [
          paragraph(
            `The extrudate differs from the fresh granulate by ${number(c.dE00Mean)} ΔE00 on average and ${number(c.dE00Worst)} in its worst streak; ${number(acceptableDeltaE)} is accepted. About 1 ΔE00 is what a trained eye just sees side by side.`,
          ),
          swatchTable(subject),
          ...(c.gamutNote ? [paragraph(c.gamutNote, 'small')] : []),
          ...bleedTable(subject),
        ];
  return {
    id: idOf(subject, 'colour'),
    title: titleOf(subject, 'Colour and ageing'),
    blocks: [
      ...said,
      ...lawTable(subject),
      paragraph(`Model: ${c.basis.model}. Holds for: ${c.basis.range}.`, 'small'),
      ...(c.basis.doubt === null || c.basis.doubt === c.reason
        ? []
        : [paragraph(`Doubtful here: ${c.basis.doubt}`, 'warning')]),
    ],
  };
}
