/** Whether the end of the screw fits the bore ahead of it. */

import { boreOutline } from '../geometry/bore.ts';
import { sectionsLength } from '../geometry/profile.ts';
import { tipOutline, tipShape } from '../geometry/tip.ts';
import type { Revision } from '../project/schema.ts';
import type { Issue } from '../result.ts';
import { fromSi, toSi } from '../units.ts';
import { clearanceFits } from './checkScrew.ts';
import { firstNarrowing, leastClearance, type MeridianPoint } from './clearance.ts';
import { barrelOf, nozzleOf, screwOf } from './convert.ts';
import { brokenRules, mmText, type Path, type Rule, slackMm } from './issueList.ts';

/** Least distance between a turning tip and the wall: below it they rub once warm (common practice). mm */
const leastTipClearanceMm = 0.05;

/** Chords that stand for a hemisphere's quarter circle. */
const arcChords = 24;

const boreOf = (revision: Revision): readonly MeridianPoint[] =>
  boreOutline({ barrel: barrelOf(revision), nozzle: nozzleOf(revision) });

function pinRules(revision: Revision, path: Path): readonly Rule[] {
  const { tip } = revision.screw;
  const bodyMm = fromSi(2 * tipShape({ screw: screwOf(revision) }).bodyRadius, 'mm');
  return [
    {
      holds: tip.pinDiameterMm <= bodyMm + slackMm,
      path: [...path, 'screw', 'tip', 'pinDiameterMm'],
      code: 'pin-too-thick',
      message: "The tip's pin is thicker than the body it stands on.",
      value: mmText(tip.pinDiameterMm),
      allowed: `at most ${mmText(bodyMm)}, the last root diameter`,
      remedy: 'Reduce the pin or enlarge the last root diameter.',
    },
    {
      holds: tip.pinLengthMm === 0 || tip.pinDiameterMm > 0,
      path: [...path, 'screw', 'tip', 'pinDiameterMm'],
      code: 'pin-without-diameter',
      message: 'The pin has a length but no diameter.',
      value: mmText(tip.pinDiameterMm),
      allowed: `above 0 where the pin is ${mmText(tip.pinLengthMm)} long`,
      remedy: 'Give the pin a diameter, or set its length to 0.',
    },
  ];
}

function lengthRule(revision: Revision, path: Path): Rule {
  const sectionsMm = fromSi(sectionsLength(screwOf(revision)), 'mm');
  const { lengthMm } = revision.barrel;
  return {
    holds: sectionsMm <= lengthMm + slackMm,
    path: [...path, 'screw', 'sections'],
    code: 'screw-too-long',
    message: "The screw's sections together are longer than the barrel.",
    value: mmText(sectionsMm),
    allowed: `at most ${mmText(lengthMm)}, the barrel's length`,
    remedy: 'Shorten the sections or lengthen the barrel.',
  };
}

function contactRule(revision: Revision, path: Path): Rule {
  const tip = tipOutline(tipShape({ screw: screwOf(revision) }), arcChords);
  const bore = boreOf(revision);
  const gapMm = fromSi(leastClearance(tip, bore), 'mm');
  const through = gapMm === Number.NEGATIVE_INFINITY;
  return {
    holds: gapMm > leastTipClearanceMm,
    path: [...path, 'screw', 'tip'],
    code: 'tip-touches',
    message: through ? 'The tip reaches out of the nozzle.' : 'The tip touches or nearly touches the bore.',
    value: through ? 'past the orifice' : gapMm <= 0 ? `overlap of ${mmText(-gapMm)}` : `distance ${mmText(gapMm)}`,
    allowed: `a distance above ${mmText(leastTipClearanceMm)} everywhere`,
    remedy: 'Shorten the screw or its tip, lengthen the barrel, or open the entry.',
  };
}

/** A flight that runs to the screw's end must stop before the bore narrows. */
function flightEndRule(revision: Revision, path: Path): Rule {
  const { sections, radialClearanceMm } = revision.screw;
  const flightMm = revision.barrel.boreDiameterMm / 2 - radialClearanceMm;
  const narrowMm = fromSi(firstNarrowing(boreOf(revision), toSi(flightMm, 'mm')), 'mm');
  const endMm = fromSi(sectionsLength(screwOf(revision)), 'mm');
  const limitMm = narrowMm - leastTipClearanceMm;
  return {
    holds: sections[sections.length - 1]?.kind !== 'flighted' || endMm < limitMm + slackMm,
    path: [...path, 'screw', 'sections', sections.length - 1, 'lengthMm'],
    code: 'flight-touches',
    message: 'The end of the flight touches or nearly touches the shoulder of the bore.',
    value: mmText(endMm),
    allowed: `an end at ${mmText(limitMm)} or before`,
    remedy: 'Shorten the last section, end it plain, or lengthen the barrel.',
  };
}

/** Whether the last root, where the tip begins, lies inside the bore. */
function lastRootFits({ screw, barrel }: Revision): boolean {
  const last = screw.sections[screw.sections.length - 1];
  return last !== undefined && last.rootDiameterEndMm < barrel.boreDiameterMm - slackMm;
}

/**
 * Faults of the tip against the bore.
 * @param revision stored revision whose screw, barrel and nozzle fit the schema
 * @param path path of the revision
 * @returns one issue per fault; contact is judged only where pin, length, last root and clearance are sound
 */
export function tipIssues(revision: Revision, path: Path): readonly Issue[] {
  const first = brokenRules([...pinRules(revision, path), lengthRule(revision, path)]);
  if (first.length > 0 || !lastRootFits(revision)) return first;
  const contact = brokenRules([contactRule(revision, path)]);
  return clearanceFits(revision) ? [...contact, ...brokenRules([flightEndRule(revision, path)])] : contact;
}
