/** Why a fit is refused. */

import type { Issue } from '../../result.ts';
import { formatQuantity } from '../../units.ts';
import { type Coordinate, coordinatesOf, type Frame, isLinear } from './fitModels.ts';
import type { FitModel, FitOptions, RheologyPoint } from './fitTypes.ts';

/** Limits of believable readings, SI, with the unit in which a reader is told of them. */
const believable = {
  shearRate: [1e-6, 1e8, '1/s'],
  temperature: [200, 900, '°C'],
  viscosity: [1e-6, 1e12, 'Pa·s'],
} as const;

const words = { shearRate: 'shear rate', temperature: 'temperature', viscosity: 'viscosity' } as const;

function pointIssues(point: RheologyPoint, index: number): readonly Issue[] {
  return (['shearRate', 'temperature', 'viscosity'] as const).flatMap((key): readonly Issue[] => {
    const [low, high, unit] = believable[key];
    const value = point[key];
    if (value >= low && value <= high) return [];
    const where = point.line === undefined ? '' : ` in line ${point.line}`;
    return [
      {
        path: ['points', index, key],
        code: 'not-believable',
        message: `The ${words[key]}${where} cannot be right.`,
        value: formatQuantity(value, unit, 4),
        allowed: `${formatQuantity(low, unit, 4)} to ${formatQuantity(high, unit, 4)}`,
        remedy: 'Check the reading, its unit and the order of the columns.',
      },
    ];
  });
}

const whole = (code: string, message: string, value: string, allowed: string, remedy: string): Issue => ({
  path: ['points'],
  code,
  message,
  value,
  allowed,
  remedy,
});

/** Different shear rates a law needs: one more than it has constants of thinning. */
const ratesNeeded: Readonly<Record<FitModel, number>> = { newtonian: 1, powerLaw: 2, carreauYasuda: 3, crossWlf: 3 };

function countIssues(model: FitModel, points: readonly RheologyPoint[], options: FitOptions): readonly Issue[] {
  const temperatures = points.map(({ temperature }) => temperature);
  const moves = Math.max(...temperatures) - Math.min(...temperatures) > 1;
  const size = coordinatesOf({ model, options, reference: 400, centre: 450, moves }).length;
  if (points.length <= size) {
    const remedy = 'Paste more points, or choose a law with fewer constants.';
    const allowed = `at least ${size + 1} points for ${size} constants`;
    return [whole('too-few-points', 'There are too few points for this law.', String(points.length), allowed, remedy)];
  }
  const rates = new Set(points.map(({ shearRate }) => shearRate)).size;
  if (rates >= ratesNeeded[model]) return [];
  const allowed = `at least ${ratesNeeded[model]} different shear rates`;
  const remedy = 'Paste points at more shear rates, or choose a law with fewer constants.';
  return [whole('too-few-rates', 'The shear rates are too few for this law.', String(rates), allowed, remedy)];
}

/** Faults of the points, each named by its place. */
export function fitIssues(model: FitModel, points: readonly RheologyPoint[], options: FitOptions): readonly Issue[] {
  const faults = points.flatMap(pointIssues);
  return faults.length > 0 ? faults : countIssues(model, points, options);
}

const shown = ({ log }: Coordinate, at: number): string => String(Number((log ? Math.exp(at) : at).toPrecision(4)));

/** A linear fit whose result no file may hold: the points contradict the law. */
export function limitIssues(frame: Frame, at: readonly number[], count: number): readonly Issue[] {
  const coordinates = coordinatesOf(frame);
  if (!at.every((value) => Number.isFinite(value)) || at.length !== coordinates.length) {
    return [
      whole(
        'no-fit',
        'The law cannot be fitted to these points.',
        String(count),
        'points that the law can follow',
        'Choose another law.',
      ),
    ];
  }
  if (!isLinear(frame.model)) return [];
  return coordinates.flatMap((coordinate, k): readonly Issue[] => {
    const [low, high] = coordinate.limits;
    const value = coordinate.log ? Math.exp(at[k] ?? 0) : (at[k] ?? 0);
    if (value >= low && value <= high) return [];
    return [
      whole(
        'fit-out-of-range',
        `The points lead to a value of ${coordinate.name} that no melt has.`,
        shown(coordinate, at[k] ?? 0),
        `${low} to ${high}`,
        'Check the units and the order of the columns, or choose another law.',
      ),
    ];
  });
}
