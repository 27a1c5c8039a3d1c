/** Where a slice stands. */

import type { Bounds } from '../solve/protocol.ts';
import type { SliceKind } from './sceneStore.ts';

/** Where a slice at `share` (-1 to 1) stands: distance from the axis, or position along it; m. */
export function sliceAt(kind: SliceKind, share: number, bounds: Bounds): number {
  if (kind === 'across') return bounds.start + ((share + 1) / 2) * (bounds.end - bounds.start);
  return share * bounds.radius;
}
