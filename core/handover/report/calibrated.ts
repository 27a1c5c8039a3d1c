/** Whether weighed trials stand behind the figures, and what they changed. */

import type { Calibration } from '../../project/schema.ts';
import { formatNumber } from '../../units.ts';
import { type Block, paragraph, type ReportSection, table } from './model.ts';
import { idOf, type ReportSubject } from './source.ts';

const factorNames = {
  feed: 'On what the feed can bring',
  viscosity: 'On the viscosity',
  wallFriction: 'On the friction on the barrel',
  colourRate: 'On the rate of the colour’s law',
} as const;

/** A root mean square of logarithms as a factor that most errors stay within. */
const errorText = (error: number | null): string =>
  error === null ? 'not known' : `a factor of ${formatNumber(Math.exp(error), 3)} (typical error)`;

function factorTable(subject: ReportSubject, { name, factors }: Calibration): Block {
  return table(
    idOf(subject, 'calibration-factors'),
    `Factors of “${name}”, with 95 % limits`,
    ['Factor|40', 'Value|16|right', 'Low|14|right', 'High|14|right', 'Found|16'],
    (Object.keys(factorNames) as (keyof typeof factorNames)[]).map((key) => {
      const { value, low, high, fitted } = factors[key];
      const limits = fitted ? [formatNumber(low, 3), formatNumber(high, 3)] : ['–', '–'];
      return [factorNames[key], formatNumber(value, 4), ...limits, fitted ? 'from trials' : 'held at 1'];
    }),
  );
}

function blocksOf(subject: ReportSubject): Block[] {
  const { project, prediction, revision } = subject;
  const of = subject.prefix === '' ? '' : `${subject.prefix}: `;
  const stored = (project.calibrations ?? []).find(({ id }) => id === prediction.calibration?.id);
  if (!prediction.calibration || !stored) {
    const trials = project.benchLog.filter(({ revisionId }) => revisionId === revision.id).length;
    const there =
      trials === 0
        ? 'No weighed trial of it is in the bench log.'
        : `Its ${trials} weighed trial${trials === 1 ? ' is' : 's are'} in the bench log but did not change the figures.`;
    return [paragraph(`${of}Not calibrated: the model as it stands. ${there}`)];
  }
  const { date, fields, trialIds, error } = stored;
  const way =
    fields === undefined
      ? 'not told whether for formulas or solved fields'
      : fields === 'solved'
        ? 'for solved fields'
        : 'for formulas alone';
  return [
    paragraph(
      `${of}Calibrated by “${stored.name}”${date ? ` of ${date}` : ''}, ${way}, from ${trialIds.length} trial${trialIds.length === 1 ? '' : 's'}: ${trialIds.join(', ')}.`,
    ),
    factorTable(subject, stored),
    table(
      idOf(subject, 'calibration-errors'),
      'Measured against predicted over these trials',
      ['When|50', 'Error|50'],
      [
        ['Before calibration', errorText(error.before)],
        ['After calibration', errorText(error.after)],
        ['Each trial predicted from the others', errorText(error.leaveOneOut)],
      ],
    ),
  ];
}

/** The section for all revisions. */
export const calibrationSection = (subjects: readonly ReportSubject[]): ReportSection => ({
  id: 'calibration',
  title: 'Calibration',
  blocks: subjects.flatMap(blocksOf),
});
