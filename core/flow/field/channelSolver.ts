/**
 * Fully developed flow of a generalised Newtonian melt in a screw channel, all velocity components in one viscosity.
 *
 * Inertialess, isothermal, no slip, no clearance. Straight channel: div(eta grad w) = G and Stokes flow of (u, v), with
 * the shear rate of the whole velocity gradient (Griffith 1962; the classical unwrapped model). Helical channel: the
 * three components in cylindrical coordinates, functions of r and of the distance from the flight only. Method: the flow
 * minimises dissipation potential plus pressure work among divergence-free fields written with a stream function; cubic
 * splines, Newton's method, banded Cholesky.
 */

import type { ViscosityLaw } from '../../material/viscosityLaw.ts';
import type { ChannelMotion, ChannelSection } from './channelSection.ts';
import { liftedCoefficients } from './lid.ts';
import { type FlowSolver, flowSolver, moveCoefficients, type SolveEnd, solveFlow } from './newton.ts';
import {
  type ChannelOptions,
  type ChannelScales,
  channelScales,
  dimensionlessLaw,
  NEWTONIAN,
  type PreparedChannel,
  prepareChannel,
} from './prepared.ts';

/** One point of a channel's curve. */
interface ChannelPoint {
  /** Pressure gradient, Pa/m, positive against the drag: down-channel (flat) or along the axis at fixed place between the flights (helical). */
  readonly gradient: number;
  /** m3/s, all starts; negative for net back flow */
  readonly flowRate: number;
  /** dQ/dG at fixed speed, m3/s per Pa/m, negative */
  readonly flowSlope: number;
  /**
   * W per metre down-channel (flat) or of axis (helical). For a Newtonian law it is infinite in truth (the wall speed
   * jumps at the flight tip); the value then belongs to a jump spread over 0.1 % of the depth.
   */
  readonly dissipation: number;
  /** Power given off by the barrel surface to the melt, same unit: dissipation + gradient * flowRate. */
  readonly barrelPower: number;
  readonly converged: boolean;
  /** Linear solves used. */
  readonly iterations: number;
  /** Last Newton step, relative in the energy norm. */
  readonly residual: number;
}

/** A point with what is needed to look inside the flow. */
export interface ChannelState extends ChannelPoint {
  readonly prepared: PreparedChannel;
  readonly law: ViscosityLaw;
  readonly motion: ChannelMotion;
  readonly scales: ChannelScales;
  /** Spline coefficients, dimensionless: stream function, then along-channel speed. */
  readonly coefs: Float64Array;
}

/** A run of one channel at one speed: solutions follow each other from warm starts. */
interface Run {
  readonly prepared: PreparedChannel;
  readonly law: ViscosityLaw;
  readonly motion: ChannelMotion;
  readonly scales: ChannelScales;
  readonly solver: FlowSolver;
  readonly options: ChannelOptions;
  coefs: Float64Array;
  last: SolveEnd;
  /** The solver holds the factor of a Newtonian law, which serves every gradient. */
  factored: boolean;
}

function startRun(prepared: PreparedChannel, law: ViscosityLaw, motion: ChannelMotion, options: ChannelOptions): Run {
  const scales = channelScales(prepared, law, motion);
  const { tolerance = 3e-3, mostIterations = 60, onStep } = options;
  const limits = { tolerance, mostIterations, onStep };
  const solver = flowSolver(prepared.space, dimensionlessLaw(law, scales), limits);
  const { coefs, end } = newtonianStart(prepared, 0);
  return { prepared, law, motion, scales, solver, options, coefs, last: end, factored: false };
}

/** Newtonian field at a load: the start of every run, and the way out when a warm start fails. */
function newtonianStart(prepared: PreparedChannel, load: number): { coefs: Float64Array; end: SolveEnd } {
  const coefs = liftedCoefficients(prepared.space, prepared.lid);
  const linear = flowSolver(prepared.space, NEWTONIAN, { tolerance: 1, mostIterations: 1 });
  return { coefs, end: solveFlow(linear, coefs, { load, flow: null }) };
}

/** Next solution of a run, at a dimensionless load, or with a half-section flow when one is given. */
function advance(run: Run, load: number, flow: number | null): ChannelState {
  const { solver, prepared, law } = run;
  if (flow === null) moveCoefficients(prepared.space, run.coefs, run.last.response, load - run.last.load);
  let end = solveFlow(solver, run.coefs, { load, flow, reuseFactor: run.factored });
  if (!end.converged) {
    const fresh = newtonianStart(prepared, 0);
    const again = solveFlow(solver, fresh.coefs, { load, flow });
    if (again.converged) {
      run.coefs = fresh.coefs;
      end = { ...again, iterations: again.iterations + end.iterations };
    }
  }
  run.last = end;
  run.factored = law.model === 'newtonian' && end.converged;
  return stateOf(run, end);
}

function stateOf(run: Run, end: SolveEnd): ChannelState {
  const { prepared, law, motion, scales } = run;
  const gradient = end.load / scales.loadPerGradient;
  const flowRate = end.flow * scales.flow;
  const dissipation = end.dissipation * scales.power;
  return {
    gradient,
    flowRate,
    flowSlope: end.flowSlope * scales.flow * scales.loadPerGradient,
    dissipation,
    barrelPower: dissipation + gradient * flowRate,
    converged: end.converged,
    iterations: end.iterations,
    residual: end.residual,
    prepared,
    law,
    motion,
    scales,
    coefs: run.coefs.slice(),
  };
}

/**
 * Flow at one pressure gradient: `channelCurve` with one point, for tests and checks.
 * @param section valid section, or a prepared one
 * @param gradient Pa/m, any sign
 * @throws RangeError for a section with issues
 */
export function solveChannel(
  section: ChannelSection | PreparedChannel,
  law: ViscosityLaw,
  motion: ChannelMotion,
  gradient: number,
  options: ChannelOptions = {},
): ChannelState {
  return channelCurve(section, law, motion, [gradient], options)[0];
}

/**
 * Flow against pressure gradient, solved in the order given (neighbouring values start from each other).
 * @param gradients Pa/m
 * @returns one state per gradient, same order; look at `converged`
 */
export function channelCurve(
  section: ChannelSection | PreparedChannel,
  law: ViscosityLaw,
  motion: ChannelMotion,
  gradients: readonly number[],
  options: ChannelOptions = {},
): ChannelState[] {
  const prepared = 'space' in section ? section : prepareChannel(section, options);
  const run = startRun(prepared, law, motion, options);
  return gradients.map((gradient) => advance(run, gradient * run.scales.loadPerGradient, null));
}

/**
 * Flow with a wanted flow rate; zero gives closed discharge. Gradient and field are found together.
 * @param flowRate m3/s, all starts
 */
export function solveChannelForFlow(
  section: ChannelSection | PreparedChannel,
  law: ViscosityLaw,
  motion: ChannelMotion,
  flowRate: number,
  options: ChannelOptions = {},
): ChannelState {
  const prepared = 'space' in section ? section : prepareChannel(section, options);
  const run = startRun(prepared, law, motion, options);
  return advance(run, 0, flowRate / run.scales.flow);
}
