/** One implicit stage of warming up: wall, core, rings of content and heaters' bodies, with phase change and thermostats. */

import { addToBand, factorSquareBand, squareBand } from '../math/bandedLu.ts';
import { warmthOf } from './enthalpy.ts';
import type { HeatCells } from './heatCells.ts';
import { type Duty, dutyOf, solveWithBodies, underHeater } from './heaterBodies.ts';
import { type Masses, rings } from './masses.ts';
import { addSolid } from './solidMatrix.ts';

/** Temperatures K of wall, core and heaters' bodies; specific enthalpy of each ring of content, J/kg. */
export interface WarmState {
  readonly wall: Float64Array;
  readonly core: Float64Array;
  readonly content: Float64Array;
  readonly bodies: Float64Array;
}

/** A stage solved. */
export interface WarmStage {
  readonly state: WarmState;
  readonly duties: readonly Duty[];
  /** W of each heater */
  readonly power: Float64Array;
  readonly converged: boolean;
}

/** Unknowns of a cell: wall, core, enthalpy of the rings from the core outward. */
const perCell = 2 + rings;

/** Most iterations of phases and duties, and what ends them, K. */
const mostPasses = 14;
const tolerance = 1e-3;

/**
 * Implicit Euler step.
 * @param tau length of the step, s
 * @param base state it starts from
 * @param guess where melting and thermostats are thought to stand at its end
 * Enthalpy is what the content stores, so energy is conserved exactly whatever the iteration does.
 */
export function warmStage(
  cells: HeatCells,
  masses: Masses,
  tau: number,
  base: WarmState,
  guess: { readonly state: WarmState; readonly duties: readonly Duty[] },
): WarmStage {
  let { duties } = guess;
  let content = guess.state.content;
  const stored = { perKelvin: masses.bodies.map((capacity) => capacity / tau), before: base.bodies };
  for (let pass = 1; ; pass++) {
    const { matrix, right } = assemble(cells, masses, tau, base, content);
    factorSquareBand(matrix);
    const bodies = solveWithBodies(matrix, right, cells, duties, perCell, stored);
    const state = unpacked(cells, right, bodies);
    const power = Float64Array.from(cells.heaters, (heater, k) => {
      if (duties[k] !== 'held') return duties[k] === 'weak' ? heater.maxPower : 0;
      const handed = heater.whole * (bodies[k] - underHeater(heater, state.wall));
      return handed + stored.perKelvin[k] * (bodies[k] - base.bodies[k]);
    });
    const wanted = cells.heaters.map((heater, k) =>
      dutyOf(heater, duties[k], power[k], underHeater(heater, state.wall), true),
    );
    const settled = wanted.every((duty, k) => duty === duties[k]) && missed(masses, content, state.content) < tolerance;
    if (settled || pass === mostPasses) return { state, duties, power, converged: settled };
    duties = wanted;
    content = state.content;
  }
}

/** Farthest that the linear temperatures of the content lie from those of its enthalpy, K. */
function missed({ material }: Masses, from: Float64Array, to: Float64Array): number {
  let most = 0;
  for (let k = 0; k < to.length; k++) {
    if (from[k] < 0 === to[k] < 0 && from[k] < material.heatOfFusion === to[k] < material.heatOfFusion) continue;
    const { start, slope } = lineAt(material, from[k], k);
    most = Math.max(most, Math.abs(start + slope * to[k] - warmthOf(material, to[k]).temperature));
  }
  return most;
}

/** Temperature over enthalpy as a line: K at no enthalpy, and K per J/kg. */
function lineAt(material: Masses['material'], enthalpy: number, at: number): End {
  const molten = enthalpy >= material.heatOfFusion;
  if (enthalpy >= 0 && !molten) return { at, start: material.melting, slope: 0 };
  const slope = 1 / (molten ? material.heatCapacityMelt : material.heatCapacitySolid);
  return { at, start: material.melting - (molten ? slope * material.heatOfFusion : 0), slope };
}

function assemble(cells: HeatCells, masses: Masses, tau: number, base: WarmState, content: Float64Array) {
  const size = cells.count * perCell;
  const matrix = squareBand(size, perCell);
  const right = new Float64Array(size);
  addSolid(matrix, right, cells, new Float64Array(cells.count), perCell);
  const store = (at: number, capacity: number, before: number) => {
    addToBand(matrix, at, at, capacity / tau);
    right[at] += (capacity / tau) * before;
  };
  for (let i = 0; i < cells.count; i++) {
    const at = i * perCell;
    store(at, masses.wall[i], base.wall[i]);
    store(at + 1, masses.core[i], base.core[i]);
    for (let j = 0; j < rings; j++) {
      const ring = i * rings + j;
      if (i < cells.barrel) store(at + 2 + j, masses.content[ring], base.content[ring]);
      else addToBand(matrix, at + 2 + j, at + 2 + j, 1);
    }
    if (i >= cells.barrel) continue;
    const whole = cells.across[i] * rings;
    let inner: End = { at: at + 1, start: 0, slope: 1 };
    for (let j = 0; j < rings; j++) {
      const ring = lineAt(masses.material, content[i * rings + j], at + 2 + j);
      bridge(matrix, right, inner, ring, j === 0 ? 2 * whole : whole);
      inner = ring;
    }
    bridge(matrix, right, inner, { at, start: 0, slope: 1 }, 2 * whole);
  }
  return { matrix, right };
}

/** An unknown whose temperature is start + slope times it. */
interface End {
  readonly at: number;
  readonly start: number;
  readonly slope: number;
}

/** A conductance between two unknowns, W/K. */
function bridge(matrix: ReturnType<typeof squareBand>, right: Float64Array, a: End, b: End, conductance: number): void {
  const apart = conductance * (a.start - b.start);
  addToBand(matrix, a.at, a.at, conductance * a.slope);
  addToBand(matrix, a.at, b.at, -conductance * b.slope);
  addToBand(matrix, b.at, b.at, conductance * b.slope);
  addToBand(matrix, b.at, a.at, -conductance * a.slope);
  right[a.at] -= apart;
  right[b.at] += apart;
}

function unpacked(cells: HeatCells, x: Float64Array, bodies: Float64Array): WarmState {
  const content = new Float64Array(cells.barrel * rings);
  for (let i = 0; i < cells.barrel; i++) {
    for (let j = 0; j < rings; j++) content[i * rings + j] = x[i * perCell + 2 + j];
  }
  const every = (offset: number) => Float64Array.from({ length: cells.count }, (_, i) => x[i * perCell + offset]);
  return { wall: every(0), core: every(1), content, bodies };
}
