/** The screw as a row of zones along z, each smooth inside: turned pieces and stretches of flight. */

import type { Design, FlightedSection, ScrewSection } from '../../design/types.ts';
import { flightProfileAt } from '../../geometry/flightProfile.ts';
import {
  distanceAfterTurns,
  flightRadius,
  type PlacedSection,
  placeSections,
  rootRadiusAt,
  turnsAt,
} from '../../geometry/profile.ts';
import { tipShape } from '../../geometry/tip.ts';
import { circleOutline, flightOutline, type Outline } from './outline.ts';
import { leastIntervals } from './splines.ts';

/** Lengths of design are in m, those of the kernel in mm. */
export const millimetres = 1e3;

/** A turned piece: a straight side, or a ball's about the axis at its start. mm. */
export interface TurnedZone {
  readonly kind: 'turned';
  readonly side: 'straight' | 'ball';
  readonly from: number;
  readonly to: number;
  readonly startRadius: number;
  readonly endRadius: number;
}

/** A stretch of flight as outlines at equal turns. mm. */
export interface FlightZone {
  readonly kind: 'flight';
  readonly from: number;
  readonly to: number;
  readonly rings: readonly { readonly z: number; readonly outline: Outline }[];
}

/** A zone. */
export type Zone = TurnedZone | FlightZone;

/** Rings in a turn: a cubic through them leaves a circle by (2 pi / 32)^4 / 384 of its radius, 4 parts in a million. */
const ringsPerTurn = 32;
/** Places along a section where its flight is looked at for a change of rule. */
const looks = 256;

/** Which bounds shape the flight at `u`; a change is a kink, across which no smooth face may run. */
function ruleAt(section: FlightedSection, u: number, crest: number): string {
  const { pitch, halfLand, floorRadius, fillet } = flightProfileAt(section, u, crest);
  const land = Math.abs(halfLand - section.flightWidth / 2) < 1e-12 ? 'land' : 'bounded';
  const floor = Math.abs(floorRadius - rootRadiusAt(section, u)) < 1e-12 ? 'root' : 'raised';
  if (Math.abs(fillet - section.rootFillet) < 1e-12) return `${land} ${floor} fillet`;
  const spread = (1 - Math.sin(section.flankAngle)) / Math.cos(section.flankAngle);
  const foot = halfLand + (crest - floorRadius) * Math.tan(section.flankAngle);
  const byWidth = Math.abs(fillet - (0.495 * pitch - foot) / spread) < 1e-9;
  return `${land} ${floor} ${byWidth ? 'width' : 'height'}`;
}

/** Distances (m) from a section's start where its flight's shape has a kink, ends included. */
export function kinks(section: FlightedSection, crest: number): number[] {
  const found = [0];
  let [before, rule] = [0, ruleAt(section, 0, crest)];
  for (let i = 1; i <= looks; i++) {
    const u = (section.length * i) / looks;
    const next = ruleAt(section, u, crest);
    if (next !== rule) {
      let [low, high] = [before, u];
      for (let k = 0; k < 50; k++) {
        const middle = (low + high) / 2;
        if (ruleAt(section, middle, crest) === rule) low = middle;
        else high = middle;
      }
      if (low > 1e-6 && section.length - low > 1e-6) found.push(low);
    }
    [before, rule] = [u, next];
  }
  return [...found, section.length];
}

/** One smooth stretch of flight between two distances from its section's start, m. */
function flightZone(
  placed: PlacedSection,
  section: FlightedSection,
  ends: [number, number],
  crest: number,
): FlightZone {
  const first = turnsAt(section, ends[0]);
  const turns = turnsAt(section, ends[1]) - first;
  const count = Math.max(leastIntervals, Math.ceil(turns * ringsPerTurn));
  const rings = Array.from({ length: count + 1 }, (_, i) => {
    const own = first + (turns * i) / count;
    const u = i === 0 ? ends[0] : i === count ? ends[1] : distanceAfterTurns(section, own);
    const phase = 2 * Math.PI * (placed.turnsBefore + own);
    const outline = flightOutline(flightProfileAt(section, u, crest), phase, millimetres);
    return { z: (placed.start + u) * millimetres, outline };
  });
  return { kind: 'flight', from: (rings[0] as { z: number }).z, to: (rings[count] as { z: number }).z, rings };
}

const turned = (from: number, to: number, startRadius: number, endRadius: number): TurnedZone => ({
  kind: 'turned',
  side: 'straight',
  from: from * millimetres,
  to: to * millimetres,
  startRadius: startRadius * millimetres,
  endRadius: endRadius * millimetres,
});

/** Zones of the tip: its body and its pin. */
function tipZones(design: Design): Zone[] {
  const tip = tipShape(design);
  const joint = tip.start + tip.bodyLength;
  const body = turned(tip.start, joint, tip.bodyRadius, tip.pinRadius);
  const ball: TurnedZone = { ...body, side: tip.kind === 'hemisphere' ? 'ball' : 'straight' };
  return [ball, turned(joint, tip.end, tip.pinRadius, tip.pinRadius)].filter(({ from, to }) => to > from);
}

function sectionZones(placed: PlacedSection, section: ScrewSection, crest: number): Zone[] {
  if (section.kind === 'plain') {
    return [turned(placed.start, placed.end, section.rootDiameterStart / 2, section.rootDiameterEnd / 2)];
  }
  const cuts = kinks(section, crest);
  return cuts.slice(1).map((to, i) => flightZone(placed, section, [cuts[i] as number, to], crest));
}

/** All zones of the screw in order: shank, sections, tip. mm, hand not yet regarded. */
export function screwZones(design: Design): Zone[] {
  const { shankLength, shankDiameter } = design.screw;
  const crest = flightRadius(design);
  const shank = shankLength > 0 ? [turned(-shankLength, 0, shankDiameter / 2, shankDiameter / 2)] : [];
  const sections = placeSections(design.screw).flatMap((placed) => sectionZones(placed, placed.section, crest));
  return [...shank, ...sections, ...tipZones(design)];
}

/** Outline of a zone at its start or end; null where it ends on the axis. */
export function endOutline(zone: Zone, end: 'from' | 'to'): Outline | null {
  if (zone.kind === 'flight') {
    const ring = end === 'from' ? zone.rings[0] : zone.rings[zone.rings.length - 1];
    return ring?.outline ?? null;
  }
  const radius = end === 'from' ? zone.startRadius : zone.endRadius;
  return radius > 0 ? circleOutline(radius) : null;
}
