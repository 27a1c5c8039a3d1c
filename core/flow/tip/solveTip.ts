/** Flow, age and dead volume of the melt between screw tip and orifice. */

import { type ViscosityLaw, viscosityAt } from '../../material/viscosityLaw.ts';
import type { TriMesh } from '../../math/triMesh.ts';
import { fail, type Issue, ok, type Result } from '../../result.ts';
import { ageField } from './ageField.ts';
import {
  type AgeStatistics,
  ageStatistics,
  meshVolume,
  outletResidence,
  type ResidenceSample,
} from './ageStatistics.ts';
import { type DeadSpot, deadSpots } from './deadSpots.ts';
import { type Eddy, findEddies } from './eddies.ts';
import { regionFeatures } from './features.ts';
import { inletPressure, tipTorque } from './forces.ts';
import { applyInlet, type InletProfile } from './inlet.ts';
import { outlineOf } from './outline.ts';
import type { TipRegion } from './region.ts';
import { regionIssues } from './regionIssues.ts';
import { type Convergence, solveStokes } from './stokesSolve.ts';
import { restState, type StokesState } from './stokesState.ts';
import { type StokesSystem, stokesSystem } from './stokesSystem.ts';
import { streamFunction } from './streamFunction.ts';
import { NORMAL_FINENESS, scaledFineness, tipMesh } from './tipMesh.ts';

/** What flows. */
export interface TipFlow {
  /** m3/s, > 0 */
  readonly volumeFlow: number;
  /** Turning rate of the screw, rad/s; absent or 0 = at rest */
  readonly turnRate?: number;
  readonly inlet?: InletProfile;
}

/** How to solve. */
export interface TipOptions {
  /** All edges times this factor; 1 = the fineness the stated accuracies were checked at */
  readonly fineness?: number;
  /** U R / kappa with U = Q / (pi R^2): how little the age diffuses; 1e5 by default */
  readonly peclet?: number;
  /** False leaves out age, statistics and dead spots */
  readonly withAge?: boolean;
  /** Relative change of velocity at which the iteration stops, 1e-6 by default */
  readonly tolerance?: number;
  /** Tangents factored at most, 40 by default */
  readonly maxIterations?: number;
  /** Called between the steps of the solution; may wait, or throw to give the run up */
  readonly onStep?: () => void;
}

/** Nodal fields for plots, and what follows from them. Nodes are corners and edge middles of the mesh. */
export interface TipField {
  /** m, downstream from the inlet plane */
  readonly z: Float64Array;
  /** m */
  readonly r: Float64Array;
  /** Three nodes per plotted triangle (each mesh triangle gives four) */
  readonly triangles: Int32Array;
  /** Axial, radial and circumferential velocity, m/s (the last empty for a screw at rest) */
  readonly axial: Float64Array;
  readonly radial: Float64Array;
  readonly swirl: Float64Array;
  /** Speed in the meridional plane, m/s */
  readonly speed: Float64Array;
  /** Stream function, m3/s per radian; 0 on the outer wall */
  readonly psi: Float64Array;
  /** s; empty without age */
  readonly age: Float64Array;
  /** Area-mean inlet pressure over the orifice's, Pa */
  readonly pressureDrop: number;
  /** Torque on tip and root over this length, N m; 0 for a screw at rest */
  readonly torque: number;
  /** m3 */
  readonly volume: number;
  readonly eddies: readonly Eddy[];
  readonly statistics?: AgeStatistics;
  readonly residence?: readonly ResidenceSample[];
  readonly spots?: readonly DeadSpot[];
  readonly convergence: Convergence;
  /** False if the mesh reached its point limit before its wanted fineness */
  readonly meshComplete: boolean;
}

/** Discrete solution behind a field, for checks that need more than plots. */
export interface TipSolution {
  readonly system: StokesSystem;
  readonly mesh: TriMesh;
  readonly state: StokesState;
  readonly field: TipField;
}

function flowIssues(flow: TipFlow): Issue[] {
  if (Number.isFinite(flow.volumeFlow) && flow.volumeFlow > 0) return [];
  const value = `${flow.volumeFlow} m3/s`;
  return [
    {
      path: ['volumeFlow'],
      code: 'no-flow',
      message: 'There is no flow to follow.',
      value,
      allowed: 'more than 0 m3/s',
      remedy: 'Give the flow through the nozzle.',
    },
  ];
}

/** Corner triples for plotting: each quadratic triangle as four flat ones. */
function plotTriangles(mesh: TriMesh): Int32Array {
  const parts = [0, 5, 4, 5, 1, 3, 4, 3, 2, 3, 4, 5];
  const out = new Int32Array(12 * mesh.triangleCount);
  for (let t = 0; t < mesh.triangleCount; t++)
    parts.forEach((k, i) => {
      out[12 * t + i] = mesh.nodes[6 * t + k];
    });
  return out;
}

function component(state: StokesState, c: number): Float64Array {
  if (c >= state.components) return new Float64Array(0);
  return Float64Array.from(
    { length: state.velocity.length / state.components },
    (_, i) => state.velocity[i * state.components + c],
  );
}

function solveFlow(
  mesh: TriMesh,
  region: TipRegion,
  law: ViscosityLaw,
  flow: TipFlow,
  options: TipOptions,
): { state: StokesState; system: StokesSystem; convergence: Convergence } {
  const components = flow.turnRate ? 3 : 2;
  const system = stokesSystem(mesh, components);
  const state = restState(mesh, components);
  applyInlet(mesh, state, flow);
  const bore = region.outer[0].r;
  const speed = flow.volumeFlow / (Math.PI * bore * bore);
  const { tolerance = 1e-6, maxIterations = 40, onStep } = options;
  const rate = speed / bore + Math.abs(flow.turnRate ?? 0);
  const rule = { tolerance, maxIterations, onStep, speed, rate, flux: flow.volumeFlow / (2 * Math.PI) };
  const start: ViscosityLaw = { model: 'newtonian', viscosity: viscosityAt(law, rate) };
  const first = solveStokes(system, state, start, rule);
  const convergence = law.model === 'newtonian' ? first : solveStokes(system, state, law, rule);
  return { state, system, convergence };
}

type AgePart = Pick<TipField, 'age' | 'statistics' | 'residence' | 'spots'>;

function solveAge(
  mesh: TriMesh,
  state: StokesState,
  region: TipRegion,
  flow: TipFlow,
  peclet: number,
): AgePart & { sound: boolean } {
  const diffusivity = flow.volumeFlow / (Math.PI * region.outer[0].r * peclet);
  const { age, sound } = ageField(mesh, state, diffusivity);
  const statistics = ageStatistics(mesh, state, age, flow.volumeFlow);
  const spots = deadSpots(mesh, age, statistics.meanTime, regionFeatures(region));
  const residence = outletResidence(mesh, state, age);
  // steep fronts undershoot: what is shown is not, what is balanced is left alone
  return { age: age.map((value) => Math.max(0, value)), statistics, residence, spots, sound };
}

/**
 * Solves a region and keeps the discrete solution.
 * @param region validated here; refused with issues where tip, wall and orifice leave no room
 * @param law isothermal viscosity
 */
export function solveTipFully(
  region: TipRegion,
  law: ViscosityLaw,
  flow: TipFlow,
  options: TipOptions = {},
): Result<TipSolution> {
  const issues = [...flowIssues(flow), ...regionIssues(region)];
  if (issues.length > 0) return fail(...issues);
  const outline = outlineOf(region);
  const { mesh, complete } = tipMesh(outline, scaledFineness(NORMAL_FINENESS, options.fineness ?? 1));
  options.onStep?.();
  const { state, system, convergence } = solveFlow(mesh, region, law, flow, options);
  options.onStep?.();
  const psi = streamFunction(mesh, state);
  options.onStep?.();
  const flux = flow.volumeFlow / (2 * Math.PI);
  const { sound, ...aged } =
    options.withAge === false
      ? { sound: true, age: new Float64Array(0) }
      : solveAge(mesh, state, region, flow, options.peclet ?? 1e5);
  const [radial, axial, swirl] = [0, 1, 2].map((c) => component(state, c));
  const field: TipField = {
    ...{ z: mesh.x, r: mesh.y, triangles: plotTriangles(mesh), axial, radial, swirl, psi, ...aged },
    speed: axial.map((value, i) => Math.hypot(value, radial[i])),
    pressureDrop: inletPressure(mesh, state),
    torque: tipTorque(system, state),
    volume: meshVolume(mesh),
    eddies: findEddies(system, state, psi, flux, regionFeatures(region)),
    convergence: { ...convergence, converged: convergence.converged && sound },
    meshComplete: complete,
  };
  return ok({ system, mesh, state, field });
}

/**
 * Age statistics of an already solved flow at another Peclet number: the flow does not depend on it.
 * @param flow the one that was solved, m3/s
 * @param peclet U R / kappa with U = Q / (pi R^2), > 0
 * @returns ages in s
 */
export function ageStatisticsAt(
  { mesh, state }: Pick<TipSolution, 'mesh' | 'state'>,
  region: TipRegion,
  flow: TipFlow,
  peclet: number,
): AgeStatistics {
  const diffusivity = flow.volumeFlow / (Math.PI * region.outer[0].r * peclet);
  return ageStatistics(mesh, state, ageField(mesh, state, diffusivity).age, flow.volumeFlow);
}

/**
 * Solves creeping flow, swirl and age between screw tip and orifice.
 * Valid for inertialess isothermal flow without wall slip; n from 0.2 (design range of the laws).
 * @param region tip and r-z profile, m
 * @param law isothermal viscosity
 * @param flow volume flow m3/s, turning rate rad/s
 * @returns fields and figures, or issues naming place and limit; a run that did not converge says so in `convergence`
 */
export function solveTip(
  region: TipRegion,
  law: ViscosityLaw,
  flow: TipFlow,
  options: TipOptions = {},
): Result<TipField> {
  const solved = solveTipFully(region, law, flow, options);
  return solved.ok ? ok(solved.value.field) : solved;
}
