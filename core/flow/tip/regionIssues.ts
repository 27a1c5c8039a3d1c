/** What makes a tip region impossible: every reason at once, with place and limit. */

import type { Issue } from '../../result.ts';
import { clearanceIssues } from './clearance.ts';
import { issue, mm, positive } from './issueParts.ts';
import { filletReach } from './outline.ts';
import type { ProfilePoint, TipRegion } from './region.ts';

/** Least orifice radius over the bore radius that is solved. */
const LEAST_ORIFICE = 0.01;

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

const wallEnds = (first: ProfilePoint, last: ProfilePoint, stepped: boolean): Issue[] => [
  ...(first.z === 0
    ? []
    : [
        issue(
          ['outer', 0, 'z'],
          'profile-start',
          'The wall does not begin at the inlet.',
          mm(first.z),
          '0 mm',
          'Begin it at 0.',
        ),
      ]),
  ...(stepped
    ? [
        issue(
          ['outer'],
          'profile-end',
          'The wall begins or ends with a step.',
          mm(last.z),
          'a straight or conical piece at both ends',
          'Add a short cylinder before the first and after the last step.',
        ),
      ]
    : []),
];

function endIssues(outer: readonly ProfilePoint[]): Issue[] {
  const remedy = 'Describe the wall from the inlet to the orifice.';
  if (outer.length < 2)
    return [
      issue(['outer'], 'no-wall', 'The wall has fewer than two corners.', String(outer.length), '2 or more', remedy),
    ];
  const last = outer[outer.length - 1];
  const found = wallEnds(outer[0], last, !(outer[1].z > outer[0].z) || !(last.z > outer[outer.length - 2].z));
  const least = LEAST_ORIFICE * Math.max(...outer.map((point) => point.r));
  if (last.r > 0 && last.r < least) {
    const path = ['outer', outer.length - 1, 'r'];
    found.push(
      issue(path, 'orifice-closed', 'The orifice is nearly closed.', mm(last.r), `${mm(least)} or more`, 'Open it.'),
    );
  }
  return found;
}

/** A step out and back in at one place encloses nothing. */
function flatLedgeIssues(outer: readonly ProfilePoint[]): Issue[] {
  return outer.flatMap((point, i) => {
    const [before, after] = [outer[i - 1], outer[i + 1]];
    if (before?.z !== point.z || after?.z !== point.z || (point.r - before.r) * (after.r - point.r) > 0) return [];
    const message = 'A ledge of the wall has no width.';
    return [
      issue(
        ['outer', i],
        'ledge-without-width',
        message,
        mm(point.z),
        'corners at different places',
        'Give the ledge a width.',
      ),
    ];
  });
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

/**
 * All reasons why a region cannot be solved.
 * @returns empty if it can; paths count from the region
 */
export function regionIssues(region: TipRegion): Issue[] {
  const basic = [
    ...outerPointIssues(region.outer),
    ...endIssues(region.outer),
    ...flatLedgeIssues(region.outer),
    ...tipIssues(region),
  ];
  if (basic.length > 0) return basic;
  const fillets = filletIssues(region.outer);
  return fillets.length > 0 ? fillets : clearanceIssues(region);
}
