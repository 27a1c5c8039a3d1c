/** Values of a solved channel on a grid that follows its walls, in SI, for plots and streamlines. */

import { viscosityAt } from '../../material/viscosityLaw.ts';
import { cellOf, type SplineBasis } from '../../math/splineBasis.ts';
import type { ChannelState } from './channelSolver.ts';
import { cellJets, functionJet } from './jets.ts';
import { halfWidthAt, wallAt } from './sectionShape.ts';
import { flatRows, helicalRows, type Jet, ROWS } from './strainRows.ts';

/** Node (i, j), i across, j up, at index i * rows + j. */
export interface ChannelGrid {
  readonly columns: number;
  readonly rows: number;
  /** m from mid-channel (negative towards the flank): across the channel (flat) or along the axis (helical) */
  readonly x: Float64Array;
  /** m above the root */
  readonly y: Float64Array;
  /** Stream function of the cross flow: m2/s (flat), m3/s per radian (helical); 0 on all walls */
  readonly stream: Float64Array;
  /** m/s: down-channel (flat) or circumferential (helical); its section integral is the flow rate of one channel */
  readonly along: Float64Array;
  /** m/s: across the channel (flat) or along the axis (helical) */
  readonly across: Float64Array;
  /** m/s, towards the barrel */
  readonly rise: Float64Array;
  /** Size of the velocity, m/s, seen from the screw */
  readonly speed: Float64Array;
  /** 1/s */
  readonly rate: Float64Array;
  /** Pa s */
  readonly viscosity: Float64Array;
  /** Volume per area of section and per m of channel (flat: 1) or per radian (helical: radius, m) */
  readonly density: Float64Array;
}

/** Dimensionless values at one place of half a section. */
export interface PointValues {
  readonly psi: Jet;
  readonly w: Jet;
  /** The deformation rows of both fields together; their length is the shear rate. */
  readonly strain: Float64Array;
}

/** Evaluates a state at mapped place s (0 flank, 1 centre) and height y in depths. */
export function valuesAt(state: ChannelState, s: number, y: number): PointValues {
  const { space } = state.prepared;
  const { shape, across, up, size } = space;
  const [ci, cj] = [cellOf(across, s), cellOf(up, y)];
  const jets = cellJets(shape, across, up, [ci, cj], s, y);
  const psi: Jet = { f: 0, fx: 0, fy: 0, fxx: 0, fxy: 0, fyy: 0 };
  const w: Jet = { f: 0, fx: 0, fy: 0, fxx: 0, fxy: 0, fyy: 0 };
  const one: Jet = { f: 0, fx: 0, fy: 0, fxx: 0, fxy: 0, fyy: 0 };
  for (let i = 0; i <= across.degree; i++) {
    for (let j = 0; j <= across.degree; j++) {
      const k = (ci + i) * up.count + cj + j;
      functionJet(jets, across.degree, i, j, one);
      addJet(psi, one, state.coefs[k]);
      addJet(w, one, state.coefs[size + k]);
    }
  }
  return { psi, w, strain: strainOf(psi, w, shape.twist, shape.rootRadius + y) };
}

function addJet(sum: Jet, one: Jet, by: number): void {
  sum.f += by * one.f;
  sum.fx += by * one.fx;
  sum.fy += by * one.fy;
  sum.fxx += by * one.fxx;
  sum.fxy += by * one.fxy;
  sum.fyy += by * one.fyy;
}

function strainOf(psi: Jet, w: Jet, twist: number, r: number): Float64Array {
  const [ofPsi, ofW] = [new Float64Array(2 * ROWS), new Float64Array(2 * ROWS)];
  if (twist > 0) {
    helicalRows(psi, r, twist, ofPsi);
    helicalRows(w, r, twist, ofW);
  } else {
    flatRows(psi, ofPsi);
    flatRows(w, ofW);
  }
  return ofPsi.slice(0, ROWS).map((value, m) => value + ofW[ROWS + m]);
}

/** Every cell divided into equal parts. */
function divided(basis: SplineBasis, parts: number): Float64Array {
  const out = new Float64Array(basis.cells * parts + 1);
  for (let k = 0; k < out.length; k++) {
    const cell = Math.min(basis.cells - 1, Math.floor(k / parts));
    const part = k / parts - cell;
    out[k] = basis.breaks[cell] + part * (basis.breaks[cell + 1] - basis.breaks[cell]);
  }
  return out;
}

function emptyGrid(columns: number, rows: number): ChannelGrid {
  const one = () => new Float64Array(columns * rows);
  const [x, y, stream, along, across] = [one(), one(), one(), one(), one()];
  const [rise, speed, rate, viscosity, density] = [one(), one(), one(), one(), one()];
  return { columns, rows, x, y, stream, along, across, rise, speed, rate, viscosity, density };
}

/**
 * Grid of half a section, flank (first column) to mid-channel (last).
 * @param parts nodes per spline cell and direction, >= 1
 */
export function halfGrid(state: ChannelState, parts: number): ChannelGrid {
  const { space } = state.prepared;
  const places = divided(space.across, parts);
  const heights = divided(space.up, parts);
  const grid = emptyGrid(places.length, heights.length);
  for (let j = 0; j < heights.length; j++) {
    const wall = wallAt(space.shape, heights[j]);
    for (let i = 0; i < places.length; i++) {
      const s = wall + (1 - wall) * places[i];
      writeNode(state, grid, i * heights.length + j, s, heights[j]);
    }
  }
  return grid;
}

function writeNode(state: ChannelState, grid: ChannelGrid, k: number, s: number, y: number): void {
  const { scales, law } = state;
  const { shape } = state.prepared.space;
  const { psi, w, strain } = valuesAt(state, s, y);
  const helical = shape.twist > 0;
  const r = helical ? shape.rootRadius + y : 1;
  const rate = (Math.hypot(...strain) * scales.speed) / scales.length;
  const across = psi.fy / r + (helical ? w.f / (shape.twist * r) : 0);
  const rise = -psi.fx / r;
  grid.x[k] = (s - 1) * halfWidthAt(shape, y) * scales.length;
  grid.y[k] = y * scales.length;
  grid.stream[k] = psi.f * scales.speed * scales.length * (helical ? scales.length : 1);
  grid.along[k] = w.f * scales.speed;
  grid.across[k] = across * scales.speed;
  grid.rise[k] = rise * scales.speed;
  grid.speed[k] = Math.hypot(w.f, across, rise) * scales.speed;
  grid.rate[k] = rate;
  grid.viscosity[k] = viscosityAt(law, rate);
  grid.density[k] = helical ? r * scales.length : 1;
}
