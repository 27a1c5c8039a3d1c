/** Answers what the worker is asked: the fit, and its curves at the temperatures of the readings. */

import {
  fitRheology,
  fittedViscosity,
  formatNumber,
  fromSi,
  maronPierce,
  type RheologyFit,
} from '../../../core/index.ts';
import type { FitAnswer, FitAsk, FitCurve, FitDrawing } from '../protocol.ts';

/** Most temperatures that are drawn: as many colours as can be told apart. */
const mostCurves = 6;
/** Readings closer than this share one curve, K. */
const together = 2;
/** Shear rates at which each curve is worked out, besides those of the readings. */
const gridSize = 60;
/** A curve goes on beyond the readings by this factor. */
const beyond = 2;
/** A band is drawn at most this far from readings and curves, as a factor. */
const farthest = 1e3;

/** Mean temperatures of readings that lie close together, K, rising. */
function temperaturesOf(kelvins: readonly number[]): readonly number[] {
  const groups: number[][] = [];
  for (const kelvin of kelvins.toSorted((a, b) => a - b)) {
    const last = groups.at(-1);
    if (last && kelvin - (last.at(-1) ?? 0) <= together) last.push(kelvin);
    else groups.push([kelvin]);
  }
  return groups.map((group) => group.reduce((sum, one) => sum + one, 0) / group.length);
}

/** At most `mostCurves` of them, the ends included. */
function drawn(all: readonly number[]): readonly number[] {
  if (all.length <= mostCurves) return all;
  return Array.from({ length: mostCurves }, (_, k) => all[Math.round((k * (all.length - 1)) / (mostCurves - 1))] ?? 0);
}

function nearest(temperatures: readonly number[], kelvin: number): number {
  const off = temperatures.map((one) => Math.abs(one - kelvin));
  return off.indexOf(Math.min(...off));
}

interface Entry {
  readonly rate: number;
  /** index of the reading; absent on the grid */
  readonly reading?: number;
}

function entriesOf(rates: readonly number[]): readonly Entry[] {
  const [low, high] = [Math.min(...rates) / beyond, Math.max(...rates) * beyond];
  const grid = Array.from({ length: gridSize + 1 }, (_, k): Entry => ({ rate: low * (high / low) ** (k / gridSize) }));
  const readings = rates.map((rate, reading): Entry => ({ rate, reading }));
  return [...grid, ...readings].sort((a, b) => a.rate - b.rate);
}

function curveOf(
  { fit, entries, owners }: { fit: RheologyFit; entries: readonly Entry[]; owners: readonly number[] },
  kelvin: number,
  place: number,
): FitCurve {
  const bands = entries.map(({ rate }) => fittedViscosity(fit, rate, kelvin));
  const measured = (reading: number | undefined) =>
    reading !== undefined && owners[reading] === place ? (fit.residuals[reading]?.viscosity ?? null) : null;
  return {
    temperature: `${formatNumber(fromSi(kelvin, '°C'), 3)} °C`,
    value: bands.map(({ value }) => value),
    low: bands.map(({ low, value }) => Math.max(low, value / farthest)),
    high: bands.map(({ high, value }) => Math.min(high, value * farthest)),
    points: entries.map(({ reading }) => measured(reading)),
  };
}

function drawingOf(fit: RheologyFit): FitDrawing {
  const readings = fit.residuals;
  const all = temperaturesOf(readings.map(({ temperature }) => temperature));
  const temperatures = drawn(all);
  const owners = readings.map(({ temperature }) => nearest(temperatures, temperature));
  const entries = entriesOf(readings.map(({ shearRate }) => shearRate));
  const curves = temperatures.map((kelvin, place) => curveOf({ fit, entries, owners }, kelvin, place));
  const far = (reading: number | undefined) => {
    const one = reading === undefined ? undefined : readings[reading];
    return one?.outlier ? one.viscosity : null;
  };
  const seen = [...readings.map(({ viscosity }) => viscosity), ...curves.flatMap(({ value }) => value)];
  return {
    rates: entries.map(({ rate }) => rate),
    curves,
    outliers: entries.map(({ reading }) => far(reading)),
    span: [seen.reduce((a, b) => Math.min(a, b)), seen.reduce((a, b) => Math.max(a, b))],
    temperatures: all.length,
  };
}

/** Fits and draws; refusals are an answer like any other. */
export function* fitAnswers({ points, model, options, filler }: FitAsk): Generator<FitAnswer> {
  const thickening = filler ? { thickening: maronPierce(filler.volumeFraction, filler.maxPacking) } : {};
  const fit = fitRheology(model, points, { ...options, ...thickening });
  if (!fit.ok) yield { kind: 'refused', issues: fit.issues };
  else {
    const scatterPercent = 100 * Math.expm1(fit.value.scatter);
    yield { kind: 'fit', fit: fit.value, drawing: drawingOf(fit.value), scatterPercent };
  }
}
