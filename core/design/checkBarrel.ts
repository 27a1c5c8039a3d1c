/** Whether barrel, feed opening, heat break and nozzle fit together. All lengths mm as stored. */

import type { Revision } from '../project/schema.ts';
import { zoneIssues } from '../project/zoneChecks.ts';
import type { Issue } from '../result.ts';
import { brokenRules, mmText, type Path, type Rule, slackMm } from './issueList.ts';

/** Shortest nozzle that flow can be computed for, mm. */
const shortestNozzleMm = 0.05;

function wallRules(revision: Revision, path: Path): readonly Rule[] {
  const { boreDiameterMm, outerDiameterMm } = revision.barrel;
  return [
    {
      holds: outerDiameterMm > boreDiameterMm + slackMm,
      path: [...path, 'barrel', 'outerDiameterMm'],
      code: 'barrel-without-wall',
      message: 'The barrel has no wall.',
      value: mmText(outerDiameterMm),
      allowed: `more than the bore of ${mmText(boreDiameterMm)}`,
      remedy: 'Enlarge the outer diameter or reduce the bore.',
    },
  ];
}

/** Stretches of the axis where a flight runs, mm. */
function flightedStretches(revision: Revision): readonly { readonly startMm: number; readonly endMm: number }[] {
  let endMm = 0;
  return revision.screw.sections.flatMap((section) => {
    const startMm = endMm;
    endMm += section.lengthMm;
    return section.kind === 'flighted' ? [{ startMm, endMm }] : [];
  });
}

function feedRules(revision: Revision, path: Path): readonly Rule[] {
  const { feedOpening, lengthMm, outerDiameterMm } = revision.barrel;
  const endMm = feedOpening.startMm + feedOpening.lengthMm;
  const over = flightedStretches(revision).some((s) => s.startMm < endMm && s.endMm > feedOpening.startMm);
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
      holds: over,
      path: [...at, 'startMm'],
      code: 'feed-without-flight',
      message: 'No flight runs under the feed opening, so nothing would be drawn in.',
      value: `${mmText(feedOpening.startMm)} to ${mmText(endMm)}`,
      allowed: 'an opening over a flighted section',
      remedy: 'Move the feed opening, or make the section under it flighted.',
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

function heatBreakRules(revision: Revision, path: Path): readonly Rule[] {
  const { heatBreak, lengthMm, boreDiameterMm, outerDiameterMm } = revision.barrel;
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
      holds: heatBreak.wallMm <= thickestMm + slackMm,
      path: [...path, 'barrel', 'heatBreak', 'wallMm'],
      code: 'heat-break-too-thick',
      message: 'The wall of the heat break is thicker than that of the barrel.',
      value: mmText(heatBreak.wallMm),
      allowed: `at most ${mmText(thickestMm)}`,
      remedy: 'Reduce the wall of the heat break.',
    },
  ];
}

function nozzleRules(revision: Revision, path: Path): readonly Rule[] {
  const { segments, outerDiameterMm } = revision.nozzle;
  const lengthMm = segments.reduce((sum, s) => sum + s.lengthMm, 0);
  const orificeMm = segments[segments.length - 1]?.endDiameterMm ?? Number.NaN;
  return [
    {
      holds: lengthMm >= shortestNozzleMm,
      path: [...path, 'nozzle', 'segments'],
      code: 'nozzle-too-short',
      message: 'The nozzle has no length.',
      value: mmText(lengthMm),
      allowed: `at least ${mmText(shortestNozzleMm)} in all`,
      remedy: 'Give the land or the entry a length.',
    },
    {
      holds: outerDiameterMm > orificeMm,
      path: [...path, 'nozzle', 'outerDiameterMm'],
      code: 'nozzle-without-wall',
      message: 'The nozzle is no wider than its orifice.',
      value: mmText(outerDiameterMm),
      allowed: `more than ${mmText(orificeMm)}`,
      remedy: 'Enlarge the nozzle or reduce its orifice.',
    },
  ];
}

/**
 * Faults of barrel and nozzle.
 * @param revision stored revision that fits the schema
 * @param path path of the revision
 * @returns one issue per fault
 */
export function barrelIssues(revision: Revision, path: Path): readonly Issue[] {
  const rules = [wallRules, feedRules, heatBreakRules, nozzleRules].flatMap((check) => check(revision, path));
  return [...brokenRules(rules), ...zoneIssues(revision.barrel, [...path, 'barrel'])];
}
