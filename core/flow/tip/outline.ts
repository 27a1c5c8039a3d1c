/** Inner and outer walls of a tip region as fine polylines. */

import { type ProfilePoint, shapeLength, type TipRegion, tipLength } from './region.ts';

/** A wall as straight pieces, z never falling. */
export interface Wall {
  readonly z: readonly number[];
  readonly r: readonly number[];
}

/** Both walls; `inner` ends on the axis, whose remaining part belongs to it as r = 0. */
export interface Outline {
  readonly inner: Wall;
  readonly outer: Wall;
  /** Position of the orifice plane, m */
  readonly length: number;
}

const ARC_STEP = Math.PI / 36;

interface Direction {
  readonly z: number;
  readonly r: number;
  readonly length: number;
}

function direction(a: ProfilePoint, b: ProfilePoint): Direction {
  const length = Math.hypot(b.z - a.z, b.r - a.r);
  return { z: (b.z - a.z) / length, r: (b.r - a.r) / length, length };
}

/** Distance from a corner to where its fillet begins, m; 0 for a sharp corner. */
export function filletReach(before: ProfilePoint, at: ProfilePoint, after: ProfilePoint): number {
  if (!at.fillet) return 0;
  const a = direction(before, at);
  const b = direction(at, after);
  const turn = Math.acos(Math.max(-1, Math.min(1, a.z * b.z + a.r * b.r)));
  return at.fillet * Math.tan(turn / 2);
}

/** Points of a rounded corner from tangent point to tangent point. */
function arcPoints(before: ProfilePoint, at: ProfilePoint, after: ProfilePoint): [number, number][] {
  const a = direction(before, at);
  const b = direction(at, after);
  const reach = filletReach(before, at, after);
  const radius = at.fillet ?? 0;
  const side = Math.sign(a.z * b.r - a.r * b.z);
  const startZ = at.z - a.z * reach;
  const startR = at.r - a.r * reach;
  const centreZ = startZ - side * a.r * radius;
  const centreR = startR + side * a.z * radius;
  const turn = Math.acos(Math.max(-1, Math.min(1, a.z * b.z + a.r * b.r)));
  const steps = Math.max(3, Math.ceil(turn / ARC_STEP));
  return Array.from({ length: steps + 1 }, (_, i) => {
    const angle = (side * turn * i) / steps;
    const dz = startZ - centreZ;
    const dr = startR - centreR;
    return [
      centreZ + dz * Math.cos(angle) - dr * Math.sin(angle),
      centreR + dz * Math.sin(angle) + dr * Math.cos(angle),
    ];
  });
}

function push(wall: { z: number[]; r: number[] }, z: number, r: number, tiny: number): void {
  const last = wall.z.length - 1;
  if (last >= 0 && Math.hypot(z - wall.z[last], r - wall.r[last]) < tiny) return;
  const snapped = last >= 0 && Math.abs(z - wall.z[last]) < tiny ? wall.z[last] : z;
  wall.z.push(snapped);
  wall.r.push(r);
}

/** Outer wall with its fillets sampled; points closer than 1e-9 of the bore are merged. */
export function outerWall(points: readonly ProfilePoint[]): Wall {
  const wall = { z: [] as number[], r: [] as number[] };
  const tiny = 1e-9 * points[0].r;
  points.forEach((point, i) => {
    const before = points[i - 1];
    const after = points[i + 1];
    if (!before || !after || filletReach(before, point, after) === 0) push(wall, point.z, point.r, tiny);
    else for (const [z, r] of arcPoints(before, point, after)) push(wall, z, r, tiny);
  });
  return wall;
}

/** Inner wall from the inlet plane to the foremost point, ending on the axis. */
export function innerWall(region: TipRegion): Wall {
  const { screwRadius, annulusLength, tip, pin } = region;
  const wall = { z: [0], r: [screwRadius] };
  if (screwRadius === 0) return wall;
  const tiny = 1e-9 * screwRadius;
  const end = pin?.radius ?? 0;
  push(wall, annulusLength, screwRadius, tiny);
  if (tip.kind === 'hemisphere') {
    const last = Math.acos(Math.min(1, end / screwRadius));
    const steps = Math.max(3, Math.ceil(last / ARC_STEP));
    for (let i = 1; i <= steps; i++) {
      const angle = (last * i) / steps;
      push(
        wall,
        annulusLength + screwRadius * Math.sin(angle),
        i === steps ? end : screwRadius * Math.cos(angle),
        tiny,
      );
    }
  } else push(wall, annulusLength + shapeLength(region), end, tiny);
  if (pin) {
    push(wall, annulusLength + tipLength(region), pin.radius, tiny);
    push(wall, annulusLength + tipLength(region), 0, tiny);
  }
  return wall;
}

/** Least radius (`side` -1: just before z, +1: just after z) of a wall; NaN beyond its end. */
export function radiusAt(wall: Wall, z: number, side: -1 | 1): number {
  const { z: zs, r: rs } = wall;
  const last = zs.length - 1;
  if (z > zs[last] || (z === zs[last] && side > 0)) return Number.NaN;
  let i = 0;
  if (side > 0) while (i < last && zs[i + 1] <= z) i++;
  else while (i < last - 1 && zs[i + 1] < z) i++;
  const span = zs[i + 1] - zs[i];
  return span === 0 ? rs[side > 0 ? i + 1 : i] : rs[i] + ((rs[i + 1] - rs[i]) * (z - zs[i])) / span;
}

/** Walls of a region that `regionIssues` found possible. */
export function outlineOf(region: TipRegion): Outline {
  const length = region.outer[region.outer.length - 1].z;
  return { inner: innerWall(region), outer: outerWall(region.outer), length };
}
