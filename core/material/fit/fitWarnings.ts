/** What the points of a fit cannot say. */

import { coordinatesOf } from './fitModels.ts';
import type { FitResidual, FitState, FittedParameter, FitWarning } from './fitTypes.ts';

/** Scatter above which the law does not describe the points. */
const poorScatter = 0.3;
/** Spread of shear rates below which thinning is hardly seen. */
const narrowRatio = 10;

/** Names of constants as a reader knows them. */
const words: Readonly<Record<string, string>> = {
  viscosityPaS: 'viscosity',
  consistencyPaSn: 'consistency',
  index: 'flow index n',
  zeroShearViscosityPaS: 'viscosity at rest',
  timeConstantS: 'time constant',
  transition: 'sharpness of the bend',
  d1PaS: 'D1',
  a1: 'A1',
  criticalStressPa: 'critical stress',
  activationKJPerMol: 'flow activation energy',
  coefficientPerK: 'temperature coefficient',
};

/** A fit as far as warnings need it. */
interface Judged {
  readonly state: FitState;
  readonly parameters: readonly FittedParameter[];
  readonly residuals: readonly FitResidual[];
  /** different shear rates and temperatures */
  readonly places: number;
  readonly scatter: number;
  readonly converged: boolean;
}

const listed = (names: readonly string[]): string => names.map((name) => words[name] ?? name).join(', ');

function undetermined({ parameters }: Judged): readonly FitWarning[] {
  const names = parameters.filter(({ fitted, determined }) => fitted && !determined).map(({ name }) => name);
  if (names.length === 0) return [];
  const message = `The points do not determine: ${listed(names)}. Measure over wider shear rates or temperatures, or choose a law with fewer constants.`;
  return [{ code: 'not-determined', message, parameters: names }];
}

/** A fitted number that lies on the edge of what the file format allows. */
function atLimit({ state }: Judged): readonly FitWarning[] {
  const names = coordinatesOf(state)
    .filter(({ log, limits }, k) => {
      const value = log ? Math.exp(state.at[k] ?? 0) : (state.at[k] ?? 0);
      return limits.some((limit) => Math.abs(value - limit) <= 1e-6 * Math.max(Math.abs(limit), 1e-3));
    })
    .map(({ name }) => name);
  if (names.length === 0) return [];
  const message = `The fit ran to the edge of what is allowed: ${listed(names)}. Check the units and columns, or choose another law.`;
  return [{ code: 'at-limit', message, parameters: names }];
}

function ranges({ state, residuals, places }: Judged): readonly FitWarning[] {
  const found: FitWarning[] = [];
  const wantsShift = state.model === 'crossWlf' || state.options.shift !== 'none';
  if (!state.moves && wantsShift) {
    const message =
      'All points are at one temperature, so how the viscosity moves with temperature is not determined: measure at least one more, 20 K away.';
    found.push({ code: 'one-temperature', message, parameters: [state.model === 'crossWlf' ? 'a1' : 'shift'] });
  }
  if (places < residuals.length) {
    const message = `The ${residuals.length} points stand at ${places} different shear rates and temperatures: repeats do not narrow the bands.`;
    found.push({ code: 'repeated-points', message, parameters: [] });
  }
  const rates = residuals.map(({ shearRate }) => shearRate);
  if (state.model !== 'newtonian' && Math.max(...rates) < narrowRatio * Math.min(...rates)) {
    const message = 'The shear rates span less than a factor of 10: thinning outside them is a guess.';
    found.push({ code: 'narrow-shear', message, parameters: ['index'] });
  }
  return found;
}

function quality({ residuals, scatter, converged }: Judged): readonly FitWarning[] {
  const far = residuals.filter(({ outlier }) => outlier);
  const place = ({ line, shearRate }: FitResidual) => (line === undefined ? `${shearRate} 1/s` : `line ${line}`);
  const outliers: FitWarning = {
    code: 'outliers',
    message: `Far from the curve: ${far.map(place).join(', ')}. Check these readings.`,
    parameters: [],
  };
  const poor: FitWarning = {
    code: 'poor-fit',
    message: `The law misses the points by ${Math.round(100 * Math.expm1(scatter))} % on average: choose another law or check the columns.`,
    parameters: [],
  };
  const loose: FitWarning = {
    code: 'not-converged',
    message: 'The fit did not settle; its values may move with better data.',
    parameters: [],
  };
  return [
    ...(far.length > 0 ? [outliers] : []),
    ...(scatter > poorScatter ? [poor] : []),
    ...(converged ? [] : [loose]),
  ];
}

/** Everything that is doubtful about a fit. */
export const fitWarnings = (fit: Judged): readonly FitWarning[] => [
  ...ranges(fit),
  ...undetermined(fit),
  ...atLimit(fit),
  ...quality(fit),
];
