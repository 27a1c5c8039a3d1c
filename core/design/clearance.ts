/** Distances between meridian lines in the z-r plane: does the tip clear the bore, and where does the bore narrow. */

/** A point of the meridian plane. m */
export interface MeridianPoint {
  readonly z: number;
  readonly r: number;
}

function pointToPiece(p: MeridianPoint, a: MeridianPoint, b: MeridianPoint): number {
  const [dz, dr] = [b.z - a.z, b.r - a.r];
  const square = dz * dz + dr * dr;
  const along = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.z - a.z) * dz + (p.r - a.r) * dr) / square));
  return Math.hypot(p.z - a.z - along * dz, p.r - a.r - along * dr);
}

const pointToLine = (p: MeridianPoint, line: readonly MeridianPoint[]): number =>
  line.slice(1).reduce((least, b, i) => Math.min(least, pointToPiece(p, line[i] ?? b, b)), Number.POSITIVE_INFINITY);

/** Least radius of a line at z, upright pieces included; NaN beyond its ends. */
export function leastRadiusAt(line: readonly MeridianPoint[], z: number): number {
  let least = Number.NaN;
  for (const [i, b] of line.entries()) {
    const a = line[i - 1];
    if (a === undefined || z < a.z || z > b.z) continue;
    const r = a.z === b.z ? Math.min(a.r, b.r) : a.r + ((b.r - a.r) * (z - a.z)) / (b.z - a.z);
    least = Number.isNaN(least) ? r : Math.min(least, r);
  }
  return least;
}

/**
 * Where a bore first becomes narrower than a radius.
 * @param line outer line, z never falling
 * @param radius m
 * @returns z, m; Infinity where it never does
 */
export function firstNarrowing(line: readonly MeridianPoint[], radius: number): number {
  for (const [i, b] of line.entries()) {
    const a = line[i - 1];
    if (a === undefined || b.r >= radius) continue;
    if (a.r <= radius) return a.z;
    return a.z + ((b.z - a.z) * (a.r - radius)) / (a.r - b.r);
  }
  return Number.POSITIVE_INFINITY;
}

/**
 * Least distance between an inner and an outer line, m; 0 or less where they touch or cross.
 * @param inner the tip; must begin inside
 * @param outer the bore
 * @returns distance, or minus the deepest overlap seen at a corner; -Infinity where the tip reaches past the bore's end
 */
export function leastClearance(inner: readonly MeridianPoint[], outer: readonly MeridianPoint[]): number {
  const end = outer[outer.length - 1]?.z ?? 0;
  if (inner.some((p) => p.z >= end)) return Number.NEGATIVE_INFINITY;
  const overlaps = [
    ...inner.map((p) => leastRadiusAt(outer, p.z) - p.r),
    ...outer.map((p) => p.r - leastRadiusAt(inner, p.z)).filter((gap) => !Number.isNaN(gap)),
  ];
  const deepest = Math.min(...overlaps);
  if (deepest <= 0) return deepest;
  return Math.min(...inner.map((p) => pointToLine(p, outer)), ...outer.map((p) => pointToLine(p, inner)));
}
