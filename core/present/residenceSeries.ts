/** How long melt stays, as curves over time: what has left, and what is leaving; the whole path and its parts. */

import { interpolateLinear } from '../math/interpolate.ts';
import type { Residence } from '../prediction/types.ts';
import type { PresentedSeries } from './types.ts';

/** Points of a curve, evenly spaced in log time. */
const points = 160;

/** Points over which a rate is taken: the curves are sums of many small steps, which a narrower window would show. */
const window = 4;

interface Curve {
  readonly name: string;
  readonly time: Float64Array;
  readonly cumulative: Float64Array;
}

/** The path first, then its parts. */
const curvesOf = ({ time, cumulative, partCurves }: Residence): Curve[] => [
  { name: 'whole path', time, cumulative },
  ...(partCurves ?? []).map((curve) => ({ name: curve.part, time: curve.time, cumulative: curve.cumulative })),
];

/** Times from before the first melt to when 99.9 % has left, s. */
function timeGrid(residence: Residence, curves: readonly Curve[]): Float64Array {
  const last = Math.max(residence.washout999, residence.t99);
  const first = Math.max(1e-3 * last, 0.9 * Math.min(...curves.map(({ time }) => time[0])));
  return Float64Array.from({ length: points }, (_, i) => first * (last / first) ** (i / (points - 1)));
}

/** Share that has left by t (0 to 1): none before the first melt, all after the last. */
function leftBy({ time, cumulative }: Curve, t: number): number {
  if (t < time[0]) return 0;
  return t >= time[time.length - 1] ? 1 : interpolateLinear(time, cumulative, t);
}

/** Share leaving per second round each time, 1/s. */
function leaving(curve: Curve, grid: Float64Array): Float64Array {
  return grid.map((_, i) => {
    const [from, to] = [grid[Math.max(0, i - window)], grid[Math.min(points - 1, i + window)]];
    return (leftBy(curve, to) - leftBy(curve, from)) / (to - from);
  });
}

/** F(t) and E(t) (Danckwerts 1953) in per cent and per cent per second; empty where nothing flows. */
export function residenceSeries(residence: Residence): PresentedSeries[] {
  if (!(residence.mean > 0) || !Number.isFinite(residence.mean) || residence.time.length < 2) return [];
  const curves = curvesOf(residence);
  const x = timeGrid(residence, curves);
  const shared = { xLabel: 'Time', xUnit: 's', x };
  return [
    ...curves.map((curve) => ({
      ...{ id: 'residence', title: 'Share that has left', name: curve.name, ...shared },
      ...{ yLabel: 'Share', yUnit: '%', y: x.map((t) => 100 * leftBy(curve, t)) },
    })),
    ...curves.map((curve) => ({
      ...{ id: 'leaving', title: 'Share leaving per second', name: curve.name, ...shared },
      ...{ yLabel: 'Share per second', yUnit: '%/s', y: leaving(curve, x).map((rate) => 100 * rate) },
    })),
  ];
}
