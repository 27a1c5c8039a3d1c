/** The linear systems of the flow: which unknowns are free, element condensation, augmented pressure. */

import { type Dissection, dissect } from '../../math/sparseDissection.ts';
import {
  type FrontalFactor,
  type FrontalStore,
  factorFrontal,
  frontalStore,
  solveFrontal,
} from '../../math/sparseFrontal.ts';
import type { TriMesh } from '../../math/triMesh.ts';
import { elementTables, invertSmall } from './pointShapes.ts';
import {
  type BodyForce,
  type ElementContext,
  type ElementWork,
  evaluateElement,
  newElementWork,
} from './stokesElement.ts';
import type { StokesState } from './stokesState.ts';
import { EDGE } from './zipper.ts';

/** A mesh with its free velocity unknowns ordered for elimination. */
export interface StokesSystem extends ElementContext {
  readonly components: 2 | 3;
  /** Unknown of [node][component], -1 where the velocity is given */
  readonly unknownOf: Int32Array;
  readonly unknownCount: number;
  readonly dissection: Dissection;
  /** Memory of the factors; a new tangent overwrites the last */
  readonly store: FrontalStore;
}

/** Nodes of the edge opposite corner k: two ends and the middle. */
export function edgeNodes(mesh: TriMesh, t: number, k: number): [number, number, number] {
  const { nodes } = mesh;
  return [nodes[6 * t + ((k + 1) % 3)], nodes[6 * t + ((k + 2) % 3)], nodes[6 * t + 3 + k]];
}

/** Visits every boundary edge. */
export function eachBoundaryEdge(mesh: TriMesh, visit: (t: number, k: number, tag: number) => void): void {
  for (let e = 0; e < mesh.neighbours.length; e++)
    if (mesh.neighbours[e] < 0) visit(Math.floor(e / 3), e % 3, mesh.edgeTags[e]);
}

/** Components given on an edge: walls all, inlet r and z, axis r and theta, outlet r (a closed region: r and z). */
function isGiven(tag: number, component: number, closed: boolean): boolean {
  if (tag === EDGE.inner || tag === EDGE.outer) return true;
  if (tag === EDGE.inlet || (tag === EDGE.outlet && closed)) return component < 2;
  if (tag === EDGE.axis) return component !== 1;
  return component === 0;
}

/** Centre of every triangle. */
export function triangleCentres(mesh: TriMesh): { x: Float64Array; y: Float64Array } {
  const x = new Float64Array(mesh.triangleCount);
  const y = new Float64Array(mesh.triangleCount);
  for (let t = 0; t < mesh.triangleCount; t++)
    for (let k = 0; k < 3; k++) {
      x[t] += mesh.x[mesh.nodes[6 * t + k]] / 3;
      y[t] += mesh.y[mesh.nodes[6 * t + k]] / 3;
    }
  return { x, y };
}

/** Departures from the plain problem, for checks with known solutions. */
export interface SystemOptions {
  readonly bodyForce?: BodyForce;
  /** True: velocity given at the outlet too */
  readonly closed?: boolean;
}

/** Numbers and orders the free unknowns of a mesh. */
export function stokesSystem(mesh: TriMesh, components: 2 | 3, options: SystemOptions = {}): StokesSystem {
  const unknownOf = new Int32Array(mesh.x.length * components);
  eachBoundaryEdge(mesh, (t, k, tag) => {
    for (const node of edgeNodes(mesh, t, k))
      for (let c = 0; c < components; c++)
        if (isGiven(tag, c, options.closed === true)) unknownOf[node * components + c] = -1;
  });
  let unknownCount = 0;
  for (let i = 0; i < unknownOf.length; i++) if (unknownOf[i] === 0) unknownOf[i] = unknownCount++;
  const perElement = 6 * components;
  const unknowns = new Int32Array(mesh.triangleCount * perElement);
  for (let t = 0; t < mesh.triangleCount; t++)
    for (let a = 0; a < perElement; a++) {
      const node = mesh.nodes[6 * t + Math.floor(a / components)];
      unknowns[t * perElement + a] = unknownOf[node * components + (a % components)];
    }
  const { x: centreX, y: centreY } = triangleCentres(mesh);
  const dissection = dissect({
    elementCount: mesh.triangleCount,
    unknownCount,
    unknowns,
    perElement,
    centreX,
    centreY,
  });
  const force = options.bodyForce ? { bodyForce: options.bodyForce } : {};
  return {
    mesh,
    tables: elementTables(mesh),
    ...force,
    components,
    unknownOf,
    unknownCount,
    dissection,
    store: frontalStore(dissection, true),
  };
}

/** Bubbles eliminated inside each triangle: what is needed to recover them. */
interface Condensed {
  /** Kbb^-1 Kba, [triangle][component][nodal unknown] */
  readonly coupling: Float64Array;
  /** Kbb^-1, [triangle][component][component] */
  readonly inverse: Float64Array;
}

/** A factored tangent and what its bubbles need. */
export interface StokesFactor extends Condensed {
  readonly factor: FrontalFactor;
}

/** Eliminates the bubble: nodal tangent into `out`, what recovers the bubble into `kept`. */
function condense(work: ElementWork, t: number, kept: Condensed, out: Float64Array): void {
  const { nc, size, tangent } = work;
  const { inverse, coupling } = kept;
  const n = 6 * nc;
  const iAt = t * nc * nc;
  const cAt = t * nc * n;
  for (let c = 0; c < nc; c++) for (let d = 0; d < nc; d++) inverse[iAt + c * nc + d] = tangent[(n + c) * size + n + d];
  invertSmall(inverse, nc, iAt);
  for (let c = 0; c < nc; c++)
    for (let a = 0; a < n; a++) {
      let sum = 0;
      for (let d = 0; d < nc; d++) sum += inverse[iAt + c * nc + d] * tangent[(n + d) * size + a];
      coupling[cAt + c * n + a] = sum;
    }
  for (let a = 0; a < n; a++)
    for (let b = 0; b <= a; b++) {
      let value = tangent[a * size + b];
      for (let c = 0; c < nc; c++) value -= tangent[a * size + n + c] * coupling[cAt + c * n + b];
      out[a * n + b] = value;
      out[b * n + a] = value;
    }
}

/** Elements put together between two calls of `onStep`: a few milliseconds. */
const elementsPerStep = 64;

/**
 * Factors the tangent at a state.
 * @param onStep called now and then; may wait, or throw to give the run up
 */
export function factorStokes(system: StokesSystem, state: StokesState, onStep?: () => void): StokesFactor {
  const { mesh, components: nc } = system;
  const work = newElementWork(nc);
  const kept = {
    coupling: new Float64Array(mesh.triangleCount * 6 * nc * nc),
    inverse: new Float64Array(mesh.triangleCount * nc * nc),
  };
  let count = 0;
  const matrix = (t: number, out: Float64Array): void => {
    if (++count % elementsPerStep === 0) onStep?.();
    evaluateElement(system, t, state, work, true);
    condense(work, t, kept, out);
  };
  return { factor: factorFrontal(system.dissection, matrix, system.store), ...kept };
}

/** Whole residual: free nodal entries in `nodal` (by unknown), bubble entries in `bubble`. */
export interface Residual {
  readonly nodal: Float64Array;
  readonly bubble: Float64Array;
  /** Sum of the unbalanced flow of all triangles, m3/s per radian */
  imbalance: number;
}

/** Residual of a state, augmented pressure included. */
export function stokesResidual(system: StokesSystem, state: StokesState): Residual {
  const { mesh, components: nc, dissection } = system;
  const work = newElementWork(nc);
  const nodal = new Float64Array(system.unknownCount);
  const bubble = new Float64Array(mesh.triangleCount * nc);
  let imbalance = 0;
  for (let t = 0; t < mesh.triangleCount; t++) {
    evaluateElement(system, t, state, work, false);
    for (let a = 0; a < 6 * nc; a++) {
      const u = dissection.graph.unknowns[t * 6 * nc + a];
      if (u >= 0) nodal[u] += work.force[a];
    }
    for (let c = 0; c < nc; c++) bubble[t * nc + c] = work.force[6 * nc + c];
    imbalance += Math.abs(work.spread[0] + work.spread[1] + work.spread[2]);
  }
  return { nodal, bubble, imbalance };
}

/** A velocity increment for every free unknown and bubble. */
export interface Increment {
  readonly nodal: Float64Array;
  readonly bubble: Float64Array;
}

/** Solves tangent * increment = -residual. */
export function solveIncrement(system: StokesSystem, factored: StokesFactor, residual: Residual): Increment {
  const { mesh, components: nc, dissection } = system;
  const n = 6 * nc;
  const { unknowns } = dissection.graph;
  const nodal = residual.nodal.map((v) => -v);
  for (let t = 0; t < mesh.triangleCount; t++)
    for (let a = 0; a < n; a++) {
      const u = unknowns[t * n + a];
      if (u < 0) continue;
      for (let c = 0; c < nc; c++) nodal[u] += factored.coupling[(t * nc + c) * n + a] * residual.bubble[t * nc + c];
    }
  solveFrontal(factored.factor, nodal);
  const bubble = new Float64Array(residual.bubble.length);
  for (let t = 0; t < mesh.triangleCount; t++)
    for (let c = 0; c < nc; c++) {
      let value = 0;
      for (let d = 0; d < nc; d++) value -= factored.inverse[(t * nc + c) * nc + d] * residual.bubble[t * nc + d];
      for (let a = 0; a < n; a++) {
        const u = unknowns[t * n + a];
        if (u >= 0) value -= factored.coupling[(t * nc + c) * n + a] * nodal[u];
      }
      bubble[t * nc + c] = value;
    }
  return { nodal, bubble };
}
