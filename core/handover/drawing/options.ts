/** Choices of the drawings, and their reading. */

import { limitClasses } from '../../make/isoLimits.ts';
import type { HandoverOption, HandoverSource, HandoverValues } from '../types.ts';
import { preferredScales, type SheetFormat, scaleOf, scaleText, sheetFormats } from './formats.ts';
import type { ToleranceClass } from './generalToleranceTable.ts';
import type { DrawingSetting, PartId } from './setting.ts';

const choice = (
  id: string,
  label: string,
  help: string,
  choices: readonly (readonly [string, string])[],
  start: string,
): HandoverOption => ({
  kind: 'choice',
  id,
  label,
  help,
  choices: choices.map(([choiceId, choiceLabel]) => ({ id: choiceId, label: choiceLabel })),
  start,
});

const text = (id: string, label: string, help: string, longest: number, start = ''): HandoverOption => ({
  kind: 'text',
  id,
  label,
  help,
  longest,
  start,
});

const roughness = (id: string, label: string, start: number): HandoverOption => ({
  kind: 'number',
  id,
  label,
  help: 'Mean roughness Ra after ISO 21920. What a shop reaches and what the melt needs differ; common practice is shown.',
  unit: 'µm',
  least: 0.025,
  most: 50,
  start,
});

const fits = (letter: RegExp): (readonly [string, string])[] => [
  ['none', 'none: general tolerance'],
  ...limitClasses.filter((each) => letter.test(each)).map((each) => [each, each] as const),
];

const fitHelp = 'Tolerance class after ISO 286, written with its limits; sizes above 250 mm get none.';

/** Choices of all three kinds of file. */
export const drawingOptions: readonly HandoverOption[] = [
  choice(
    'part',
    'Part',
    'What is drawn; a set is all three, each on sheets of its own.',
    [
      ['set', 'Set of all parts'],
      ['screw', 'Screw'],
      ['barrel', 'Barrel'],
      ['nozzle', 'Nozzle'],
    ],
    'set',
  ),
  choice(
    'size',
    'Sheet',
    'Size of the sheet, landscape.',
    sheetFormats.map(({ id, label }) => [id, label] as const),
    'A3',
  ),
  choice(
    'scale',
    'Scale of main views',
    'Automatic takes the largest preferred scale of ISO 5455 that fits; long, thin parts are broken, which the sheet says.',
    [['auto', 'Automatic'], ...preferredScales.map((scale) => [scaleText(scale), scaleText(scale)] as const)],
    'auto',
  ),
  choice(
    'projection',
    'Projection',
    'First angle is usual in Europe and Asia, third angle in America.',
    [
      ['first', 'First angle'],
      ['third', 'Third angle'],
    ],
    'first',
  ),
  choice(
    'tolerance',
    'General tolerances',
    'Class of ISO 2768-1 for all sizes without limits of their own.',
    [
      ['f', 'f, fine'],
      ['m', 'm, medium'],
      ['c', 'c, coarse'],
      ['v', 'v, very coarse'],
    ],
    'm',
  ),
  choice('shankFit', 'Fit of the shank', fitHelp, fits(/^[fgh]/), 'g6'),
  choice('flightFit', 'Fit of the flight’s outside', fitHelp, fits(/^[fgh]/), 'h7'),
  choice('boreFit', 'Fit of the bore', fitHelp, fits(/^H/), 'H7'),
  roughness('raGeneral', 'Ra elsewhere', 3.2),
  roughness('raChannel', 'Ra of root and flanks', 0.8),
  roughness('raShank', 'Ra of the shank', 0.8),
  roughness('raBore', 'Ra of wetted bores', 0.8),
  text('owner', 'Legal owner', 'Title block: to whom the drawing belongs.', 60),
  text(
    'number',
    'Identification number',
    'Title block; the part’s letter is added. Empty: the revision’s id stands in.',
    20,
  ),
  text('title', 'Title', 'Title block; empty: part and project name.', 60),
  text('creator', 'Creator', 'Title block: who drew it.', 40),
  text('approval', 'Approval person', 'Title block: who released it. Leave it empty until someone has.', 40),
  text('status', 'Document status', 'Title block, for example: in preparation, released.', 30, 'in preparation'),
  text('language', 'Language', 'Title block: code of the language, ISO 639.', 5, 'en'),
  text('barrelMaterial', 'Material of the barrel', 'Title block of the barrel; the design does not name it.', 60),
  text('nozzleMaterial', 'Material of the nozzle', 'Title block of the nozzle; the design does not name it.', 60),
];

/** The setting that checked values stand for. The first subject is drawn. */
export function readSetting({ project, subjects, date }: HandoverSource, values: HandoverValues): DrawingSetting {
  const subject = subjects[0];
  if (!subject) throw new Error('A drawing needs a revision.');
  const word = (id: string): string =>
    String(values[id] ?? drawingOptions.find((option) => option.id === id)?.start ?? '');
  const amount = (id: string): number => Number(word(id));
  const part = word('part');
  return {
    project,
    revision: subject.revision,
    design: subject.design,
    date,
    parts: part === 'set' ? ['screw', 'barrel', 'nozzle'] : [part as PartId],
    format: sheetFormats.find(({ id }) => id === word('size')) ?? (sheetFormats[0] as SheetFormat),
    scale: scaleOf(word('scale')),
    firstAngle: word('projection') === 'first',
    tolerance: word('tolerance') as ToleranceClass,
    shankFit: word('shankFit'),
    flightFit: word('flightFit'),
    boreFit: word('boreFit'),
    roughness: {
      general: amount('raGeneral'),
      channel: amount('raChannel'),
      shank: amount('raShank'),
      bore: amount('raBore'),
    },
    owner: word('owner'),
    number: word('number'),
    title: word('title'),
    creator: word('creator'),
    approval: word('approval'),
    status: word('status'),
    language: word('language'),
    barrelMaterial: word('barrelMaterial'),
    nozzleMaterial: word('nozzleMaterial'),
  };
}
