/** What the person says of the lathe: leadscrew and change gears, and what follows for each section. */

import type { FlightedSection } from '../../design/types.ts';
import { distanceAfterTurns, leadAt } from '../../geometry/profile.ts';
import { changeGears, trainText } from '../../make/changeGears.ts';
import { taperPerTurn } from '../../make/cutting.ts';
import { fail, ok, type Result } from '../../result.ts';
import { formatNumber } from '../../units.ts';
import { choiceOf, textOf } from '../check.ts';
import type { HandoverOption, HandoverValues } from '../types.ts';

const inch = 25.4e-3;

/** Leads of usual leadscrews, m. */
const leadscrews = { 'mm-1.5': 1.5e-3, 'mm-2': 2e-3, 'mm-3': 3e-3, 'mm-6': 6e-3, 'tpi-8': inch / 8 } as const;

/** Wheels that many small lathes come with; common practice, typed over by the person. */
const usualWheels = '20 24 25 28 30 32 35 36 40 42 45 48 50 52 55 60 63 65 66 70 75 80 127';

/** Above this ratio of driver to driven a train runs hard; common practice, about 3 to 4. */
const mostRatio = 4;

/** A lathe as typed. */
export interface Lathe {
  readonly controlled: boolean;
  /** m per turn; unused where controlled */
  readonly leadscrew: number;
  readonly teeth: readonly number[];
}

/** Options of the workshop's modules. */
export const latheOptions: readonly HandoverOption[] = [
  {
    id: 'every',
    label: 'Distance of stations',
    help: 'A row at every multiple of this along the screw, and at both ends of every section.',
    kind: 'number',
    unit: 'mm',
    least: 1,
    most: 500,
    start: 10,
  },
  {
    id: 'lathe',
    label: 'Lathe',
    help: 'Its leadscrew, or a numeric control: then threading words are listed in place of change gears.',
    kind: 'choice',
    choices: [
      { id: 'mm-1.5', label: 'Leadscrew 1.5 mm' },
      { id: 'mm-2', label: 'Leadscrew 2 mm' },
      { id: 'mm-3', label: 'Leadscrew 3 mm' },
      { id: 'mm-6', label: 'Leadscrew 6 mm' },
      { id: 'tpi-8', label: 'Leadscrew 8 turns per inch' },
      { id: 'controlled', label: 'Numeric control' },
    ],
    start: 'mm-3',
  },
  {
    id: 'gears',
    label: 'Change gears',
    help: 'Teeth of the wheels at hand, parted by spaces; a wheel that is there twice stands twice.',
    kind: 'text',
    longest: 300,
    start: usualWheels,
  },
];

const gearsIssue = (value: string) =>
  fail({
    path: ['gears'],
    code: 'gears-unreadable',
    message: 'The change gears cannot be read.',
    value: value.slice(0, 60),
    allowed: '2 to 60 whole numbers of teeth from 10 to 200, parted by spaces or commas',
    remedy: 'Type the teeth of each wheel at hand, such as 20 30 40 50 60 80.',
  });

/** The lathe from checked values; an issue where the wheels cannot be read. */
export function readLathe(values: HandoverValues): Result<Lathe> {
  const choice = choiceOf<keyof typeof leadscrews | 'controlled'>(values, 'lathe');
  if (choice === 'controlled') return ok({ controlled: true, leadscrew: 0, teeth: [] });
  const words = textOf(values, 'gears')
    .split(/[\s,;]+/)
    .filter((word) => word !== '');
  const teeth = words.map((word) => (/^\d{1,3}$/.test(word) ? Number(word) : Number.NaN));
  const readable = teeth.every((count) => count >= 10 && count <= 200);
  if (!readable || teeth.length < 2 || teeth.length > 60) return gearsIssue(textOf(values, 'gears'));
  return ok({ controlled: false, leadscrew: leadscrews[choice], teeth });
}

const mm = (length: number, digits = 5) => formatNumber(length * 1e3, digits);

/** Lead over the section, mm, as `14` or `16 to 12`. */
export const leadText = ({ leadStart, leadEnd }: FlightedSection): string =>
  leadStart === leadEnd ? mm(leadStart) : `${mm(leadStart)} to ${mm(leadEnd)}`;

/** Turns per inch of each flight, likewise. */
export function turnsPerInch({ leadStart, leadEnd }: FlightedSection): string {
  const [from, to] = [leadStart, leadEnd].map((lead) => formatNumber(inch / lead, 4));
  return leadStart === leadEnd ? String(from) : `${from} to ${to}`;
}

/** Angles at which the starts are cut, degrees. */
export const startAngles = ({ starts }: FlightedSection): string =>
  Array.from({ length: starts }, (_, i) => formatNumber((360 * i) / starts, 4)).join(', ');

/** Change gears for a section: train, and error of the lead, mm a turn and %. */
export function gearCells(section: FlightedSection, lathe: Lathe): { train: string; error: string; share: string } {
  if (section.leadStart !== section.leadEnd)
    return { train: 'none: the lead varies, numeric control', error: '', share: '' };
  const train = changeGears(section.leadStart, lathe.leadscrew, lathe.teeth);
  if (!train) return { train: 'no train from these wheels', error: '', share: '' };
  const hard = train.ratio > mostRatio ? ` (ratio ${formatNumber(train.ratio, 3)}: too fast for most trains)` : '';
  const error = train.error === 0 ? 'exact' : formatNumber(train.error * 1e3, 3);
  const share = train.error === 0 ? '0' : formatNumber((100 * train.error) / section.leadStart, 2);
  return { train: `${trainText(train)}${hard}`, error, share };
}

/**
 * Threading words of a numeric control for a section, mm. The lead is even in z, so that its change a turn is in
 * proportion to the lead itself; that given is the first whole turn's, exactly.
 */
export function controlCells(section: FlightedSection): { feed: string; change: string; taper: string } {
  const firstTurn = leadAt(section, distanceAfterTurns(section, 1)) - section.leadStart;
  return {
    feed: mm(section.leadStart),
    change: mm(firstTurn, 4),
    taper: mm(taperPerTurn(section), 4),
  };
}
