/** The screw as a conductor: radius of its core and share of the annulus that flights fill. */

import type { Design } from '../design/types.ts';
import { leadAt, rootRadiusAt, sectionAt } from '../geometry/profile.ts';

/** Shape at a place: root radius, m, and share of the annulus filled by flights, 0 to 0.9. */
export interface CoreShape {
  readonly root: number;
  readonly flight: number;
}

/** Shape of the screw at z, m; ahead of its end a stub of a fifth of the bore. Flanks count as square. */
export function coreShape({ screw, barrel }: Design, z: number): CoreShape {
  const placed = sectionAt(screw, z);
  if (!placed) return { root: 0.1 * barrel.boreDiameter, flight: 0 };
  const { section, start } = placed;
  const root = rootRadiusAt(section, z - start);
  if (section.kind !== 'flighted') return { root, flight: 0 };
  return { root, flight: Math.min(0.9, (section.starts * section.flightWidth) / leadAt(section, z - start)) };
}
