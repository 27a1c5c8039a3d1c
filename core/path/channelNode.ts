/**
 * Solved points of a cross-section, tabulated over what they depend on: shape, family of the law, the law's turning rate
 * over barrel speed per depth, and pressure gradient over that of closed discharge. Each point tells by what factors the
 * unrolled channel of reach.ts must be corrected to carry the solved flow, and how the melt dwells.
 */

import { barrelForce } from '../flow/field/barrelStress.ts';
import { type ChannelState, channelCurve } from '../flow/field/channelSolver.ts';
import { streamGrid } from '../flow/field/orbitGrid.ts';
import { type PreparedChannel, prepareChannel } from '../flow/field/prepared.ts';
import { createPlateSolver, solvePlate } from '../flow/plate.ts';
import { createReach, type Reach, type ReachShape, solveReach } from '../flow/reach.ts';
import type { ViscosityLaw } from '../material/viscosityLaw.ts';
import { channelOrbits } from '../residence/orbits.ts';
import { orbitTimes } from '../residence/orbitTimes.ts';
import type { ChannelShape } from './channelShape.ts';
import { type DwellBins, dwellBins } from './dwellBins.ts';
import { type FieldCache, recall, remember, store } from './fieldCache.ts';
import type { LawFamily } from './lawFamily.ts';
import { type SectionMap, sectionMap } from './sectionMap.ts';

/** Factors that make the unrolled channel carry what the solved field carries. */
export interface FieldFactors {
  readonly drag: number;
  readonly pressure: number;
  readonly power: number;
}

/** One solved point. */
export interface ChannelNode {
  readonly factors: FieldFactors;
  /** null where the channel does not move forward on the whole */
  readonly bins: DwellBins | null;
  readonly map: SectionMap;
  readonly converged: boolean;
}

/** Which points of a shape and law: numbers on the grids below. */
export interface NodeRequest {
  readonly shape: ChannelShape;
  readonly family: LawFamily;
  /** number on the grid of turning rates */
  readonly law: number;
  /** number on the grid of gradients */
  readonly gradient: number;
}

/** Spacing of the grid of turning rates, in ln; flows in between are off by under 0.5 %. */
export const lawStep = Math.log(3);

/** Turning rates below this, over barrel speed per depth, do not change the flow any more: pure power. */
export const leastTurning = Math.exp(-6 * lawStep);
/** Nor above this: Newtonian. */
export const mostTurning = Math.exp(4 * lawStep);

/** Spacing of the grid of gradients, over that of closed discharge. */
export const gradientStep = 0.25;
/** First gradient of the grid, over that of closed discharge. */
export const leastGradient = -1;
/** Last gradient of the grid, over that of closed discharge. */
export const mostGradient = 2;

/** Mesh against the standard one; times of the slow orbits need it a little finer. */
const coarseness = 0.75;

/** Spacing of the grid on which orbits are followed, in depths: tracked particles agree to 0.003 of F. */
export const orbitSpacing = 0.005;

/** Cache key of a point. */
const keyOf = ({ shape, family, law, gradient }: NodeRequest): string =>
  `node ${shape.key} | ${family.key} ${law} | ${gradient}`;

/** The dimensionless problem: barrel radius 1 m, barrel speed over depth 1/s. */
interface Problem {
  readonly shape: ReachShape;
  readonly law: ViscosityLaw;
  readonly speed: number;
  readonly screwSpeed: number;
  /** the uncorrected unrolled channel */
  readonly unrolled: Reach;
  /** its gradient at closed discharge */
  readonly closed: number;
}

function problemOf({ shape, family, law }: NodeRequest): Problem {
  const speed = shape.reach.depth;
  const screwSpeed = speed / (2 * Math.PI);
  const unit = family.turningAt(Math.exp(law * lawStep));
  const unrolled = createReach(shape.reach);
  const closed = solveReach(unrolled, unit, screwSpeed, 0).gradient;
  return { shape: shape.reach, law: unit, speed, screwSpeed, unrolled, closed };
}

/** Flow per width of the plain plates at an axial gradient, and its change with it. */
function plateFlow({ shape, law, speed }: Problem, gradient: number): number {
  const down = { wallSpeed: speed * Math.cos(shape.helixBarrel), given: 'gradient' as const };
  const cross = { wallSpeed: speed * Math.sin(shape.helixBarrel), given: 'flow' as const, value: 0 };
  const value = gradient * Math.sin(shape.helixMean);
  return solvePlate(createPlateSolver(), law, shape.depth, { ...down, value }, cross).down.flow;
}

/** Power of the barrel per axial length, without a strip of the clearance's width at each flank. */
function barrelPower(request: NodeRequest, problem: Problem, state: ChannelState): number {
  const { section, cut } = request.shape;
  const force = barrelForce(state, cut * problem.shape.depth);
  return (force.along * problem.speed * 2 * Math.PI * section.barrelRadius * section.starts) / section.lead;
}

/** Factors from the solved flow without and with gradient. */
function factorsOf(request: NodeRequest, problem: Problem, open: ChannelState, state: ChannelState): FieldFactors {
  const { unrolled, law, screwSpeed, shape } = problem;
  const drag = (unrolled.dragFactor * open.flowRate) / solveReach(unrolled, law, screwSpeed, 0).openFlow;
  const openPlate = plateFlow(problem, 0);
  // without gradient the factor is the limit: the ratio of the slopes
  const small = 1e-3 * problem.closed;
  const solved = request.gradient === 0 ? -state.flowSlope * small : open.flowRate - state.flowRate;
  const plate = openPlate - plateFlow(problem, request.gradient === 0 ? small : state.gradient);
  const pressure = solved / (shape.starts * shape.widthMean * plate);
  const corrected = { ...createReach(shape), dragFactor: drag, pressureFactor: pressure };
  const plain = solveReach(corrected, law, screwSpeed, state.flowRate).channelPower;
  return { drag, pressure, power: barrelPower(request, problem, state) / plain };
}

function nodeOf(request: NodeRequest, problem: Problem, open: ChannelState, state: ChannelState): ChannelNode {
  const orbits = channelOrbits(streamGrid(state, orbitSpacing));
  const forward = state.flowRate > 0.01 * open.flowRate;
  return {
    factors: factorsOf(request, problem, open, state),
    bins: forward ? dwellBins(orbits, orbitTimes(orbits).minimum) : null,
    map: sectionMap(state, orbits),
    converged: open.converged && state.converged,
  };
}

/**
 * Solves the points that are not known yet and puts all into the cache.
 * @param requests points of one shape and law; each shape is meshed once, gradients start from each other
 */
export function solveNodes(cache: FieldCache, requests: readonly NodeRequest[]): void {
  const missing = requests.filter((request) => recall(cache.channel, keyOf(request)) === null);
  const [first] = missing;
  if (!first) return;
  const { shape } = first;
  const problem = problemOf(first);
  const prepared = remember(
    cache.prepared,
    `mesh ${shape.key}`,
    (): PreparedChannel => prepareChannel(shape.section, { coarseness }),
  );
  const steps = missing.map((request) => request.gradient);
  const gradients = [0, ...steps.filter((step) => step !== 0)].sort((a, b) => Math.abs(a) - Math.abs(b));
  const states = channelCurve(
    prepared,
    problem.law,
    { barrelSpeed: problem.speed },
    gradients.map((step) => step * gradientStep * problem.closed),
    { onStep: cache.onStep },
  );
  gradients.forEach((gradient, i) => {
    const request = { ...first, gradient };
    if (steps.includes(gradient)) store(cache.channel, keyOf(request), nodeOf(request, problem, states[0], states[i]));
  });
}

/** A point that has been solved. */
export function nodeAt(cache: FieldCache, request: NodeRequest): ChannelNode {
  const known = recall<ChannelNode>(cache.channel, keyOf(request));
  if (known) return known;
  // dropped by the limit, or asked for alone
  solveNodes(cache, [request]);
  const made = recall<ChannelNode>(cache.channel, keyOf(request));
  if (!made) throw new Error('unreachable: the point has just been stored');
  return made;
}
