/** Heights of granules and melt in the channel, station by station, for drawing. */

import type { Prediction } from '../../core/index.ts';

/** One stretch of channel, m: radii up to which granules and then melt reach; above that it is empty. */
export interface Strip {
  readonly from: number;
  readonly to: number;
  readonly root: number;
  readonly solidTop: number;
  readonly meltTop: number;
}

/** Strips between neighbouring stations; what fills the channel is split by the molten share. */
export function stripsOf({ stations, axial }: Pick<Prediction, 'stations' | 'axial'>): Strip[] {
  const strips: Strip[] = [];
  for (let i = 0; i + 1 < stations.count; i++) {
    const middle = (values: Float64Array) => ((values[i] ?? 0) + (values[i + 1] ?? 0)) / 2;
    const root = middle(stations.rootRadius);
    const filled = (middle(stations.barrelRadius) - root) * middle(axial.filling);
    if (!(filled > 0)) continue;
    const solidTop = root + filled * (1 - middle(axial.moltenShare));
    strips.push({ from: stations.z[i] ?? 0, to: stations.z[i + 1] ?? 0, root, solidTop, meltTop: root + filled });
  }
  return strips;
}
