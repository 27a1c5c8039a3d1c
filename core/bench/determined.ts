/** Which factors a set of trials can tell, and which not. */

import type { FactorName } from '../design/calibrate.ts';
import type { FitModel } from './fitModel.ts';
import { factorWords } from './fitTypes.ts';

/** Half the step over which slopes are taken, as ln of a factor: well above the solver's own tolerance. */
export const slopeStep = 0.05;
/** A factor is told only if trials that repeat as a careful bench does would give it within this, as ln. */
const worstError = 0.5;
/** Share of a factor's effect that the other factors must not be able to imitate. */
const leastOwn = 0.15;

/**
 * Slopes of all observations by central differences, d ln(figure) / d ln(factor).
 * @returns one column per factor; 0 where a figure is missing on either side
 */
export function slopes(model: FitModel, theta: ArrayLike<number>, names: readonly FactorName[]): Float64Array[] {
  return names.map((_, factor) => {
    const at = (step: number) => {
      const moved = Float64Array.from(theta);
      moved[factor] += step;
      return model.predict(moved, names);
    };
    const [below, above] = [at(-slopeStep), at(slopeStep)];
    return above.map((value, i) => {
      const slope = (value - below[i]) / (2 * slopeStep);
      return Number.isFinite(slope) ? slope : 0;
    });
  });
}

/** Effect on a figure, as ln per ln of the factor, below which it does not count as moved. */
const leastSlope = 0.02;

/**
 * Which figures the factors of a fit move: only those can be met by it, so only those count as figures to spare.
 * @param columns slopes, one column per factor
 */
export const movedFigures = (model: FitModel, columns: readonly Float64Array[]): readonly boolean[] =>
  model.observations.map((_, at) => columns.some((column) => Math.abs(column[at]) > leastSlope));

/** How many figures the factors move. */
export const countMoved = (model: FitModel, columns: readonly Float64Array[]): number =>
  movedFigures(model, columns).filter(Boolean).length;

const dot = (p: Float64Array, q: Float64Array): number => p.reduce((sum, value, i) => sum + value * q[i], 0);

/** Why a factor is not told, by its name; the others are told. `unseen`: it moves nothing, rather than what others move. */
export type Undetermined = ReadonlyMap<FactorName, { readonly unseen: boolean; readonly reason: string }>;

/** What kind of trial would show a factor. */
const showsItself: Readonly<Record<FactorName, string>> = {
  feed: 'feed does not limit any of them',
  wallFriction: 'friction does not limit any of them',
  viscosity: 'none gives a torque or an output that depends on it',
  colourRate: 'none gives a colour that can be compared',
};

/**
 * Goes through the factors and takes each that the trials tell apart from those before it.
 * @param columns slopes, one column per factor
 * @param weights of the observations, 0 to 1
 */
export function undetermined(
  model: FitModel,
  columns: readonly Float64Array[],
  names: readonly FactorName[],
  weights: ArrayLike<number> = model.observations.map(() => 1),
): Undetermined {
  const reasons = new Map<FactorName, { unseen: boolean; reason: string }>();
  const basis: { readonly name: FactorName; readonly unit: Float64Array }[] = [];
  names.forEach((name, i) => {
    const column = columns[i].map((slope, at) => (slope * Math.sqrt(weights[at])) / model.observations[at].scatter);
    const whole = Math.sqrt(dot(column, column));
    if (!(whole > 1 / worstError)) {
      const reason = `These trials do not show it: ${showsItself[name]}, or too weakly.`;
      reasons.set(name, { unseen: true, reason });
      return;
    }
    const own = column.slice();
    for (const { unit } of basis) {
      const along = dot(own, unit);
      for (let at = 0; at < own.length; at++) own[at] -= along * unit[at];
    }
    const left = Math.sqrt(dot(own, own));
    if (left > 1 / worstError && left > leastOwn * whole) {
      basis.push({ name, unit: own.map((value) => value / left) });
      return;
    }
    const others = basis.map((each) => factorWords[each.name]).join(' and ');
    reasons.set(name, { unseen: false, reason: `These trials cannot tell it from ${others}.` });
  });
  return reasons;
}
