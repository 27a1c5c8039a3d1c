/** Curves over one abscissa as a picture: axes with round numbers, units, and a legend by line style and words. */

import { formatNumber } from '../../units.ts';
import {
  areas,
  box,
  curveTones,
  fullWidth,
  line,
  type PathShape,
  type Picture,
  type Spot,
  type TextShape,
  widthOf,
  word,
} from './picture.ts';
import { linearTicks, logTicks, roundRange } from './ticks.ts';

/** One curve, in shown units; values that are no numbers are gaps. */
export interface ChartCurve {
  readonly name: string;
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number | null>;
  /** number of its style, so that a revision looks the same in every chart; its place in the list where absent */
  readonly style?: number;
}

/** What a chart shows. */
export interface ChartSpec {
  readonly xLabel: string;
  readonly xUnit: string;
  readonly yLabel: string;
  readonly yUnit: string;
  readonly curves: readonly ChartCurve[];
  readonly height?: number;
  readonly logX?: boolean;
  /** ends of the axes in place of those of the values */
  readonly xRange?: readonly [number, number];
  readonly yRange?: readonly [number, number];
  /** upright lines with a word each, such as ends of sections */
  readonly marks?: readonly { readonly x: number; readonly text: string }[];
}

/** Line styles by place: colour is never the only sign. */
const dashes: readonly (readonly number[])[] = [[], [6, 3], [2, 2], [9, 3, 2, 3], [4, 2, 1, 2, 1, 2], [12, 4]];
const styleOf = (index: number) => ({
  tone: curveTones[index % curveTones.length] ?? 'ink',
  dash: dashes[index % dashes.length] ?? [],
});

const size = 8;
const lineStep = 12;

interface Frame {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
  readonly x: readonly [number, number];
  readonly y: readonly [number, number];
  readonly atX: (value: number) => number;
  readonly atY: (value: number) => number;
}

/** Least and greatest of the finite values. */
function spanOf(values: Iterable<number | null>): [number, number] | null {
  let [low, high] = [Infinity, -Infinity];
  for (const value of values) {
    if (value === null || !Number.isFinite(value)) continue;
    low = Math.min(low, value);
    high = Math.max(high, value);
  }
  return high >= low ? [low, high] : null;
}

function* all(curves: readonly ChartCurve[], of: 'x' | 'y', above = -Infinity): Generator<number | null> {
  for (const curve of curves) for (let i = 0; i < curve.x.length; i++) if (curve.x[i] > above) yield curve[of][i];
}

function frameOf(spec: ChartSpec, top: number, height: number): Frame {
  const above = spec.logX ? 0 : -Infinity;
  const x = spec.xRange ?? spanOf(all(spec.curves, 'x', above)) ?? [0, 1];
  const [low, high] = spanOf(all(spec.curves, 'y', above)) ?? [0, 1];
  const y = spec.yRange ?? roundRange(low > 0 && low < 0.4 * high ? 0 : low, high, 5);
  const marks = linearTicks(y[0], y[1], 5);
  const left = 26 + Math.max(...marks.map((value) => widthOf(formatNumber(value, 4), size)));
  const [right, bottom] = [fullWidth - 10, height - 32];
  const place = spec.logX ? Math.log : (value: number) => value;
  const [from, to] = [place(x[0]), place(x[1])];
  return {
    ...{ left, top, right, bottom, y },
    x: [x[0], x[1]],
    atX: (value) => left + ((right - left) * (place(value) - from)) / (to - from || 1),
    atY: (value) => bottom - ((bottom - top) * (value - y[0])) / (y[1] - y[0] || 1),
  };
}

/** Grid, numbers and names of the axes. */
function axes(spec: ChartSpec, frame: Frame): (PathShape | TextShape)[] {
  const { left, right, top, bottom, atX, atY } = frame;
  const xs = spec.logX ? logTicks(...frame.x) : linearTicks(...frame.x, 8);
  const ys = linearTicks(...frame.y, 5);
  const named = (label: string, unit: string) => (unit === '' ? label : `${label} (${unit})`);
  const grid = [
    ...xs.map((value): Spot[] => [
      [atX(value), top],
      [atX(value), bottom],
    ]),
    ...ys.map((value): Spot[] => [
      [left, atY(value)],
      [right, atY(value)],
    ]),
  ];
  return [
    { ...line([], 'grid', 0.4), pieces: grid },
    areas([box(left, top, right - left, bottom - top)], null, 'soft'),
    ...xs.map((value) => word(atX(value), bottom + 11, formatNumber(value, 4), { size, anchor: 'middle' })),
    ...ys.map((value) => word(left - 4, atY(value) + 2.8, formatNumber(value, 4), { size, anchor: 'end' })),
    word((left + right) / 2, bottom + 25, named(spec.xLabel, spec.xUnit), { size, anchor: 'middle' }),
    word(10, (top + bottom) / 2, named(spec.yLabel, spec.yUnit), { size, anchor: 'middle', turned: true }),
  ];
}

/** Where a segment enters or leaves the range of y; the segment crosses that bound. */
const crossing = ([ax, ay]: Spot, [bx, by]: Spot, bound: number): Spot => [
  ax + ((bx - ax) * (bound - ay)) / (by - ay),
  bound,
];

/** A curve cut to the frame: stretches of points, in values. */
function stretchesOf({ x, y }: ChartCurve, { x: [xLow, xHigh], y: [low, high] }: Frame): Spot[][] {
  const found: Spot[][] = [];
  let open: Spot[] = [];
  let last: Spot | null = null;
  const close = () => {
    if (open.length > 1) found.push(open);
    open = [];
  };
  const boundOf = (value: number) => (value > high ? high : low);
  for (let i = 0; i < x.length; i++) {
    const value = y[i];
    const known = value !== null && Number.isFinite(value) && x[i] >= xLow && x[i] <= xHigh;
    const point: Spot | null = known ? [x[i], value] : null;
    const within = point !== null && point[1] <= high && point[1] >= low;
    const before: boolean = last !== null && last[1] <= high && last[1] >= low;
    if (point && last && within !== before) {
      const outer: Spot = within ? last : point;
      open.push(crossing(last, point, boundOf(outer[1])));
    }
    if (within) open.push(point);
    else close();
    last = point;
  }
  close();
  return found;
}

/** Entries of the legend in rows, with the height they take. */
function legend(spec: ChartSpec): { shapes: (PathShape | TextShape)[]; height: number } {
  const shapes: (PathShape | TextShape)[] = [];
  let [x, row] = [30, 0];
  for (const [i, { name, style = i }] of spec.curves.entries()) {
    const wide = 34 + widthOf(name, size) + 14;
    if (x > 30 && x + wide > fullWidth) [x, row] = [30, row + 1];
    const y = 9 + row * lineStep;
    const { tone, dash } = styleOf(style);
    shapes.push(
      line(
        [
          [x, y - 3],
          [x + 28, y - 3],
        ],
        tone,
        1.5,
        dash,
      ),
      word(x + 33, y, name, { size }),
    );
    x += wide;
  }
  return { shapes, height: spec.curves.length > 0 ? 9 + row * lineStep + 6 : 0 };
}

function markShapes(spec: ChartSpec, { atX, top, bottom, x: [low, high] }: Frame): (PathShape | TextShape)[] {
  return (spec.marks ?? [])
    .filter(({ x }) => x >= low && x <= high)
    .flatMap(({ x, text }) => [
      line(
        [
          [atX(x), top],
          [atX(x), bottom],
        ],
        'soft',
        0.6,
        [1, 2],
      ),
      word(atX(x), top - 2, text, { size: 7, anchor: x > low + 0.95 * (high - low) ? 'end' : 'middle', tone: 'soft' }),
    ]);
}

/** Draws a chart over the whole width. */
export function chart(spec: ChartSpec): Picture {
  const height = spec.height ?? 200;
  const names = legend(spec);
  const frame = frameOf(spec, names.height + (spec.marks?.length ? 11 : 2), height);
  const curves = spec.curves.map((curve, i) => {
    const { tone, dash } = styleOf(curve.style ?? i);
    const pieces = stretchesOf(curve, frame).map((points) =>
      points.map(([x, y]): Spot => [frame.atX(x), frame.atY(y)]),
    );
    return { ...line([], tone, 1.4, dash), pieces };
  });
  return {
    width: fullWidth,
    height,
    shapes: [...axes(spec, frame), ...markShapes(spec, frame), ...curves, ...names.shapes],
  };
}

/** Least and greatest of a curve in words, for those who cannot see the chart. */
export function curveWords({ name, x, y }: ChartCurve, xUnit: string, yUnit: string): string {
  const unit = (text: string, symbol: string) => (symbol === '' ? text : `${text} ${symbol}`);
  let [least, most] = [-1, -1];
  for (let i = 0; i < x.length; i++) {
    const value = y[i];
    if (value === null || !Number.isFinite(value)) continue;
    if (least < 0 || value < (y[least] as number)) least = i;
    if (most < 0 || value > (y[most] as number)) most = i;
  }
  if (least < 0) return `${name}: no values`;
  const at = (i: number) => `${unit(formatNumber(y[i] as number, 3), yUnit)} at ${unit(formatNumber(x[i], 3), xUnit)}`;
  return `${name}: least ${at(least)}, greatest ${at(most)}`;
}
