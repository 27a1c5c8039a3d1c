/** Colour against extent, from the anchors of a material. */

import type { DesignMaterial } from '../design/types.ts';
import type { Lab } from './cielab.ts';
import { monotoneCurve } from './monotoneCurve.ts';

/** Measured colours at known extents. */
export type ColourAnchors = DesignMaterial['colourAnchors'];

/** Colour along the extent of one law. */
export interface ColourPath {
  /** extents of the first and the last anchor, unit of the law */
  readonly first: number;
  readonly last: number;
  /** colour at an extent; held outside first..last, where `beyond` is true above */
  readonly at: (extent: number) => { readonly lab: Lab; readonly beyond: boolean };
}

/** One row per extent, rising; colours given twice for one extent are averaged. */
function sorted(anchors: ColourAnchors): { extent: number; lab: Lab }[] {
  const extents = [...new Set(anchors.map((anchor) => anchor.extent))].sort((p, q) => p - q);
  return extents.map((extent) => {
    const same = anchors.filter((anchor) => anchor.extent === extent);
    const mean = (i: 0 | 1 | 2) => same.reduce((sum, anchor) => sum + anchor.lab[i], 0) / same.length;
    return { extent, lab: [mean(0), mean(1), mean(2)] };
  });
}

/**
 * Path of L*a*b* through anchors, each coordinate monotone between neighbours.
 * @param anchors any order; extents in the unit of the law they belong to
 * @returns null without anchors
 */
export function colourPath(anchors: ColourAnchors): ColourPath | null {
  const rows = sorted(anchors);
  if (rows.length === 0) return null;
  const extents = rows.map((row) => row.extent);
  const curve = (i: 0 | 1 | 2) =>
    monotoneCurve(
      extents,
      rows.map((row) => row.lab[i]),
    );
  const [lightness, a, b] = [curve(0), curve(1), curve(2)];
  const last = extents[extents.length - 1];
  return {
    first: extents[0],
    last,
    at: (extent) => ({ lab: [lightness(extent), a(extent), b(extent)], beyond: extent > last }),
  };
}
