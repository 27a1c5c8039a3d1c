/**
 * Solved flow and age between screw tip and orifice. Solved without units at the nearest point of a grid over what it
 * depends on: turning rate of the law and turning rate of the screw, both over mean speed per bore radius. The formulas of
 * headDrop.ts, evaluated at the same point, carry the result to the working point.
 */

import { createHead, headDrop } from '../flow/headDrop.ts';
import { headElements } from '../flow/headPieces.ts';
import { pipeFlow } from '../flow/pipe.ts';
import { solveTip, type TipField } from '../flow/tip/solveTip.ts';
import { type ViscosityLaw, viscosityAt } from '../material/viscosityLaw.ts';
import { type FlowState, flowingTemperature } from '../prediction/flowState.ts';
import type { Machine } from '../prediction/machine.ts';
import { type FieldCache, remember } from './fieldCache.ts';
import { type HeadRegion, headRegion } from './headRegion.ts';
import { lawFamily } from './lawFamily.ts';

/** Solved head of a machine. */
export interface HeadField {
  readonly region: HeadRegion;
  readonly point: HeadPoint;
  /** lengths in bore radii, times in units of `timeUnit`; includes the ring before the tip */
  readonly field: TipField;
  /** bore radius over mean speed, s */
  readonly timeUnit: number;
  /** volume unit, m³ */
  readonly volumeUnit: number;
  /** mean speed over the bore, m/s */
  readonly speedUnit: number;
  /** solved pressure drop over that of the formulas */
  readonly pressureFactor: number;
  readonly converged: boolean;
}

/**
 * Spacing of the grids, in ln. Between neighbours the pressure factor moves by about 1 % (law, sudden contraction; less
 * for cones) and by under 0.1 % (swirl).
 */
const turningStep = Math.log(1.6);
const swirlStep = Math.log(2);

/** Flow of the dimensionless problem: mean speed 1 over a bore of radius 1. */
const solvedFlow = Math.PI;

/** Relative change of the velocities that ends the iteration; it squares with each step. */
const tolerance = 1e-4;

/** Law of the melt in the head: nozzle temperature, half of the head's pressure. */
function headMeltLaw(machine: Machine, state: FlowState): ViscosityLaw {
  const { material } = machine.design;
  return material.viscosityLaw(flowingTemperature(material, machine.walls.nozzleTemperature), state.headPressure / 2);
}

/** A grid point: numbers of turning rate and swirl; null where the melt does not notice them (Newtonian, at rest). */
export interface HeadPoint {
  readonly law: number | null;
  readonly swirl: number | null;
}

/** The dimensionless problem at a grid point. */
interface HeadProblem {
  readonly key: string;
  readonly point: HeadPoint;
  /** law for rates in units of mean speed per bore radius */
  readonly turning: number;
  /** turning rate of the screw in the same unit */
  readonly swirl: number;
  readonly rate: number;
}

/** The grid point to solve at: that of the exchange before while it is still near, else the nearest. */
function gridPoint(position: number | null, before: number | null | undefined): number | null {
  if (position === null) return null;
  const near = typeof before === 'number' && Math.abs(position - before) < 0.9;
  return near ? before : Math.round(position);
}

function problemOf(machine: Machine, state: FlowState, region: HeadRegion, before?: HeadPoint): HeadProblem {
  const family = lawFamily(headMeltLaw(machine, state));
  const rate = state.volumeFlow / (Math.PI * region.unit ** 3);
  const turning = family.rate === null ? null : Math.min(1e8, Math.max(1e-6, family.rate / rate));
  const law = gridPoint(turning && Math.log(turning) / turningStep, before?.law);
  // the swirl of a Newtonian melt does not touch the rest
  const turnRate = 2 * Math.PI * state.screwSpeed;
  const turned = turning === null || !(turnRate > 0) ? null : Math.log(turnRate / rate) / swirlStep;
  const swirl = gridPoint(turned, before?.swirl);
  return {
    key: `head ${region.key} | ${family.key} ${law ?? ''} | ${swirl ?? 'still'}`,
    point: { law, swirl },
    turning: law === null ? 1 : Math.exp(law * turningStep),
    swirl: swirl === null ? 0 : Math.exp(swirl * swirlStep),
    rate,
  };
}

/** Formula drop of head and ring at the grid point, over the law's stress at the problem's rate. */
function formulaDrop(machine: Machine, state: FlowState, region: HeadRegion, problem: HeadProblem): number {
  const { unit, ring, inlet } = region;
  const core = region.region.screwRadius * unit;
  const bore = { boreStart: unit, boreEnd: unit, coreStart: core, coreEnd: core };
  const before = { kind: 'piece', name: 'ring', part: 'tip', segment: -1, z: inlet, length: ring, ...bore } as const;
  const law = lawFamily(headMeltLaw(machine, state)).turningAt(problem.turning * problem.rate);
  const head = createHead([before, ...headElements(machine.design)]);
  const screwSpeed = (problem.swirl * problem.rate) / (2 * Math.PI);
  const { total } = headDrop(head, () => law, screwSpeed, state.volumeFlow, 0);
  return total / (viscosityAt(law, problem.rate) * problem.rate);
}

/** Drop along the cylinder that was only added for the solver. */
function addedDrop({ region, added }: HeadRegion, law: ViscosityLaw): number {
  const orifice = region.outer[region.outer.length - 1].r;
  return added > 0 ? pipeFlow(law, orifice, solvedFlow).gradient * added : 0;
}

/**
 * Solved head at a state with flow, or the reason why it cannot be had.
 * @param before point solved at a neighbouring flow
 */
export function headField(
  machine: Machine,
  state: FlowState,
  cache: FieldCache,
  before?: HeadPoint,
): HeadField | { readonly why: string } {
  const region = headRegion(machine.design);
  const problem = problemOf(machine, state, region, before);
  const law = lawFamily(headMeltLaw(machine, state)).turningAt(problem.turning);
  const flow = { volumeFlow: solvedFlow, turnRate: problem.swirl };
  const solved = remember(cache.head, problem.key, () =>
    solveTip(region.region, law, flow, { tolerance, onStep: cache.onStep }),
  );
  if (!solved.ok) return { why: solved.issues.map((issue) => issue.message).join(' ') };
  const field = solved.value;
  const formula = formulaDrop(machine, state, region, problem);
  const factor = (field.pressureDrop - addedDrop(region, law)) / viscosityAt(law, 1) / formula;
  const sound = Number.isFinite(factor) && factor > 0.2 && factor < 5 && field.age.length > 0;
  if (!sound) return { why: 'The solved pressure drop is not usable.' };
  return {
    region,
    point: problem.point,
    field,
    timeUnit: 1 / problem.rate,
    volumeUnit: region.unit ** 3,
    speedUnit: problem.rate * region.unit,
    pressureFactor: factor,
    converged: field.convergence.converged && field.meshComplete,
  };
}
