/** Where walls, flights and roots are thinner than a wanted least. */

import type { Design } from '../../design/types.ts';
import { neckOf, openingRange } from '../../geometry/barrelWall.ts';
import { placeSegments } from '../../geometry/bore.ts';
import { helixAngle } from '../../geometry/crossSection.ts';
import { flightProfileAt } from '../../geometry/flightProfile.ts';
import { flightRadius, leadAt, placeSections } from '../../geometry/profile.ts';
import { formatNumber, formatQuantity } from '../../units.ts';
import type { PartId } from './part.ts';

/** A place and what it measures, m. */
interface Thickness {
  readonly where: string;
  readonly thick: number;
}

/** Lands across the flight and roots across the axis, at both ends of every section. */
function screwThicknesses(design: Design): Thickness[] {
  const crest = flightRadius(design);
  const { shankDiameter, shankLength, tip } = design.screw;
  const sections = placeSections(design.screw).flatMap(({ section, start, index }) =>
    [0, section.length].flatMap((u): Thickness[] => {
      const at = `section ${index + 1} at ${formatQuantity(start + u, 'mm', 4)}`;
      const root = u === 0 ? section.rootDiameterStart : section.rootDiameterEnd;
      if (section.kind === 'plain') return [{ where: `root of ${at}`, thick: root }];
      const land = 2 * flightProfileAt(section, u, crest).halfLand * Math.cos(helixAngle(leadAt(section, u), crest));
      return [
        { where: `land of ${at}`, thick: land },
        { where: `root of ${at}`, thick: root },
      ];
    }),
  );
  const shank = shankLength > 0 ? [{ where: 'shank', thick: shankDiameter }] : [];
  const pin = tip.pinDiameter > 0 && tip.pinLength > 0 ? [{ where: 'pin at the tip', thick: tip.pinDiameter }] : [];
  return [...shank, ...sections, ...pin];
}

/** Wall, neck of the heat break, and the webs that the feed opening leaves to both ends of the barrel. */
function barrelThicknesses({ barrel }: Design): Thickness[] {
  const bore = barrel.boreDiameter / 2;
  const neck = neckOf(barrel);
  const { start, end } = openingRange(barrel);
  const webs = [
    { where: 'web from the barrel’s start to the feed opening', thick: start },
    { where: 'web from the feed opening to the barrel’s end', thick: barrel.length - end },
  ];
  const place = neck && `${formatQuantity(neck.start, 'mm', 4)} to ${formatQuantity(neck.end, 'mm', 4)}`;
  return [
    { where: 'wall of the barrel', thick: barrel.outerDiameter / 2 - bore },
    ...(neck ? [{ where: `wall of the heat break’s neck from ${place}`, thick: neck.radius - bore }] : []),
    // an opening that runs out of an end leaves no web there
    ...webs.filter(({ thick }) => end > start && thick > 0),
  ];
}

function wallThicknesses(design: Design, part: 'barrel' | 'nozzle'): Thickness[] {
  const { nozzle } = design;
  if (part === 'barrel') return barrelThicknesses(design);
  return placeSegments(design)
    .filter(({ start, end }) => end > start)
    .map(({ start, startRadius, endRadius }) => ({
      where: `wall of the nozzle from ${formatQuantity(start, 'mm', 4)}`,
      thick: nozzle.outerDiameter / 2 - Math.max(startRadius, endRadius),
    }));
}

/**
 * Places of a part thinner than `least` (m), thinnest first, as sentences. Lands are measured across the flight at the
 * crest, where a flight is thinnest.
 */
export function thinPlaces(design: Design, part: PartId, least: number): string[] {
  const all = part === 'screw' ? screwThicknesses(design) : wallThicknesses(design, part);
  return all
    .filter(({ thick }) => thick < least)
    .sort((a, b) => a.thick - b.thick)
    .map(({ where, thick }) => `${where}: ${formatNumber(1000 * thick, 3)} mm`);
}
