/** Goals and limits that are proposed for a machine. */

import type { Project } from '../project/schema.ts';
import { toSi } from '../units.ts';
import { searchFigures } from './figures.ts';
import type { SeekLimit, SeekSpec } from './types.ts';

/** A limit that is proposed. */
export interface ProposedLimit extends SeekLimit {
  /** whether a search begins with it */
  readonly on: boolean;
  /** why this bound */
  readonly why: string;
}

/** Head pressure that small barrels stand without more being known, Pa (common practice: 20 MPa). */
const modestPressure = 20e6;

/** Share of the melt that may still be solid where the flight ends and count as molten: what a prediction cannot tell from none. */
const moltenEnough = 0.005;

/** Narrowest flight that stands up to milling and use, m (common practice: a tenth of the diameter, here at least this). */
const narrowFlight = 1e-3;

/** Limits proposed for a revision; bounds SI. */
export function proposedLimits(project: Project, revisionId: string): readonly ProposedLimit[] {
  const revision = project.revisions.find(({ id }) => id === revisionId);
  const pressure = revision?.barrel.pressureLimitMPa;
  const roots = revision?.screw.sections.flatMap((one) => [one.rootDiameterStartMm, one.rootDiameterEndMm]) ?? [];
  const smallest = toSi(Math.min(...roots, revision?.barrel.boreDiameterMm ?? 10), 'mm');
  const most = (figure: string, bound: number, on: boolean, why: string): ProposedLimit => ({
    figure,
    sense: 'atMost',
    bound,
    on,
    why,
  });
  const least = (figure: string, bound: number, on: boolean, why: string): ProposedLimit => ({
    figure,
    sense: 'atLeast',
    bound,
    on,
    why,
  });
  return [
    least('margin', 1, true, 'The print gets what it asks for while it lays a line.'),
    most('torqueShare', 0.6, true, 'An open loop needs a reserve of torque (common practice: 1.5 times or more).'),
    least('rootMargin', 1.5, true, 'Safety against yield under the motor’s full torque (common practice).'),
    most(
      'headPressure',
      pressure === undefined ? modestPressure : toSi(pressure, 'MPa'),
      true,
      pressure === undefined ? 'What small barrels stand (common practice).' : 'The barrel’s stated limit.',
    ),
    most('unmelted', moltenEnough, true, 'All has to be molten where the last flight ends.'),
    least('smallestRoot', smallest, false, 'Not thinner than the present screw.'),
    least('smallestFillet', toSi(0.5, 'mm'), false, 'A cutter’s corner (common practice).'),
    least('thinnestFlight', narrowFlight, false, 'A flight that stands up to milling (common practice).'),
    most('dE00Worst', project.process.acceptableDeltaE, false, 'The colour shift that is accepted.'),
    most('t95', 300, false, 'How long granulate may stay hot; set it by the granulate.'),
  ];
}

/** Figures that can be a goal, and which way is better; those of the least doubt about their use first. */
export function goalFigures(): readonly SeekSpec['objective'][] {
  const first = ['t95', 'dE00Worst', 'volumeFlow', 'torque', 'dwellSpread', 'mean', 'headPressure', 'rootMargin'];
  const all = searchFigures.filter(({ better, id }) => better !== 'neither' && id !== 'grave');
  const at = (id: string) => (first.includes(id) ? first.indexOf(id) : first.length);
  return [...all]
    .sort((a, b) => at(a.id) - at(b.id))
    .map(({ id, better }) => ({ figure: id, sense: better === 'more' ? 'most' : 'least' }));
}
