/** What a tool meets where it cuts the screw. Plain geometry of the flight. */

import type { Design, FlightedSection } from '../design/types.ts';
import { helixAngle } from '../geometry/crossSection.ts';
import { type FlightProfile, flightProfileAt, halfWidthAt } from '../geometry/flightProfile.ts';
import { distanceAfterTurns, flightRadius, type PlacedSection, placeSections } from '../geometry/profile.ts';
import { tipShape } from '../geometry/tip.ts';

/** Figures at one place of a flight. SI; widths "across" are normal to the flight, along it lies the channel. */
export interface CutFigures {
  /** index into screw.sections */
  readonly section: number;
  readonly z: number;
  /** diameter of the channel's floor, raised where flanks meet above the root */
  readonly rootDiameter: number;
  /** from crest to floor: what is cut, without the clearance */
  readonly depth: number;
  readonly lead: number;
  readonly starts: number;
  readonly helixRoot: number;
  readonly helixCrest: number;
  readonly flank: number;
  /** axial width of the land as made */
  readonly land: number;
  /** land across */
  readonly landAcross: number;
  /** flight's thickness across at half its height, fillets not counted */
  readonly meanThickness: number;
  /** corner radius in the axial plane as made: the largest that a tool may have */
  readonly fillet: number;
  /** across, between the flanks at the floor, fillets not counted: the widest tool */
  readonly widestTool: number;
}

/** Figures of a flight profile. */
function figuresOf(profile: FlightProfile, section: number, z: number): CutFigures {
  const { floorRadius, flightRadius: crest, lead, halfLand, halfFoot, pitch } = profile;
  const helixRoot = helixAngle(lead, floorRadius);
  const helixCrest = helixAngle(lead, crest);
  const middle = (floorRadius + crest) / 2;
  const plain = { ...profile, fillet: 0, filletHeight: 0, halfBase: halfFoot };
  return {
    section,
    z,
    rootDiameter: 2 * floorRadius,
    depth: crest - floorRadius,
    lead,
    starts: profile.starts,
    helixRoot,
    helixCrest,
    flank: profile.flank,
    land: 2 * halfLand,
    landAcross: 2 * halfLand * Math.cos(helixCrest),
    meanThickness: 2 * halfWidthAt(plain, middle) * Math.cos(helixAngle(lead, middle)),
    fillet: profile.fillet,
    widestTool: (pitch - 2 * halfFoot) * Math.cos(helixRoot),
  };
}

/** Figures at `u` (m) from the start of a placed flighted section. */
export function cutFigures(design: Design, placed: PlacedSection, section: FlightedSection, u: number): CutFigures {
  return figuresOf(flightProfileAt(section, u, flightRadius(design)), placed.index, placed.start + u);
}

/** Figures at both ends of every flighted section; between them root and lead run straight. */
export function sectionEnds(design: Design): CutFigures[] {
  return placeSections(design.screw).flatMap((placed) => {
    const { section } = placed;
    return section.kind === 'flighted' ? [0, section.length].map((u) => cutFigures(design, placed, section, u)) : [];
  });
}

/** Length of the screw from the shank's end to the foremost point, m. */
export const overallLength = (design: Design): number => design.screw.shankLength + tipShape(design).end;

/** Largest diameter of the screw, m: what the bar must hold. */
export function blankDiameter(design: Design): number {
  const { shankDiameter, shankLength, sections } = design.screw;
  const shank = shankLength > 0 ? shankDiameter : 0;
  const roots = sections.flatMap(({ kind, rootDiameterStart, rootDiameterEnd }) =>
    kind === 'flighted' ? [2 * flightRadius(design)] : [rootDiameterStart, rootDiameterEnd],
  );
  return Math.max(shank, ...roots);
}

/** Change of the root's diameter over the section's first turn, m; the root is even along z, its lead may not be. */
export const taperPerTurn = (section: FlightedSection): number =>
  ((section.rootDiameterEnd - section.rootDiameterStart) / section.length) * distanceAfterTurns(section, 1);
