/** Whether the sections of a screw can be made and run in their bore. All lengths mm as stored. */

import type { Revision, SectionInput } from '../project/schema.ts';
import type { Issue } from '../result.ts';
import { toSi } from '../units.ts';
import { brokenRules, mmText, type Path, type Rule, slackMm } from './issueList.ts';

type Flighted = Extract<SectionInput, { kind: 'flighted' }>;
type End = 'Start' | 'End';
const ends: readonly End[] = ['Start', 'End'];

/** Thinnest flight at its root that can stand, mm (common practice: a tenth is less than any cutter leaves). */
const thinnestFlightMm = 0.1;

const titleOf = (section: SectionInput, index: number): string =>
  `Section ${index + 1}${section.name ? ` "${section.name}"` : ''}`;

/** The root must leave a channel: below the flight where there is one, below the bore where plain; clearance < depth/2. */
function depthRules(revision: Revision, section: SectionInput, title: string, path: Path): readonly Rule[] {
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

/** Height of the flight and its axial width at the root at one end, mm. */
function flightAt(revision: Revision, section: Flighted, end: End) {
  const heightMm =
    revision.barrel.boreDiameterMm / 2 - revision.screw.radialClearanceMm - section[`rootDiameter${end}Mm`] / 2;
  const rootWidthMm = section.flightWidthMm + 2 * heightMm * Math.tan(toSi(section.flankAngleDeg, '°'));
  const pitchMm = section[`lead${end}Mm`] / section.starts;
  return { heightMm, rootWidthMm, pitchMm, gapMm: pitchMm - rootWidthMm };
}

function widthRules(revision: Revision, section: Flighted, title: string, path: Path): readonly Rule[] {
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

function filletRules(revision: Revision, section: Flighted, title: string, path: Path): readonly Rule[] {
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

function sectionIssues(revision: Revision, section: SectionInput, index: number, path: Path): readonly Issue[] {
  const title = titleOf(section, index);
  const depth = brokenRules(depthRules(revision, section, title, path));
  if (section.kind === 'plain' || depth.length > 0) return depth;
  const width = oncePerField(brokenRules(widthRules(revision, section, title, path)));
  return width.length > 0 ? width : oncePerField(brokenRules(filletRules(revision, section, title, path)));
}

/**
 * Faults of the screw's sections.
 * @param revision stored revision that fits the schema
 * @param path path of the revision
 * @returns one issue per fault; a section is judged from depth to width to fillet, each only where the one before holds
 */
export function screwIssues(revision: Revision, path: Path): readonly Issue[] {
  const at = [...path, 'screw', 'sections'];
  return revision.screw.sections.flatMap((section, i) => sectionIssues(revision, section, i, [...at, i]));
}
