/** Whether barrel, feed opening, heat break and nozzle fit together. All lengths mm as stored. */

import type { Revision } from '../project/schema.ts';
import { zoneIssues } from '../project/zoneChecks.ts';
import type { Issue } from '../result.ts';
import { brokenRules, mmText, type Path, type Rule, slackMm } from './issueList.ts';

/** Shortest nozzle that flow can be computed for, mm. */
const shortestNozzleMm = 0.05;
/** Thinnest wall of barrel and nozzle (common practice: less cannot be turned), mm. */
const thinnestWallMm = 0.2;

function wallRule({ barrel }: BarrelPart, path: Path): Rule {
  const { boreDiameterMm, outerDiameterMm } = barrel;
  const leastMm = boreDiameterMm + 2 * thinnestWallMm;
  return {
    holds: outerDiameterMm >= leastMm - slackMm,
    path: [...path, 'barrel', 'outerDiameterMm'],
    code: 'barrel-without-wall',
    message: 'The barrel has no wall, or hardly any.',
    value: mmText(outerDiameterMm),
    allowed: `at least ${mmText(leastMm)}, the bore and a wall of ${mmText(thinnestWallMm)}`,
    remedy: 'Enlarge the outer diameter or reduce the bore.',
  };
}

/** What the checks here read of a revision. */
type BarrelPart = Pick<Revision, 'barrel'>;

/** Stretches of the axis where a flight runs, mm. */
function flightedStretches(
  revision: Pick<Revision, 'screw'>,
): readonly { readonly startMm: number; readonly endMm: number }[] {
  let endMm = 0;
  return revision.screw.sections.flatMap((section) => {
    const startMm = endMm;
    endMm += section.lengthMm;
    return section.kind === 'flighted' ? [{ startMm, endMm }] : [];
  });
}

function feedRules({ barrel }: BarrelPart, path: Path): readonly Rule[] {
  const { feedOpening, lengthMm, outerDiameterMm } = barrel;
  const endMm = feedOpening.startMm + feedOpening.lengthMm;
  const at = [...path, 'barrel', 'feedOpening'];
  return [
    {
      holds: endMm <= lengthMm + slackMm,
      path: [...at, 'lengthMm'],
      code: 'feed-outside',
      message: 'The feed opening reaches past the end of the barrel.',
      value: mmText(endMm),
      allowed: `an end at ${mmText(lengthMm)} or before`,
      remedy: 'Move or shorten the feed opening.',
    },
    {
      holds: feedOpening.widthMm <= outerDiameterMm + slackMm,
      path: [...at, 'widthMm'],
      code: 'feed-too-wide',
      message: 'The feed opening is wider than the barrel.',
      value: mmText(feedOpening.widthMm),
      allowed: `at most ${mmText(outerDiameterMm)}`,
      remedy: 'Narrow the feed opening.',
    },
  ];
}

function heatBreakRules({ barrel }: BarrelPart, path: Path): readonly Rule[] {
  const { heatBreak, lengthMm, boreDiameterMm, outerDiameterMm } = barrel;
  if (heatBreak === null) return [];
  const endMm = heatBreak.startMm + heatBreak.lengthMm;
  const thickestMm = (outerDiameterMm - boreDiameterMm) / 2;
  return [
    {
      holds: endMm <= lengthMm + slackMm,
      path: [...path, 'barrel', 'heatBreak', 'lengthMm'],
      code: 'heat-break-outside',
      message: 'The heat break reaches past the end of the barrel.',
      value: mmText(endMm),
      allowed: `an end at ${mmText(lengthMm)} or before`,
      remedy: 'Move or shorten the heat break.',
    },
    {
      // A barrel without a wall has its own issue.
      holds: heatBreak.wallMm <= thickestMm + slackMm || thickestMm < thinnestWallMm - slackMm,
      path: [...path, 'barrel', 'heatBreak', 'wallMm'],
      code: 'heat-break-too-thick',
      message: 'The wall of the heat break is thicker than that of the barrel.',
      value: mmText(heatBreak.wallMm),
      allowed: `at most ${mmText(thickestMm)}`,
      remedy: 'Reduce the wall of the heat break.',
    },
  ];
}

/** The widest place of the bore that the nozzle's body must go round: its segments, and the barrel's end it closes. */
function nozzleWallRule({ barrel, nozzle }: NozzleParts, path: Path): Rule {
  const widestMm = Math.max(
    barrel.boreDiameterMm,
    ...nozzle.segments.flatMap((s) => [s.startDiameterMm, s.endDiameterMm]),
  );
  const leastMm = widestMm + 2 * thinnestWallMm;
  return {
    holds: nozzle.outerDiameterMm >= leastMm - slackMm,
    path: [...path, 'nozzle', 'outerDiameterMm'],
    code: 'nozzle-without-wall',
    message: 'The nozzle is not wide enough to go round its bore and to close the barrel.',
    value: mmText(nozzle.outerDiameterMm),
    allowed: `at least ${mmText(leastMm)}, the widest bore of ${mmText(widestMm)} and a wall of ${mmText(thinnestWallMm)}`,
    remedy: 'Enlarge the nozzle or narrow its bore.',
  };
}

/** The barrel's end must close a pocket in the nozzle. */
function entryRule({ barrel, nozzle }: NozzleParts, path: Path): Rule {
  const entryMm = nozzle.segments[0]?.startDiameterMm ?? Number.NaN;
  return {
    // No wider than the bore: then it is the barrel's wall that is at fault.
    holds: entryMm < barrel.outerDiameterMm - slackMm || entryMm <= barrel.boreDiameterMm,
    path: [...path, 'nozzle', 'segments', 0, 'startDiameterMm'],
    code: 'nozzle-entry-open',
    message: 'The nozzle begins wider than the barrel, so melt would run out beside it.',
    value: mmText(entryMm),
    allowed: `less than ${mmText(barrel.outerDiameterMm)}, the barrel's outer diameter`,
    remedy: 'Narrow the first piece of the nozzle or enlarge the barrel.',
  };
}

/** What the nozzle's checks read of a revision. */
type NozzleParts = Pick<Revision, 'barrel' | 'nozzle'>;

function nozzleLengthRule({ nozzle }: NozzleParts, path: Path): Rule {
  const lengthMm = nozzle.segments.reduce((sum, s) => sum + s.lengthMm, 0);
  return {
    holds: lengthMm >= shortestNozzleMm,
    path: [...path, 'nozzle', 'segments'],
    code: 'nozzle-too-short',
    message: 'The nozzle has no length.',
    value: mmText(lengthMm),
    allowed: `at least ${mmText(shortestNozzleMm)} in all`,
    remedy: 'Give the land or the entry a length.',
  };
}

/**
 * Faults of the barrel alone.
 * @param revision stored revision whose barrel fits the schema
 * @param path path of the revision
 * @returns one issue per fault
 */
export function barrelIssues(revision: BarrelPart, path: Path): readonly Issue[] {
  const rules = [wallRule(revision, path), ...feedRules(revision, path), ...heatBreakRules(revision, path)];
  return [...brokenRules(rules), ...zoneIssues(revision.barrel, [...path, 'barrel'])];
}

/**
 * A feed opening over no flight; one past the barrel's end has its own issue.
 * @param revision stored revision whose barrel and screw fit the schema
 * @param path path of the revision
 */
export function feedIssues(revision: Pick<Revision, 'barrel' | 'screw'>, path: Path): readonly Issue[] {
  const { feedOpening, lengthMm } = revision.barrel;
  const endMm = feedOpening.startMm + feedOpening.lengthMm;
  const over = flightedStretches(revision).some((s) => s.startMm < endMm && s.endMm > feedOpening.startMm);
  return brokenRules([
    {
      holds: over || endMm > lengthMm + slackMm,
      path: [...path, 'barrel', 'feedOpening', 'startMm'],
      code: 'feed-without-flight',
      message: 'No flight runs under the feed opening, so nothing would be drawn in.',
      value: `${mmText(feedOpening.startMm)} to ${mmText(endMm)}`,
      allowed: 'an opening over a flighted section',
      remedy: 'Move the feed opening, or make the section under it flighted.',
    },
  ]);
}

/**
 * Faults of the nozzle against the barrel.
 * @param revision stored revision whose barrel and nozzle fit the schema
 * @param path path of the revision
 * @returns one issue per fault
 */
export function nozzleIssues(revision: NozzleParts, path: Path): readonly Issue[] {
  return brokenRules([nozzleLengthRule, nozzleWallRule, entryRule].map((rule) => rule(revision, path)));
}
