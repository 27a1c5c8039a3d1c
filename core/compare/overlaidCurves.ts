/** Curves of several revisions on one abscissa, so that they can share a plot and its cursor. */

import { interpolateLinear } from '../math/interpolate.ts';

/** One curve to be laid over others, in shown units; x never decreases. Values that are no numbers are gaps. */
export interface CurveOf {
  readonly id: string;
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number | null>;
}

/** Curves on one abscissa. */
export interface OverlaidCurves {
  readonly x: number[];
  /** in the order given; null where a curve has no value */
  readonly lines: readonly { readonly id: string; readonly y: (number | null)[] }[];
}

interface Clean {
  readonly xs: number[];
  readonly ys: number[];
  /** stretches of x over which there are values */
  readonly spans: (readonly [number, number])[];
}

function cleaned({ x, y }: CurveOf): Clean {
  const [xs, ys]: [number[], number[]] = [[], []];
  const spans: [number, number][] = [];
  let open: [number, number] | null = null;
  for (let i = 0; i < x.length; i++) {
    const value = y[i];
    if (value === null || !Number.isFinite(value) || !Number.isFinite(x[i])) {
      open = null;
      continue;
    }
    if (open === null) {
      open = [x[i], x[i]];
      spans.push(open);
    }
    open[1] = x[i];
    xs.push(x[i]);
    ys.push(value);
  }
  return { xs, ys, spans };
}

/**
 * Lays curves over each other: the abscissa is the union of theirs, values between points are linear, nothing is made up
 * beyond the ends of a curve or across its gaps. At a step (two equal x) the value after it stands.
 */
export function overlayCurves(curves: readonly CurveOf[]): OverlaidCurves {
  const clean = curves.map(cleaned);
  const x = [...new Set(clean.flatMap(({ xs }) => xs))].sort((a, b) => a - b);
  const lines = clean.map(({ xs, ys, spans }, i) => ({
    id: curves[i].id,
    y: x.map((at) => (spans.some(([from, to]) => at >= from && at <= to) ? interpolateLinear(xs, ys, at) : null)),
  }));
  return { x, lines };
}
