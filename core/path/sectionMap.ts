/** Values over one cross-section on a grid whose nodes correspond from shape to shape, so that maps can be mixed. */

import { halfGrid } from '../flow/field/channelGrid.ts';
import type { ChannelState } from '../flow/field/channelSolver.ts';
import { intervalOf } from '../math/interpolate.ts';
import { bandOf } from '../math/levelSums.ts';
import type { Orbits } from '../residence/orbits.ts';
import { forwardBands } from './dwellBins.ts';

/** Nodes across half a section, flank to middle; node (i, j) at i * mapRows + j. */
export const mapColumns = 17;
/** Nodes up a section, root to barrel. */
export const mapRows = 21;

/** Half a section in units of barrel radius and barrel speed. */
export interface SectionMap {
  /** axial distance from mid-channel, negative: towards the flank upstream in z */
  readonly x: Float64Array;
  /** height above the root */
  readonly y: Float64Array;
  /** size of the velocity seen from the screw */
  readonly speed: Float64Array;
  /** share of the outflow that dwells shorter than the orbit through the node, 0 to 1; 1 where it makes no way forward */
  readonly share: Float64Array;
}

/** Even places drawn towards the walls; across: only towards the flank. */
const across = Float64Array.from({ length: mapColumns }, (_, i) => (i / (mapColumns - 1)) ** 1.5);
const up = Float64Array.from({ length: mapRows }, (_, j) => (1 - Math.cos((Math.PI * j) / (mapRows - 1))) / 2);

/** Share of the outflow faster than the middle of each band. */
function shareOfBands(orbits: Orbits): Float64Array {
  const shares = new Float64Array(orbits.flow.length).fill(1);
  const bands = forwardBands(orbits);
  const total = bands.reduce((sum, k) => sum + orbits.flow[k], 0);
  let left = 0;
  for (const k of bands) {
    shares[k] = Math.min(1, left + orbits.flow[k] / total / 2);
    left += orbits.flow[k] / total;
  }
  return shares;
}

interface Weights {
  readonly low: number;
  readonly share: number;
}

function weightsIn(breaks: Float64Array, at: number): Weights {
  const low = intervalOf(breaks, at);
  return { low, share: (at - breaks[low]) / (breaks[low + 1] - breaks[low]) };
}

/** Map of a solved section with its orbits. */
export function sectionMap(state: ChannelState, orbits: Orbits): SectionMap {
  const { space } = state.prepared;
  const grid = halfGrid(state, 1);
  const root = grid.stream.map((value) => {
    const ratio = value / orbits.extremum;
    return Math.sign(ratio) * Math.sqrt(Math.abs(ratio));
  });
  const shares = shareOfBands(orbits);
  const columns = Array.from(across, (s) => weightsIn(space.across.breaks, s));
  const rows = Array.from(up, (y) => weightsIn(space.up.breaks, y));
  const sampled = (values: Float64Array, scale: number) => {
    const out = new Float64Array(mapColumns * mapRows);
    columns.forEach((c, i) => {
      rows.forEach((r, j) => {
        const k = c.low * grid.rows + r.low;
        const before = values[k] + r.share * (values[k + 1] - values[k]);
        const after = values[k + grid.rows] + r.share * (values[k + grid.rows + 1] - values[k + grid.rows]);
        out[i * mapRows + j] = (before + c.share * (after - before)) * scale;
      });
    });
    return out;
  };
  return {
    x: sampled(grid.x, 1),
    y: sampled(grid.y, 1),
    speed: sampled(grid.speed, 1 / state.motion.barrelSpeed),
    share: sampled(root, 1).map((level) => shares[bandOf(orbits.levels, Math.max(-1, Math.min(1, level)))]),
  };
}
