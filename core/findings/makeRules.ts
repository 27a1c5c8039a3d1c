/** Findings about what is hard to cut: slender roots, corners, thin flights, narrow channels, fine tips, thin walls. */

import type { Design } from '../design/types.ts';
import { type CutFigures, overallLength, sectionEnds } from '../make/cutting.ts';
import { formatNumber, fromSi } from '../units.ts';
import { type FindingRule, type Found, found } from './context.ts';
import { wallRules } from './wallRules.ts';
import { lengthText } from './words.ts';

/** Length over diameter from which a bar between centres wants a rest; common practice, 10 to 12. */
export const mostSlender = 12;

/** Corner radius of the sharpest usual turning inserts, m: 0.2 mm; common practice, 0.4 mm is the usual one. */
export const leastCorner = 0.2e-3;

/** Height over thickness of a free-standing wall that is still cut without chatter; common practice, 4 to 5. */
export const mostFlightHeight = 4;

/** Width of the smallest grooving tools and end mills that shops keep, m: 1 mm; common practice. */
export const leastTool = 1e-3;

/** Reach over width of usual tools; common practice, 3. */
export const mostReach = 3;

/** Included angle below which a bare point is burnt or broken while it is cut, rad: 40 degrees; own choice. */
export const leastPoint = (40 * Math.PI) / 180;

/** Thinnest free pin, m: 1 mm; common practice of turning without a tailstock. */
export const leastPin = 1e-3;

/** Greatest length over diameter of a free pin; common practice of turning without a tailstock, 3 to 4. */
export const mostPin = 4;

/** Lengths that differ by less are one, m. */
const same = 1e-9;
const ratio = (value: number) => formatNumber(value, 3);

/** The end of a section at which a figure is worst. */
function worst(
  design: Design,
  badness: (figures: CutFigures) => number,
): { figures: CutFigures; badness: number } | null {
  return sectionEnds(design)
    .map((figures) => ({ figures, badness: badness(figures) }))
    .reduce<{ figures: CutFigures; badness: number } | null>((a, b) => (a && a.badness >= b.badness ? a : b), null);
}

const placeOf = ({ section }: CutFigures): string => `flight of section ${section + 1}`;

function slender(design: Design, diameter: number, at: number): Found | null {
  const length = overallLength(design);
  const slenderness = length / diameter;
  if (slenderness <= mostSlender) return null;
  return found({
    severity: 'note',
    where: 'whole screw',
    z: at,
    saw: `The screw is ${lengthText(length)} long over a least root of ${lengthText(diameter)}, ${ratio(slenderness)} diameters; ${mostSlender} are turned between centres without a rest.`,
    why: 'Its middle springs away from the tool: the root comes out thicker there, the flight chatters, and the bar bows when stresses in it are cut free.',
    change:
      'Plan a steady or following rest, cut the flight before the ends, use stress-relieved bar, or thicken the root.',
    value: slenderness,
    limit: mostSlender,
  });
}

function finePoint({ screw: { tip } }: Design, z: number): Found | null {
  const { kind, includedAngle, pinDiameter, pinLength } = tip;
  const why = 'A fine end breaks, burns or springs while it is cut, and again in service.';
  if (pinDiameter > 0 && pinLength > 0) {
    const slim = pinDiameter < leastPin - same;
    if (!slim && pinLength <= mostPin * pinDiameter + same) return null;
    return found({
      severity: 'note',
      where: 'pin of the tip',
      z,
      saw: slim
        ? `The pin is ${lengthText(pinDiameter)} thick; ${lengthText(leastPin)} are turned with common tools.`
        : `The pin is ${ratio(pinLength / pinDiameter)} diameters long; ${mostPin} stand free of a tailstock.`,
      why,
      change: slim ? 'Thicken the pin or leave it out.' : 'Shorten or thicken the pin.',
      value: slim ? pinDiameter : pinLength / pinDiameter,
      limit: slim ? leastPin : mostPin,
      unit: slim ? 'm' : '',
    });
  }
  if (kind !== 'cone' || pinDiameter > 0 || includedAngle >= leastPoint) return null;
  const degrees = (angle: number) => `${formatNumber(fromSi(angle, '°'), 3)}°`;
  return found({
    severity: 'note',
    where: 'tip of the screw',
    z,
    saw: `The cone runs to a bare point of ${degrees(includedAngle)}; below ${degrees(leastPoint)} points are fragile.`,
    why,
    change: 'Blunt the point with a pin diameter and no pin length, or open the cone.',
    value: includedAngle,
    limit: leastPoint,
    unit: 'rad',
  });
}

/** Rules of cutting. */
export const makeRules: readonly FindingRule[] = [
  {
    code: 'screw-slender',
    about: 'length of the screw over its least root, for turning between centres',
    check: ({ design, prediction: { geometry } }) => slender(design, geometry.leastRootDiameter, geometry.leastRootAt),
  },
  {
    code: 'corner-sharp',
    about: 'root fillet against the corner radius of usual tools',
    check: ({ design }) => {
      const sharpest = worst(design, ({ fillet }) => -fillet);
      if (!sharpest || sharpest.figures.fillet >= leastCorner - same) return null;
      const { fillet, z } = sharpest.figures;
      return found({
        severity: 'note',
        where: placeOf(sharpest.figures),
        z,
        saw: `The corner between root and flank is ${fillet < same ? 'sharp' : `${lengthText(fillet)} round`}; the sharpest usual tools leave ${lengthText(leastCorner)}.`,
        why: 'A sharper corner needs a tool ground for it, which wears at once, and a crack starts there.',
        change: `Enter a root fillet of at least ${lengthText(leastCorner)}; 0.4 mm suits common inserts.`,
        value: fillet,
        limit: leastCorner,
        unit: 'm',
      });
    },
  },
  {
    code: 'flight-slim',
    about: 'height of the flight over its thickness',
    check: ({ design }) => {
      const slimmest = worst(design, ({ depth, meanThickness }) => depth / meanThickness);
      if (!slimmest || slimmest.badness <= mostFlightHeight) return null;
      const { depth, meanThickness, z } = slimmest.figures;
      return found({
        severity: 'note',
        where: placeOf(slimmest.figures),
        z,
        saw: `The flight stands ${lengthText(depth)} high and is ${lengthText(meanThickness)} thick half way up, across its run: ${ratio(slimmest.badness)} times as high as thick; ${mostFlightHeight} are cut without chatter.`,
        why: 'A slim flight bends away from the tool, rings, and leaves a wavy flank.',
        change: 'Widen the land, slant the flanks, or make the channel shallower.',
        value: slimmest.badness,
        limit: mostFlightHeight,
      });
    },
  },
  {
    code: 'channel-narrow',
    about: 'narrowest channel against the smallest usual tool',
    check: ({ design }) => {
      const narrowest = worst(design, ({ widestTool }) => -widestTool);
      if (!narrowest || narrowest.figures.widestTool >= leastTool - same) return null;
      const { widestTool, z } = narrowest.figures;
      return found({
        severity: 'note',
        where: placeOf(narrowest.figures),
        z,
        saw: `Between the flights a tool of ${lengthText(widestTool)} fits at the most; the smallest usual ones are ${lengthText(leastTool)}.`,
        why: 'Smaller tools break easily and are made to order.',
        change: 'Use a longer lead, fewer starts, a narrower flight or steeper flanks.',
        value: widestTool,
        limit: leastTool,
        unit: 'm',
      });
    },
  },
  {
    code: 'channel-deep-narrow',
    about: 'depth of the channel over the widest tool that fits into it',
    check: ({ design }) => {
      const deepest = worst(design, ({ depth, widestTool }) => depth / widestTool);
      if (!deepest || deepest.badness <= mostReach) return null;
      const { depth, widestTool, z } = deepest.figures;
      return found({
        severity: 'note',
        where: placeOf(deepest.figures),
        z,
        saw: `The channel is ${lengthText(depth)} deep, ${ratio(deepest.badness)} times the ${lengthText(widestTool)} of the widest tool that fits; ${mostReach} times are reached without chatter.`,
        why: 'A tool that reaches far springs: the channel tapers and the root is torn.',
        change: 'Use a longer lead, fewer starts, a narrower flight or a shallower channel.',
        value: deepest.badness,
        limit: mostReach,
      });
    },
  },
  {
    code: 'tip-fine',
    about: 'point and pin of the tip against what is turned without breaking',
    check: ({ design, prediction: { geometry } }) => finePoint(design, geometry.tipEnd),
  },
  ...wallRules,
];
