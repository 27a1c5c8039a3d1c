/** A viscosity law fitted to measured viscosities. */

import { studentLimit } from '../../math/studentT.ts';
import type { Result } from '../../result.ts';
import { fitIssues, limitIssues } from './fitIssues.ts';
import { type Coordinate, coordinatesOf, curveOf, type Frame, isLinear, startsOf } from './fitModels.ts';
import { parametersOf, reportedCovariance, storedRange, storedRheology } from './fitReport.ts';
import type {
  FitModel,
  FitOptions,
  FitResidual,
  FitState,
  RheologyFit,
  RheologyPoint,
  ViscosityBand,
} from './fitTypes.ts';
import { fitWarnings } from './fitWarnings.ts';
import { inverseNormal, type Problem, type Solved, slopes, solveLeastSquares, solveLinear } from './leastSquares.ts';

/** Temperatures closer than this count as one, K. */
const sameTemperature = 1;

function frameOf(model: FitModel, points: readonly RheologyPoint[], options: FitOptions): Frame {
  const temperatures = points.map(({ temperature }) => temperature);
  const [cold, hot] = [Math.min(...temperatures), Math.max(...temperatures)];
  const mean = temperatures.reduce((sum, value) => sum + value, 0) / temperatures.length;
  const usual = model === 'crossWlf' ? Math.round(cold - 100) : mean;
  return {
    model,
    options,
    reference: options.referenceTemperature ?? usual,
    centre: mean,
    moves: hot - cold > sameTemperature,
  };
}

const edge = ({ log, limits: [low, high] }: Coordinate): readonly [number, number] =>
  log ? [Math.log(Math.max(low, 1e-300)), Math.log(high)] : [low, high];

function solve(frame: Frame, points: readonly RheologyPoint[]): Solved {
  const thickening = Math.log(frame.options.thickening ?? 1);
  const edges = coordinatesOf(frame).map(edge);
  const problem: Problem = {
    wanted: points.map(({ viscosity }) => Math.log(viscosity) - thickening),
    of: curveOf(frame, points),
    low: edges.map(([low]) => low),
    high: edges.map(([, high]) => high),
  };
  return isLinear(frame.model)
    ? solveLinear(problem, edges.length)
    : solveLeastSquares(problem, startsOf(frame, points));
}

/** Points beside the curve; those beyond three scatters are marked. */
function residualsOf(state: FitState, points: readonly RheologyPoint[], scatter: number): readonly FitResidual[] {
  const thickening = state.options.thickening ?? 1;
  const curve = curveOf(state, points)(state.at);
  return points.map((point, i) => {
    const fitted = Math.exp(curve[i] ?? 0) * thickening;
    const residual = Math.log(point.viscosity / fitted);
    return { ...point, fitted, residual, outlier: Math.abs(residual) > 3 * scatter && Math.abs(residual) > 0.01 };
  });
}

/** Share of the spread explained; null where there is next to none. */
function explained(points: readonly RheologyPoint[], squares: number): number | null {
  const logs = points.map(({ viscosity }) => Math.log(viscosity));
  const mean = logs.reduce((sum, value) => sum + value, 0) / logs.length;
  const spread = logs.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return spread > 1e-9 ? 1 - squares / spread : null;
}

/**
 * How many different shear rates and temperatures the points stand at. A reading given again at its own place says how
 * well the rheometer repeats, not how well the law holds: it must not narrow the bands.
 */
const placesOf = (points: readonly RheologyPoint[]): number =>
  new Set(points.map(({ shearRate, temperature }) => `${shearRate.toPrecision(6)} ${temperature.toPrecision(6)}`)).size;

function report(frame: Frame, points: readonly RheologyPoint[], solved: Solved): RheologyFit {
  const places = placesOf(points);
  const share = places / points.length;
  const freedom = Math.max(1, places - solved.at.length);
  const scatter = Math.sqrt((solved.squares * share) / freedom);
  const rows = slopes(curveOf(frame, points), solved.at);
  const inverse = inverseNormal(rows, solved.at.length).map((one) => one / share);
  const covariance = inverse.map((one) => one * scatter ** 2);
  const state: FitState = { ...frame, at: solved.at, covariance, t: studentLimit(0.95, freedom) };
  const parameters = parametersOf(state, inverse, scatter);
  const residuals = residualsOf(state, points, scatter);
  const rSquared = explained(points, solved.squares);
  return {
    rheology: storedRheology(state, parameters, points),
    range: storedRange(state, points),
    parameters,
    covariance: reportedCovariance(state),
    residuals,
    rSquared,
    scatter,
    converged: solved.converged,
    warnings: fitWarnings({ state, parameters, residuals, places, scatter, converged: solved.converged }),
    state,
  };
}

/**
 * Fits a viscosity law to measured points by least squares of ln(viscosity), so that each point counts by its relative
 * error.
 * @param model law to fit
 * @param points shear rate 1/s, temperature K, viscosity Pa s; more points than constants, at more than one shear rate
 *   for laws that thin
 * @param options shift with temperature and what is held, see `FitOptions`
 * @returns law in the shape of the file format with 95 % bands (Student's t, linearised), residuals, R² and scatter in
 *   logarithms, and warnings about what the points cannot say; or one issue per fault, points named by
 *   `points[index].field`
 * Points at one temperature leave the dependence on temperature out: shift 'none', for Cross-WLF the universal A1.
 */
export function fitRheology(
  model: FitModel,
  points: readonly RheologyPoint[],
  options: FitOptions = {},
): Result<RheologyFit> {
  const faults = fitIssues(model, points, options);
  if (faults.length > 0) return { ok: false, issues: faults };
  const frame = frameOf(model, points, options);
  const solved = solve(frame, points);
  const beyond = limitIssues(frame, solved.at, points.length);
  if (beyond.length > 0) return { ok: false, issues: beyond };
  return { ok: true, value: report(frame, points, solved) };
}

/**
 * Viscosity of a fitted law with the 95 % band of the curve (not of single readings).
 * @param fit a fit
 * @param shearRate 1/s, > 0
 * @param temperature K
 * @returns Pa s, filler of the measured melt included; outside the measured range the band does not know the error of
 *   the law itself
 */
export function fittedViscosity(
  fit: Pick<RheologyFit, 'state'>,
  shearRate: number,
  temperature: number,
): ViscosityBand {
  const { state } = fit;
  const { at, covariance, t } = state;
  const of = curveOf(state, [{ shearRate, temperature }]);
  const slope = slopes(of, at)[0] ?? [];
  const size = at.length;
  const variance = covariance.reduce(
    (sum, one, k) => sum + one * (slope[Math.floor(k / size)] ?? 0) * (slope[k % size] ?? 0),
    0,
  );
  const value = Math.exp(of(at)[0] ?? 0) * (state.options.thickening ?? 1);
  // A constant without hold on the points may take the band beyond what a number can hold.
  const factor = Math.exp(Math.min(50, t * Math.sqrt(Math.max(0, variance))));
  return { value, low: value / factor, high: value * factor };
}
