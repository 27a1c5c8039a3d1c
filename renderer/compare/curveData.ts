/** The curves that are laid over each other, in the units of this window. */

import {
  type CurveOf,
  fromSi,
  lookUnit,
  type NumberLook,
  type OverlaidCurves,
  overlayCurves,
  type Revision,
  toSi,
  type Unit,
  unitLabel,
} from '../../core/index.ts';
import { axialSeries } from '../plots/axialSeries.ts';
import { compareText } from '../strings/compare.ts';
import type { Made } from './runs.ts';

const words = compareText.curves;

/** The plots, in their order. */
export const curveIds = ['output', 'pressure', 'melt', 'residence', 'colour'] as const;
/** One of them. */
export type CurveId = (typeof curveIds)[number];

/** One plot: curves of all revisions on one abscissa. */
export interface ComparedCurves extends OverlaidCurves {
  readonly id: CurveId;
  readonly title: string;
  readonly xLabel: string;
  readonly xUnit: string;
  readonly yLabel: string;
  readonly yUnit: string;
  /** whether x runs over decades */
  readonly logarithmic: boolean;
  readonly fromZero: boolean;
}

/** A revision with its prediction. */
export interface CurveSource {
  readonly revision: Revision;
  readonly made: Made;
}

const changed = (values: ArrayLike<number | null>, change: (value: number) => number): (number | null)[] =>
  Array.from(values, (value) => (value === null || !Number.isFinite(value) ? null : change(value)));

/** A presented curve by its id and its name in its plot. */
function presented({ revision, made }: CurveSource, id: string, name: string): CurveOf {
  const found = made.presentation.series.find((series) => series.id === id && series.name === name);
  return { id: revision.id, x: found?.x ?? [], y: found?.y ?? [] };
}

/** What holds along screw and nozzle, in shown units. */
function along({ revision, made }: CurveSource, of: 'pressure' | 'melt', x: Unit, y: Unit): CurveOf {
  let end = revision.barrel.lengthMm / 1000;
  const barrelEnd = end;
  const ends = revision.nozzle.segments.map((segment) => (end += segment.lengthMm / 1000));
  const series = axialSeries(made.prediction, ends, barrelEnd);
  const own: Unit = of === 'pressure' ? series.pressureUnit : '°C';
  // granules where nothing has melted yet, so that the line begins at the feed
  const values = of === 'pressure' ? series.pressure : series.melt.map((value, i) => value ?? series.solid[i] ?? null);
  return {
    id: revision.id,
    x: series.z.map((z) => fromSi(toSi(z, 'mm'), x)),
    y: changed(values, (value) => fromSi(toSi(value, own), y)),
  };
}

interface Kind {
  readonly title: string;
  readonly x: readonly [string, Unit];
  readonly y: readonly [string, Unit];
  readonly logarithmic?: boolean;
  readonly fromZero: boolean;
  curve(source: CurveSource, x: Unit, y: Unit): CurveOf;
}

/** Series are presented in the units named here; `as` turns them into those of the window. */
const as = (curve: CurveOf, from: readonly [Unit, Unit], to: readonly [Unit, Unit]): CurveOf => ({
  id: curve.id,
  x: Array.from(curve.x, (value) => fromSi(toSi(value, from[0]), to[0])),
  y: changed(curve.y, (value) => fromSi(toSi(value, from[1]), to[1])),
});

const kinds: Readonly<Record<Exclude<CurveId, 'colour'>, Kind>> = {
  output: {
    ...{ title: words.output, x: [words.speed, 'rpm'], y: [words.flow, 'mm³/s'], fromZero: true },
    curve: (source, x, y) => as(presented(source, 'output', 'output'), ['rpm', 'mm³/s'], [x, y]),
  },
  pressure: {
    ...{ title: words.pressure, x: [words.along, 'mm'], y: [words.pressureAxis, 'MPa'], fromZero: true },
    curve: (source, x, y) => along(source, 'pressure', x, y),
  },
  melt: {
    ...{ title: words.melt, x: [words.along, 'mm'], y: [words.temperature, '°C'], fromZero: false },
    curve: (source, x, y) => along(source, 'melt', x, y),
  },
  residence: {
    ...{ title: words.residence, x: [words.time, 's'], y: [words.share, '%'], logarithmic: true, fromZero: true },
    curve: (source, x, y) => as(presented(source, 'residence', 'whole path'), ['s', '%'], [x, y]),
  },
};

/** One plot of the predictions, in the order of the sources. */
export function curvesOf(
  id: Exclude<CurveId, 'colour'>,
  sources: readonly CurveSource[],
  look: NumberLook,
): ComparedCurves {
  const kind = kinds[id];
  const [x, y] = [lookUnit(kind.x[1], look), lookUnit(kind.y[1], look)];
  return {
    ...overlayCurves(sources.map((source) => kind.curve(source, x, y))),
    id,
    title: kind.title,
    xLabel: kind.x[0],
    xUnit: unitLabel(x),
    yLabel: kind.y[0],
    yUnit: unitLabel(y),
    logarithmic: kind.logarithmic ?? false,
    fromZero: kind.fromZero,
  };
}

/** Mean colour shift (dE00) of each revision at print speeds (m/s). */
export function colourCurves(
  speeds: readonly {
    readonly id: string;
    readonly points: readonly { readonly at: number; readonly dE00Mean: number }[];
  }[],
  look: NumberLook,
): ComparedCurves {
  const unit = lookUnit('mm/s', look);
  const curves = speeds.map(({ id, points }): CurveOf => {
    const sorted = [...points].sort((a, b) => a.at - b.at);
    return { id, x: sorted.map(({ at }) => fromSi(at, unit)), y: sorted.map(({ dE00Mean }) => dE00Mean) };
  });
  return {
    ...overlayCurves(curves),
    ...{ id: 'colour', title: words.colour, xLabel: words.printSpeed, xUnit: unitLabel(unit) },
    ...{ yLabel: words.shift, yUnit: '', logarithmic: false, fromZero: true },
  };
}
