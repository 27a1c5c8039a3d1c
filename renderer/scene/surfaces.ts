/** Radii of the surfaces that can be measured to by number. */

import type { AxialOutline } from '../../core/index.ts';
import type { Shape } from '../solve/protocol.ts';

/** A surface round the axis. */
export type ChosenSurface = 'axis' | 'root' | 'flight' | 'bore' | 'outside';

/** Radius of an outline at z, linear between its points, held beyond its ends; m. */
export function outlineAt({ z, r }: AxialOutline, at: number): number {
  if (z.length === 0) return 0;
  const next = z.findIndex((value) => value >= at);
  if (next < 0) return r[r.length - 1];
  if (next === 0) return r[0];
  const span = z[next] - z[next - 1];
  const share = span > 0 ? (at - z[next - 1]) / span : 1;
  return r[next - 1] + share * (r[next] - r[next - 1]);
}

/** Radius of a surface at z, m; `outside` is the barrel's, m. */
export function radiusAt(
  { outline, flightRadius }: Pick<Shape, 'outline' | 'flightRadius'>,
  outside: number,
  surface: ChosenSurface,
  z: number,
): number {
  switch (surface) {
    case 'axis':
      return 0;
    case 'root':
      return outlineAt(outline.inner, z);
    case 'flight':
      return flightRadius;
    case 'bore':
      return outlineAt(outline.outer, z);
    case 'outside':
      return outside;
  }
}
