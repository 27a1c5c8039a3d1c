/** Cutting a body in two with holes for alignment pins. Lengths mm. */

import type { Design } from '../../design/types.ts';
import { neckOf, outsideAt } from '../../geometry/barrelWall.ts';
import { boreEnd, placeSegments } from '../../geometry/bore.ts';
import { placeSections, rootRadiusAt } from '../../geometry/profile.ts';
import { tipShape } from '../../geometry/tip.ts';
import { fail, ok, type Result } from '../../result.ts';
import { formatNumber } from '../../units.ts';
import { choiceOf, numberOf } from '../check.ts';
import type { HandoverValues } from '../types.ts';
import type { PartId } from './part.ts';
import type { Solid, SolidKit } from './solids.ts';

/** Metal left round a pin hole, mm; own choice. */
const margin = 0.8;
/** Where pins stand along a part that is cut lengthwise, as shares of its length. */
const pinShares = [0.15, 0.85] as const;
const pinChords = 48;

/** A stretch of a part along z, mm. */
export function partRange(design: Design, part: PartId): readonly [from: number, to: number] {
  const { barrel, screw } = design;
  if (part === 'screw') return [-1000 * screw.shankLength, 1000 * tipShape(design).end];
  if (part === 'barrel') return [0, 1000 * barrel.length];
  return [1000 * barrel.length, 1000 * boreEnd(design)];
}

/** Solid between these radii at `z` (all mm): the core of the screw, the wall of barrel and nozzle. */
function solidBand(design: Design, part: PartId, z: number): readonly [inner: number, outer: number] {
  const at = z / 1000;
  if (part === 'barrel') return [500 * design.barrel.boreDiameter, 1000 * outsideAt(design.barrel, at)];
  if (part === 'nozzle') {
    const here = placeSegments(design).filter(({ start, end }) => at >= start - 1e-9 && at <= end + 1e-9);
    const bore = Math.max(0, ...here.flatMap(({ startRadius, endRadius }) => [startRadius, endRadius]));
    return [1000 * bore, 500 * design.nozzle.outerDiameter];
  }
  if (at < 0) return [0, 500 * design.screw.shankDiameter];
  const placed = placeSections(design.screw).find(({ start, end }) => at >= start && at <= end);
  return [0, placed ? 1000 * rootRadiusAt(placed.section, at - placed.start) : 0];
}

/** A pin hole: its middle on the cut, and the free way into each side, mm. */
interface PinPlace {
  readonly x: number;
  readonly z: number;
  readonly reach: number;
}

/** Ends of the barrel's neck, mm; a pin may not run through them. */
function shoulders(design: Design, part: PartId): number[] {
  const neck = part === 'barrel' ? neckOf(design.barrel) : null;
  return neck ? [1000 * neck.start, 1000 * neck.end] : [];
}

/** Places on either side of the axis in a wall, or on the axis in a core; empty where there is no room. */
function placesAt(design: Design, part: PartId, z: number, radius: number, isAcross: boolean): PinPlace[] {
  const [inner, outer] = solidBand(design, part, z);
  const [from, to] = partRange(design, part);
  const steps = shoulders(design, part).map((shoulder) => Math.abs(z - shoulder));
  if (!isAcross && steps.some((away) => away < radius + margin)) return [];
  const along = Math.min(z - from, to - z, ...steps) - margin;
  if (part === 'screw') {
    const beside = outer / 2;
    const twoFit = isAcross && beside - radius >= margin / 2 && outer - beside - radius >= margin;
    const xs = twoFit ? [beside, -beside] : [0];
    const fits = outer - radius >= margin;
    return fits ? xs.map((x) => ({ x, z, reach: isAcross ? along : outer - margin })) : [];
  }
  const x = (inner + outer) / 2;
  if ((outer - inner) / 2 - radius < margin) return [];
  const sideways = Math.sqrt(Math.max(0, outer ** 2 - (x + radius) ** 2)) - margin;
  return [x, -x].map((each) => ({ x: each, z, reach: isAcross ? along : sideways }));
}

const located = (id: string, message: string, value: string, allowed: string, remedy: string): Result<never> =>
  fail({ path: ['options', id], code: 'handover-option', message, value, allowed, remedy });

/** Pin holes over the cut as one body each; an issue where they do not fit. */
function pinHoles(
  kit: SolidKit,
  design: Design,
  part: PartId,
  values: HandoverValues,
  zs: readonly number[],
): Result<readonly Solid[]> {
  const [diameter, depth] = [numberOf(values, 'pinDiameter'), numberOf(values, 'pinDepth')];
  if (diameter === 0 || depth === 0) return ok([]);
  const isAcross = choiceOf(values, 'split') === 'across';
  const places = zs.flatMap((z) => placesAt(design, part, z, diameter / 2, isAcross));
  if (places.length === 0) {
    const message = `The ${part} has no room for pins of this diameter at the cut.`;
    return located(
      'pinDiameter',
      message,
      `${diameter} mm`,
      `with ${margin} mm left round them`,
      'Take thinner pins, or 0 for none.',
    );
  }
  const reach = Math.min(...places.map((place) => place.reach));
  if (depth > reach) {
    const most = `0 to ${formatNumber(Math.max(0, reach), 3)} mm in the ${part}`;
    return located('pinDepth', 'Pins so deep would leave the body.', `${depth} mm`, most, 'Take less.');
  }
  return ok(
    places.map(({ x, z }) => {
      const hole = kit.Manifold.cylinder(2 * depth, diameter / 2, diameter / 2, pinChords, true);
      return (isAcross ? hole : hole.rotate([90, 0, 0])).translate([x, 0, z]);
    }),
  );
}

/** Which parts a cut across at `z` (mm) meets. */
export const isCutAt = (design: Design, part: PartId, z: number): boolean => {
  const [from, to] = partRange(design, part);
  return z > from + margin && z < to - margin;
};

/** Both sides of a cut with their names, turned so that the cut face looks down where wanted. */
export function splitBody(
  kit: SolidKit,
  design: Design,
  part: PartId,
  body: Solid,
  values: HandoverValues,
  layDown: boolean,
): Result<readonly { readonly name: string; readonly solid: Solid }[]> {
  const isAcross = choiceOf(values, 'split') === 'across';
  const [from, to] = partRange(design, part);
  const at = numberOf(values, 'splitAt');
  if (isAcross && !isCutAt(design, part, at)) return ok([{ name: part, solid: body }]);
  const zs = isAcross ? [at] : pinShares.map((share) => from + share * (to - from));
  const holes = pinHoles(kit, design, part, values, zs);
  if (!holes.ok) return holes;
  const bored = holes.value.reduce((solid, hole) => solid.subtract(hole), body);
  const [front, rear] = bored.splitByPlane(isAcross ? [0, 0, 1] : [0, 1, 0], isAcross ? at : 0);
  if (isAcross) {
    const turned = layDown ? rear.rotate([180, 0, 0]) : rear;
    return ok([
      { name: `${part}-front`, solid: front },
      { name: `${part}-rear`, solid: turned },
    ]);
  }
  return ok([
    { name: `${part}-half-1`, solid: layDown ? front.rotate([90, 0, 0]) : front },
    { name: `${part}-half-2`, solid: layDown ? rear.rotate([-90, 0, 0]) : rear },
  ]);
}
