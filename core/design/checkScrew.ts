/** Whether the sections of a screw can be made and run in their bore. All lengths mm as stored. */

import type { Revision, SectionInput } from '../project/schema.ts';
import type { Issue } from '../result.ts';
import { toSi } from '../units.ts';
import { brokenRules, mmText, type Path, type Rule, slackMm } from './issueList.ts';

type Flighted = Extract<SectionInput, { kind: 'flighted' }>;
type End = 'Start' | 'End';
const ends: readonly End[] = ['Start', 'End'];

/** What the checks of the sections read of a revision. */
export type ScrewParts = Pick<Revision, 'screw' | 'barrel'>;

/** Thinnest root that the file format knows under a flight, mm. */
const thinnestRootMm = 1;

/** Thinnest flight at its root that can stand, mm (common practice: a tenth is less than any cutter leaves). */
const thinnestFlightMm = 0.1;

const titleOf = (section: SectionInput, index: number): string =>
  `Section ${index + 1}${section.name ? ` "${section.name}"` : ''}`;

/** The root must leave a channel: below the flight where there is one, below the bore where plain; clearance < depth/2. */
function depthRules(revision: ScrewParts, section: SectionInput, title: string, path: Path): readonly Rule[] {
  const boreMm = revision.barrel.boreDiameterMm;
  const clearanceMm = revision.screw.radialClearanceMm;
  const largestMm = section.kind === 'flighted' ? boreMm - 4 * clearanceMm : boreMm - 2 * clearanceMm;
  return ends.map((end) => {
    const rootMm = section[`rootDiameter${end}Mm`];
    const flightMm = boreMm - 2 * clearanceMm;
    const shallow = section.kind === 'flighted' && rootMm < flightMm;
    return {
      holds: rootMm < largestMm - slackMm,
      path: [...path, `rootDiameter${end}Mm`],
      code: shallow ? 'clearance-too-wide' : 'root-too-thick',
      message: shallow
        ? `${title}: the radial clearance of ${mmText(clearanceMm)} is half the channel's depth or more.`
        : `${title}: the root leaves no channel inside the flight diameter of ${mmText(flightMm)}.`,
      value: mmText(rootMm),
      allowed: `less than ${mmText(largestMm)}`,
      remedy: shallow ? 'Reduce the clearance or the root diameter.' : 'Reduce the root diameter or enlarge the bore.',
    };
  });
}

/** A clearance so wide that no root of the file format fits inside it would fault every section; it is said once. */
function clearanceRule(revision: ScrewParts, path: Path): Rule {
  const { radialClearanceMm } = revision.screw;
  const widestMm = (revision.barrel.boreDiameterMm - thinnestRootMm) / 4;
  return {
    holds: radialClearanceMm < widestMm,
    path: [...path, 'screw', 'radialClearanceMm'],
    code: 'clearance-too-wide',
    message: 'The radial clearance leaves no room for a screw in this bore.',
    value: mmText(radialClearanceMm),
    allowed: `less than ${mmText(widestMm)} in a bore of ${mmText(revision.barrel.boreDiameterMm)}`,
    remedy: 'Reduce the clearance or enlarge the bore.',
  };
}

/** Height of the flight and its axial width at the root at one end, mm; a root beyond the flight counts as height 0. */
function flightAt(revision: ScrewParts, section: Flighted, end: End) {
  const flightMm = revision.barrel.boreDiameterMm / 2 - revision.screw.radialClearanceMm;
  const heightMm = Math.max(0, flightMm - section[`rootDiameter${end}Mm`] / 2);
  const rootWidthMm = section.flightWidthMm + 2 * heightMm * Math.tan(toSi(section.flankAngleDeg, '°'));
  const pitchMm = section[`lead${end}Mm`] / section.starts;
  return { heightMm, rootWidthMm, pitchMm, gapMm: pitchMm - rootWidthMm };
}

function widthRules(revision: ScrewParts, section: Flighted, title: string, path: Path): readonly Rule[] {
  return ends.flatMap((end): readonly Rule[] => {
    const { rootWidthMm, pitchMm, gapMm } = flightAt(revision, section, end);
    const where = end === 'Start' ? 'at its start' : 'at its end';
    return [
      {
        holds: gapMm > slackMm,
        path: [...path, 'flightWidthMm'],
        code: 'flights-meet',
        message: `${title}: ${where} the flight is ${mmText(rootWidthMm)} wide at the root, flanks included, and leaves no channel.`,
        value: mmText(section.flightWidthMm),
        allowed: `a root width below ${mmText(pitchMm)}, the lead shared by ${section.starts} start${section.starts > 1 ? 's' : ''}`,
        remedy: 'Narrow the flight, make its flanks steeper, lengthen the lead or use fewer starts.',
      },
      {
        holds: rootWidthMm >= thinnestFlightMm - slackMm,
        path: [...path, 'flightWidthMm'],
        code: 'flight-too-thin',
        message: `${title}: ${where} the flight has almost no thickness at its root.`,
        value: mmText(rootWidthMm),
        allowed: `at least ${mmText(thinnestFlightMm)} at the root`,
        remedy: 'Widen the flight or slant its flanks.',
      },
    ];
  });
}

function filletRules(revision: ScrewParts, section: Flighted, title: string, path: Path): readonly Rule[] {
  return ends.map((end) => {
    const { heightMm, gapMm } = flightAt(revision, section, end);
    const largestMm = Math.min(heightMm, gapMm / 2);
    const limit = heightMm <= gapMm / 2 ? "the flight's height" : "half the channel's width at the root";
    return {
      holds: section.rootFilletMm <= largestMm + slackMm,
      path: [...path, 'rootFilletMm'],
      code: 'fillet-too-large',
      message: `${title}: the root fillet does not fit the channel at the section's ${end.toLowerCase()}.`,
      value: mmText(section.rootFilletMm),
      allowed: `at most ${mmText(Math.max(0, largestMm))}, ${limit}`,
      remedy: 'Reduce the fillet.',
    };
  });
}

/** One issue where both ends break the same rule in the same field. */
const oncePerField = (issues: readonly Issue[]): readonly Issue[] =>
  issues.filter(
    (issue, i) =>
      issues.findIndex((other) => other.code === issue.code && other.path.at(-1) === issue.path.at(-1)) === i,
  );

function sectionIssues(revision: ScrewParts, section: SectionInput, index: number, path: Path): readonly Issue[] {
  const title = titleOf(section, index);
  const depth = brokenRules(depthRules(revision, section, title, path));
  if (section.kind === 'plain') return depth;
  const width = oncePerField(brokenRules(widthRules(revision, section, title, path)));
  // Without a depth the flanks add nothing: a land as wide as the pitch is a fault all the same, a thin root is none.
  if (depth.length > 0) return [...depth, ...width.filter(({ code }) => code === 'flights-meet')];
  return width.length > 0 ? width : oncePerField(brokenRules(filletRules(revision, section, title, path)));
}

/** Whether the clearance leaves room for a screw at all. */
export const clearanceFits = (revision: ScrewParts): boolean => clearanceRule(revision, []).holds;

/**
 * Faults of the screw's sections.
 * @param revision stored revision whose screw and barrel fit the schema
 * @param path path of the revision
 * @returns one issue per fault; a fillet is judged only where depth and width hold, sections only where the clearance does
 */
export function screwIssues(revision: ScrewParts, path: Path): readonly Issue[] {
  const clearance = brokenRules([clearanceRule(revision, path)]);
  if (clearance.length > 0) return clearance;
  const at = [...path, 'screw', 'sections'];
  return revision.screw.sections.flatMap((section, i) => sectionIssues(revision, section, i, [...at, i]));
}
