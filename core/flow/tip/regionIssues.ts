/** What makes a tip region impossible: every reason at once, with place and limit. */

import type { Issue } from '../../result.ts';
import { filletReach, innerWall, outerWall, type Wall } from './outline.ts';
import { type ProfilePoint, type TipRegion, tipLength } from './region.ts';

/** Least clearance between tip and wall over the bore radius that is solved; below it, melt hardly passes. */
export const LEAST_CLEARANCE = 0.005;

/** Least orifice radius over the bore radius that is solved. */
export const LEAST_ORIFICE = 0.01;

const mm = (metres: number): string => `${(1e3 * metres).toPrecision(4)} mm`;

function issue(
  path: Issue['path'],
  code: string,
  message: string,
  value: string,
  allowed: string,
  remedy: string,
): Issue {
  return { path, code, message, value, allowed, remedy };
}

function positive(path: Issue['path'], value: number, name: string, zeroAllowed = false): Issue[] {
  if (Number.isFinite(value) && (zeroAllowed ? value >= 0 : value > 0)) return [];
  const allowed = zeroAllowed ? '0 mm or more' : 'more than 0 mm';
  return [
    issue(
      path,
      'not-a-length',
      `The ${name} is no usable length.`,
      mm(value),
      allowed,
      `Give the ${name} in millimetres.`,
    ),
  ];
}

function outerPointIssues(outer: readonly ProfilePoint[]): Issue[] {
  return outer.flatMap((point, i) => {
    const found = [
      ...positive(['outer', i, 'r'], point.r, i === outer.length - 1 ? 'orifice radius' : 'wall radius'),
      ...positive(['outer', i, 'z'], point.z, 'position along the axis', true),
    ];
    if (i > 0 && point.z < outer[i - 1].z)
      found.push(
        issue(
          ['outer', i, 'z'],
          'profile-runs-back',
          'The wall runs back against the flow.',
          mm(point.z),
          `${mm(outer[i - 1].z)} or more`,
          'Put the corners in order along the axis; equal positions make a step.',
        ),
      );
    if (i > 0 && point.z === outer[i - 1].z && point.r === outer[i - 1].r)
      found.push(
        issue(
          ['outer', i],
          'corner-twice',
          'Two corners of the wall are at the same place.',
          mm(point.z),
          'different places',
          'Remove one of them.',
        ),
      );
    return found;
  });
}

function endIssues(outer: readonly ProfilePoint[]): Issue[] {
  if (outer.length < 2)
    return [
      issue(
        ['outer'],
        'no-wall',
        'The wall has fewer than two corners.',
        String(outer.length),
        '2 or more',
        'Describe the wall from the inlet to the orifice.',
      ),
    ];
  const last = outer[outer.length - 1];
  const first = outer[0];
  const found: Issue[] = [];
  if (first.z !== 0)
    found.push(
      issue(
        ['outer', 0, 'z'],
        'profile-start',
        'The wall does not begin at the inlet.',
        mm(first.z),
        '0 mm',
        'Begin the wall at position 0.',
      ),
    );
  if (!(outer[1].z > first.z) || !(last.z > outer[outer.length - 2].z))
    found.push(
      issue(
        ['outer'],
        'profile-end',
        'The wall begins or ends with a step.',
        mm(last.z),
        'a straight or conical piece at both ends',
        'Add a short cylinder before the first and after the last step.',
      ),
    );
  const bore = Math.max(...outer.map((point) => point.r));
  if (last.r > 0 && last.r < LEAST_ORIFICE * bore)
    found.push(
      issue(
        ['outer', outer.length - 1, 'r'],
        'orifice-closed',
        'The orifice is nearly closed.',
        mm(last.r),
        `${mm(LEAST_ORIFICE * bore)} or more`,
        'Open the orifice.',
      ),
    );
  return found;
}

/** Fillets must fit between their neighbours. */
function filletIssues(outer: readonly ProfilePoint[]): Issue[] {
  const reach = outer.map((point, i) =>
    i === 0 || i === outer.length - 1 ? 0 : filletReach(outer[i - 1], point, outer[i + 1]),
  );
  return outer.flatMap((point, i) => {
    if (!(point.fillet && reach[i] > 0)) return [];
    const room = Math.min(
      Math.hypot(point.z - outer[i - 1].z, point.r - outer[i - 1].r) - reach[i - 1],
      Math.hypot(outer[i + 1].z - point.z, outer[i + 1].r - point.r) - reach[i + 1],
    );
    if (reach[i] <= room * (1 + 1e-9)) return [];
    const most = Math.max(0, (point.fillet * room) / reach[i]);
    return [
      issue(
        ['outer', i, 'fillet'],
        'fillet-too-large',
        'The fillet does not fit between its neighbours.',
        mm(point.fillet),
        `up to ${mm(most)}`,
        'Make the fillet smaller or the neighbouring pieces longer.',
      ),
    ];
  });
}

function tipIssues(region: TipRegion): Issue[] {
  const { screwRadius, annulusLength, tip, pin } = region;
  const found = [...positive(['screwRadius'], screwRadius, 'screw radius', true)];
  if (screwRadius === 0) return found;
  found.push(...positive(['annulusLength'], annulusLength, 'annulus length'));
  if (tip.kind === 'cone' && !(tip.includedAngle > 0.05 && tip.includedAngle < Math.PI))
    found.push(
      issue(
        ['tip', 'includedAngle'],
        'cone-angle',
        'The cone of the tip has an impossible angle.',
        `${((180 * tip.includedAngle) / Math.PI).toFixed(1)} deg`,
        '3 to under 180 deg',
        'Give the full angle of the cone.',
      ),
    );
  if (!pin) return found;
  found.push(
    ...positive(['pin', 'length'], pin.length, 'pin length'),
    ...positive(['pin', 'radius'], pin.radius, 'pin radius'),
  );
  if (pin.radius >= screwRadius)
    found.push(
      issue(
        ['pin', 'radius'],
        'pin-too-thick',
        'The pin is thicker than the screw that carries it.',
        mm(pin.radius),
        `under ${mm(screwRadius)}`,
        'Make the pin thinner.',
      ),
    );
  return found;
}

/** Shortest distance from a point to a straight piece. */
export function distanceToPiece(z: number, r: number, z0: number, r0: number, z1: number, r1: number): number {
  const ez = z1 - z0;
  const er = r1 - r0;
  const share = Math.max(0, Math.min(1, ((z - z0) * ez + (r - r0) * er) / (ez * ez + er * er || 1)));
  return Math.hypot(z - z0 - share * ez, r - r0 - share * er);
}

function cornersToPieces(from: Wall, to: Wall): { distance: number; z: number; r: number } {
  let best = { distance: Number.POSITIVE_INFINITY, z: 0, r: 0 };
  for (let i = 0; i < from.z.length; i++)
    for (let j = 0; j + 1 < to.z.length; j++) {
      const distance = distanceToPiece(from.z[i], from.r[i], to.z[j], to.r[j], to.z[j + 1], to.r[j + 1]);
      if (distance < best.distance) best = { distance, z: from.z[i], r: from.r[i] };
    }
  return best;
}

function crosses(inner: Wall, outer: Wall): boolean {
  const radius = (wall: Wall, z: number, pick: (...r: number[]) => number): number => {
    const found = wall.z.slice(1).flatMap((z1, i) => {
      const z0 = wall.z[i];
      if (z < z0 || z > z1) return [];
      return z1 === z0
        ? [wall.r[i], wall.r[i + 1]]
        : [wall.r[i] + ((wall.r[i + 1] - wall.r[i]) * (z - z0)) / (z1 - z0)];
    });
    return found.length > 0 ? pick(...found) : Number.NaN;
  };
  const planes = [...inner.z, ...outer.z].filter((z) => z <= inner.z[inner.z.length - 1]);
  return planes.some((z) => radius(inner, z, Math.max) >= radius(outer, z, Math.min));
}

function clearanceIssues(region: TipRegion): Issue[] {
  if (region.screwRadius === 0) return [];
  const inner = innerWall(region);
  const outer = outerWall(region.outer);
  const end = outer.z[outer.z.length - 1];
  const front = region.annulusLength + tipLength(region);
  const limit = LEAST_CLEARANCE * Math.max(...outer.r);
  if (front > end - limit)
    return [
      issue(
        ['tip'],
        'tip-leaves-nozzle',
        'The tip reaches the orifice plane.',
        mm(front),
        `under ${mm(end - limit)}`,
        'Shorten the tip or move the screw back.',
      ),
    ];
  const first = cornersToPieces(inner, outer);
  const second = cornersToPieces(outer, inner);
  const nearest = first.distance <= second.distance ? first : second;
  if (crosses(inner, outer))
    return [
      issue(
        ['tip'],
        'tip-touches-wall',
        'The screw tip runs into the wall.',
        'no gap',
        `a gap of ${mm(limit)} or more`,
        'Shorten or slim the tip, or move the screw back.',
      ),
    ];
  if (nearest.distance >= limit) return [];
  return [
    issue(
      ['tip'],
      'tip-touches-wall',
      `The gap between screw tip and wall nearly closes ${mm(nearest.z)} after the inlet, at radius ${mm(nearest.r)}.`,
      mm(nearest.distance),
      `${mm(limit)} or more`,
      'Shorten or slim the tip, or move the screw back.',
    ),
  ];
}

/**
 * All reasons why a region cannot be solved.
 * @returns empty if it can; paths count from the region
 */
export function regionIssues(region: TipRegion): Issue[] {
  const basic = [...outerPointIssues(region.outer), ...endIssues(region.outer), ...tipIssues(region)];
  if (basic.length > 0) return basic;
  const fillets = filletIssues(region.outer);
  return fillets.length > 0 ? fillets : clearanceIssues(region);
}
