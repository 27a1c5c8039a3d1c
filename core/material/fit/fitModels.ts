/** The viscosity laws as a fit sees them: coordinates, limits, starts and the curve itself. */

import { shifted, shiftFactor } from '../shift.ts';
import { lawLimits } from '../switchTypes.ts';
import { powerLawFloorRate, type ViscosityLaw, viscosityAt } from '../viscosityLaw.ts';
import { wlfViscosity } from '../wlf.ts';
import type { FitModel, FitState, RheologyPoint } from './fitTypes.ts';
import type { Curve } from './leastSquares.ts';

/** One number that a fit moves. */
export interface Coordinate {
  /** field of the stored law */
  readonly name: string;
  /** whether the fit moves the logarithm */
  readonly log: boolean;
  /** limits of the value itself, from the file format */
  readonly limits: readonly [number, number];
}

/** What the curve depends on besides its coordinates. */
export type Frame = Pick<FitState, 'model' | 'options' | 'reference' | 'centre' | 'moves'>;

/** A1 of the universal WLF constants, 17.44 ln 10 (Williams, Landel and Ferry 1955), where one temperature says nothing. */
export const universalA1 = 17.44 * Math.LN10;
/** A2 of the universal WLF constants, K. */
export const universalA2 = 51.6;

const logOf = (name: string, limits: readonly [number, number]): Coordinate => ({ name, log: true, limits });
const plain = (name: string, limits: readonly [number, number]): Coordinate => ({ name, log: false, limits });

/** Name of the temperature shift that is fitted. */
export const shiftKind = ({ options, moves }: Frame) => (moves ? (options.shift ?? 'arrhenius') : 'none');

function shiftCoordinates(frame: Frame): readonly Coordinate[] {
  switch (shiftKind(frame)) {
    case 'arrhenius':
      return [plain('activationKJPerMol', lawLimits.activationKJPerMol)];
    case 'exponential':
      return [plain('coefficientPerK', lawLimits.coefficientPerK)];
    default:
      return [];
  }
}

/** The numbers that are fitted, in order. For Cross-WLF the first is the viscosity at rest at the centre. */
export function coordinatesOf(frame: Frame): readonly Coordinate[] {
  const limits = lawLimits;
  const own: Readonly<Record<FitModel, readonly Coordinate[]>> = {
    newtonian: [logOf('viscosityPaS', limits.viscosityPaS)],
    powerLaw: [logOf('consistencyPaSn', limits.consistencyPaSn), plain('index', limits.powerIndex)],
    carreauYasuda: [
      logOf('zeroShearViscosityPaS', limits.zeroShearViscosityPaS),
      logOf('timeConstantS', limits.timeConstantS),
      plain('index', limits.carreauIndex),
      ...(frame.options.transition === undefined ? [logOf('transition', limits.transition)] : []),
    ],
    crossWlf: [
      logOf('d1PaS', limits.zeroShearViscosityPaS),
      logOf('criticalStressPa', limits.criticalStressPa),
      plain('index', limits.crossIndex),
      ...(frame.moves ? [plain('a1', limits.a1)] : []),
    ],
  };
  return [...own[frame.model], ...(frame.model === 'crossWlf' ? [] : shiftCoordinates(frame))];
}

/** WLF constants; the level so that the viscosity at rest at the centre is `rest`. */
export function wlfOf(frame: Frame, rest: number, a1: number) {
  const form = { d1: 1, d2: frame.reference, d3: 0, a1, a2: frame.options.a2 ?? universalA2 };
  return { ...form, d1: rest / wlfViscosity(form, frame.centre, 0) };
}

/** Law at the reference temperature without filler, for the laws that carry a shift. */
function levelLaw({ model, options }: Frame, value: Readonly<Record<string, number>>): ViscosityLaw {
  switch (model) {
    case 'powerLaw':
      return {
        model,
        consistency: value.consistencyPaSn ?? 0,
        index: value.index ?? 1,
        regularisingRate: powerLawFloorRate,
      };
    case 'carreauYasuda':
      return {
        model,
        zeroShearViscosity: value.zeroShearViscosityPaS ?? 0,
        infiniteShearViscosity: options.infiniteShearViscosity ?? 0,
        timeConstant: value.timeConstantS ?? 0,
        transition: value.transition ?? options.transition ?? 2,
        index: value.index ?? 1,
      };
    default:
      return { model: 'newtonian', viscosity: value.viscosityPaS ?? 0 };
  }
}

/** Temperature factor of a shifted law. */
function factorAt(frame: Frame, value: Readonly<Record<string, number>>, temperature: number): number {
  const { reference } = frame;
  const kind = shiftKind(frame);
  if (kind === 'arrhenius') {
    return shiftFactor({ kind, reference, activation: (value.activationKJPerMol ?? 0) * 1000 }, temperature);
  }
  if (kind === 'exponential') {
    return shiftFactor({ kind, reference, coefficient: value.coefficientPerK ?? 0 }, temperature);
  }
  return 1;
}

/** Law at a temperature (K), from values by name. */
function lawAt(frame: Frame, value: Readonly<Record<string, number>>, temperature: number): ViscosityLaw {
  if (frame.model !== 'crossWlf') return shifted(levelLaw(frame, value), factorAt(frame, value, temperature));
  const wlf = wlfOf(frame, value.d1PaS ?? 0, value.a1 ?? universalA1);
  return {
    model: 'cross',
    zeroShearViscosity: wlfViscosity(wlf, temperature, 0),
    criticalStress: value.criticalStressPa ?? 0,
    index: value.index ?? 1,
  };
}

/**
 * The curve of a model at given places; D1 of Cross-WLF stands as viscosity at rest at the centre.
 * @param frame model and what is held
 * @param points shear rates (1/s) and temperatures (K)
 * @returns function of the coordinates giving ln of the viscosity without filler at each point
 */
export function curveOf(frame: Frame, points: readonly Pick<RheologyPoint, 'shearRate' | 'temperature'>[]): Curve {
  const coordinates = coordinatesOf(frame);
  const temperatures = [...new Set(points.map(({ temperature }) => temperature))];
  const places = points.map(({ temperature }) => temperatures.indexOf(temperature));
  return (at) => {
    const value: Record<string, number> = {};
    coordinates.forEach(({ name, log }, k) => {
      value[name] = log ? Math.exp(at[k] ?? 0) : (at[k] ?? 0);
    });
    const laws = temperatures.map((temperature) => lawAt(frame, value, temperature));
    return points.map(({ shearRate }, i) => Math.log(viscosityAt(laws[places[i] ?? 0] as ViscosityLaw, shearRate)));
  };
}

/** Whether ln(viscosity) is linear in the coordinates. */
export const isLinear = (model: FitModel): boolean => model === 'newtonian' || model === 'powerLaw';

/** Coordinates to begin from: level by the thickest point, bend at several places of the measured range. */
export function startsOf(frame: Frame, points: readonly RheologyPoint[]): readonly (readonly number[])[] {
  const rates = points.map(({ shearRate }) => shearRate);
  const [slow, fast] = [Math.min(...rates), Math.max(...rates)];
  const thick = Math.max(...points.map(({ viscosity }) => viscosity));
  const shift = { arrhenius: [40], exponential: [0.02], none: [] }[shiftKind(frame)];
  const starts = [0.1, 0.35, 0.7].map((share) => slow * (fast / slow) ** share);
  return starts.map((bend, i) => {
    const level = Math.log(thick * (i === 0 ? 2 : 1.2));
    if (frame.model === 'carreauYasuda') {
      const transition = frame.options.transition === undefined ? [Math.log(1)] : [];
      return [level, -Math.log(bend), 0.35, ...transition, ...shift];
    }
    return [level, Math.log(thick * bend), 0.3, ...(frame.moves ? [25] : [])];
  });
}
