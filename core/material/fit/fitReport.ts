/** A solved fit in the terms of the file format. */

import type { Material, Sourced } from '../../project/materialSchema.ts';
import { fromSi } from '../../units.ts';
import { lawLimits, type Rheology, rounded, type StoredShift } from '../switchTypes.ts';
import { type Coordinate, coordinatesOf, shiftKind, universalA1, universalA2, wlfOf } from './fitModels.ts';
import type { FitState, FittedParameter, RheologyPoint } from './fitTypes.ts';
import { slopes } from './leastSquares.ts';

/** Scatter below which no set of readings is believed, for the bands and the judgement of what is determined. */
const leastScatter = 0.01;

/** Place of the WLF slope among the coordinates. */
const a1Of = (state: FitState, at: readonly number[]): number => {
  const place = coordinatesOf(state).findIndex(({ name }) => name === 'a1');
  return place < 0 ? universalA1 : (at[place] ?? universalA1);
};

/** Coordinates as reported: the same, but for Cross-WLF the viscosity at the centre becomes ln D1. */
const reported = (state: FitState, at: readonly number[]): number[] =>
  state.model === 'crossWlf'
    ? at.map((value, k) => (k === 0 ? Math.log(wlfOf(state, 1, a1Of(state, at)).d1) + value : value))
    : [...at];

function transformed(state: FitState, matrix: readonly number[]): number[][] {
  const { at } = state;
  const size = at.length;
  const rows = slopes((place) => reported(state, place), at);
  return rows.map((left) =>
    rows.map((right) =>
      matrix.reduce((sum, one, k) => sum + one * (left[Math.floor(k / size)] ?? 0) * (right[k % size] ?? 0), 0),
    ),
  );
}

/** Covariance of the reported coordinates. */
export const reportedCovariance = (state: FitState): readonly (readonly number[])[] =>
  transformed(state, state.covariance);

/** Limits of the reported value: D1 has its own. */
const limitsOf = ({ name, limits }: Coordinate): readonly [number, number] =>
  name === 'd1PaS' ? lawLimits.d1PaS : limits;

function fittedParameter(coordinate: Coordinate, at: number, halfWidth: number, doubt: number): FittedParameter {
  const { name, log } = coordinate;
  const [least, most] = limitsOf(coordinate);
  const within = (value: number) => rounded(Math.min(most, Math.max(least, value)));
  const [value, low, high] = [0, -halfWidth, halfWidth].map((off) => within(log ? Math.exp(at + off) : at + off));
  const enough = log ? Math.LN2 : name === 'index' ? 0.15 : 0.5 * Math.abs(at);
  return { name, value: value ?? 0, low: low ?? 0, high: high ?? 0, fitted: true, determined: doubt <= enough };
}

const held = (name: string, value: number, determined: boolean): FittedParameter => ({
  name,
  value: rounded(value),
  low: rounded(value),
  high: rounded(value),
  fitted: false,
  determined,
});

function heldParameters(state: FitState): readonly FittedParameter[] {
  const { model, options } = state;
  if (model === 'crossWlf') {
    const slope = state.moves ? [] : [held('a1', universalA1, false)];
    return [
      ...slope,
      held('d2K', state.reference, true),
      held('d3KPerPa', 0, true),
      held('a2K', options.a2 ?? universalA2, true),
    ];
  }
  if (model !== 'carreauYasuda') return [];
  const transition = options.transition === undefined ? [] : [held('transition', options.transition, true)];
  return [held('infiniteShearViscosityPaS', options.infiniteShearViscosity ?? 0, true), ...transition];
}

/**
 * Constants with their bands.
 * @param state solved fit
 * @param inverse inverse normal matrix of the coordinates
 * @param scatter standard deviation of the logarithms; judged as if no readings were better than 1 %
 */
export function parametersOf(state: FitState, inverse: readonly number[], scatter: number): readonly FittedParameter[] {
  const shape = transformed(state, inverse);
  const values = reported(state, state.at);
  const fitted = coordinatesOf(state).map((coordinate, k) => {
    const spread = state.t * Math.sqrt(Math.max(0, shape[k]?.[k] ?? 0));
    const doubt = Math.max(spread * scatter, (2 * leastScatter * spread) / state.t);
    return fittedParameter(coordinate, values[k] ?? 0, Math.min(600, spread * Math.max(leastScatter, scatter)), doubt);
  });
  return [...fitted, ...heldParameters(state)];
}

const celsius = (kelvin: number): number => Number(fromSi(kelvin, '°C').toFixed(2));

/** What the values rest on, in words. */
function sourceText(state: FitState, count: number): string {
  const from = state.options.source ?? 'pasted viscosities';
  return `fitted to ${count} points of ${from}; 95 % band of the fit`.slice(0, 600);
}

function shiftOf(state: FitState, value: (name: string) => Sourced): StoredShift {
  const kind = shiftKind(state);
  const referenceC = celsius(state.reference);
  if (kind === 'arrhenius') return { kind, referenceC, activationKJPerMol: value('activationKJPerMol') };
  if (kind === 'exponential') return { kind, referenceC, coefficientPerK: value('coefficientPerK') };
  return { kind: 'none' };
}

/** The fitted law as a file stores it. */
export function storedRheology(
  state: FitState,
  parameters: readonly FittedParameter[],
  points: readonly RheologyPoint[],
): Rheology {
  const source = sourceText(state, points.length);
  const value = (name: string): Sourced => {
    const one = parameters.find((parameter) => parameter.name === name);
    const band = one?.fitted ? { low: one.low, high: one.high } : {};
    const heldText = { source: 'held in the fit', status: 'estimated' } as const;
    const origin = one?.fitted ? ({ source, status: 'measured here' } as const) : heldText;
    return { value: one?.value ?? 0, ...band, ...origin };
  };
  const pick = <K extends string>(...names: readonly K[]) =>
    Object.fromEntries(names.map((name) => [name, value(name)])) as Record<K, Sourced>;
  switch (state.model) {
    case 'newtonian':
      return { model: 'newtonian', ...pick('viscosityPaS'), shift: shiftOf(state, value) };
    case 'powerLaw':
      return { model: 'powerLaw', ...pick('consistencyPaSn', 'index'), shift: shiftOf(state, value) };
    case 'carreauYasuda': {
      const own = pick('zeroShearViscosityPaS', 'infiniteShearViscosityPaS', 'timeConstantS', 'transition', 'index');
      return { model: 'carreauYasuda', ...own, shift: shiftOf(state, value) };
    }
    default:
      return {
        model: 'crossWlf',
        ...pick('d1PaS', 'd2K', 'd3KPerPa', 'a1', 'a2K', 'criticalStressPa', 'index'),
      };
  }
}

/** Range of the points as the file stores it. */
export function storedRange(state: FitState, points: readonly RheologyPoint[]): NonNullable<Material['rheologyRange']> {
  const temperatures = points.map(({ temperature }) => temperature);
  const rates = points.map(({ shearRate }) => shearRate);
  return {
    fromC: celsius(Math.min(...temperatures)),
    toC: celsius(Math.max(...temperatures)),
    shearFromPerS: rounded(Math.min(...rates)),
    shearToPerS: rounded(Math.max(...rates)),
    source: sourceText(state, points.length),
    status: 'measured here',
  };
}
