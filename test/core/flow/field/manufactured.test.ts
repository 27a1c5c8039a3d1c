import { expect, test } from 'vitest';
import { assemble, type Rheology, workspace } from '../../../../core/flow/field/assembly.ts';
import { type ChannelSpace, channelSpace } from '../../../../core/flow/field/channelSpace.ts';
import { cellJets, functionJet } from '../../../../core/flow/field/jets.ts';
import { NEWTONIAN } from '../../../../core/flow/field/prepared.ts';
import { halfWidthAt, sectionShape } from '../../../../core/flow/field/sectionShape.ts';
import type { Jet } from '../../../../core/flow/field/strainRows.ts';
import { bandMatrix, factorBand, solveBand } from '../../../../core/math/bandedCholesky.ts';
import { gaussLegendre } from '../../../../core/math/gaussLegendre.ts';

/** A plane function of x (0 mid-channel) and y. */
type Plane = (x: number, y: number) => number;

const uniform = (degree: number, cell: number) => ({
  degree,
  cornerCell: cell,
  rootCell: cell,
  growth: 1e-9,
  largest: cell,
});

/** Calls back at Gauss points of every cell with the local functions' values. */
function overPoints(
  space: ChannelSpace,
  visit: (x: number, y: number, area: number, coefs: Int32Array, values: Float64Array) => void,
): void {
  const { shape, across, up, local, coefOf } = space;
  const rule = gaussLegendre(5);
  const n = across.degree + 1;
  const jet: Jet = { f: 0, fx: 0, fy: 0, fxx: 0, fxy: 0, fyy: 0 };
  const values = new Float64Array(local / 2);
  for (let c = 0; c < across.cells * up.cells; c++) {
    const [ci, cj] = [Math.floor(c / up.cells), c % up.cells];
    const [ds, dy] = [across.breaks[ci + 1] - across.breaks[ci], up.breaks[cj + 1] - up.breaks[cj]];
    for (let p = 0; p < 25; p++) {
      const [i, j] = [Math.floor(p / 5), p % 5];
      const s = across.breaks[ci] + ds * rule.nodes[i];
      const y = up.breaks[cj] + dy * rule.nodes[j];
      const jets = cellJets(shape, across, up, [ci, cj], s, y);
      for (let a = 0; a < values.length; a++) {
        functionJet(jets, across.degree, Math.floor(a / n), a % n, jet);
        values[a] = jet.f;
      }
      const half = halfWidthAt(shape, y);
      visit((s - 1) * half, y, ds * dy * rule.weights[i] * rule.weights[j] * half, coefOf.subarray(c * local), values);
    }
  }
}

/** Solves with body forces (on psi and on w, in the sense of a load vector) from rest, Newton to the end. */
function solveForced(space: ChannelSpace, rheology: Rheology, force: { psi: Plane; w: Plane }): Float64Array {
  const forces = new Float64Array(space.dofs);
  const half = space.local / 2;
  overPoints(space, (x, y, area, coefs, values) => {
    for (let field = 0; field < 2; field++) {
      const load = area * (field === 0 ? force.psi(x, y) : force.w(x, y));
      for (let a = 0; a < half; a++) {
        const dof = space.dofOf[coefs[field * half + a]];
        if (dof >= 0) forces[dof] += load * values[a];
      }
    }
  });
  const coefs = new Float64Array(2 * space.size);
  const work = workspace(space, bandMatrix(space.dofs, space.bandwidth));
  for (let pass = 0; pass < (rheology === NEWTONIAN ? 1 : 12); pass++) {
    assemble(space, rheology, coefs, 0, work, 'newton');
    const step = forces.map((value, k) => value - work.residual[k]);
    expect(factorBand(work.tangent)).toBe(true);
    solveBand(work.tangent, step);
    for (let k = 0; k < coefs.length; k++) if (space.dofOf[k] >= 0) coefs[k] += step[space.dofOf[k]];
  }
  return coefs;
}

/** Root mean square error of a field (0 psi, 1 w) over the half section. */
function errorOf(space: ChannelSpace, coefs: Float64Array, field: number, exact: Plane): number {
  let [sum, whole] = [0, 0];
  const half = space.local / 2;
  overPoints(space, (x, y, area, coefOf, values) => {
    let value = 0;
    for (let a = 0; a < half; a++) value += coefs[coefOf[field * half + a]] * values[a];
    sum += area * (value - exact(x, y)) ** 2;
    whole += area;
  });
  return Math.sqrt(sum / whole);
}

/** Order seen between cells of 1/6 and 1/12, and the finer error. */
function orderOf(errorAt: (cell: number) => number): { order: number; error: number } {
  const [coarse, fine] = [errorAt(1 / 6), errorAt(1 / 12)];
  return { order: Math.log2(coarse / fine), error: fine };
}

const straight = sectionShape({ kind: 'flat', depth: 1, width: 2, helixAngle: 0, rootFillet: 0, flankAngle: 0 });
const leaning = sectionShape({ kind: 'flat', depth: 1, width: 3, helixAngle: 0, rootFillet: 0, flankAngle: 0.4 });
const none: Plane = () => 0;

test.each([
  [2, 3],
  [3, 4],
])('-div grad w = f with w = cos(pi x / 2) sin(pi y): degree %i converges with order %i', (degree, order) => {
  const exact: Plane = (x, y) => Math.cos((Math.PI * x) / 2) * Math.sin(Math.PI * y);
  const force: Plane = (x, y) => 1.25 * Math.PI ** 2 * exact(x, y);
  const seen = orderOf((cell) => {
    const space = channelSpace(straight, uniform(degree, cell));
    return errorOf(space, solveForced(space, NEWTONIAN, { psi: none, w: force }), 1, exact);
  });
  expect(seen.order).toBeGreaterThan(order - 0.2);
  expect(seen.error).toBeLessThan(2e-4);
});

test.each([
  [2, 2],
  [3, 4],
])('biharmonic psi = (1 + cos pi x)^2 sin^2(pi y): degree %i converges with order %i', (degree, order) => {
  const k = Math.PI;
  const across = (x: number, power: number) =>
    (power === 0 ? 1.5 : 0) +
    (-1) ** (power / 2) * k ** power * (2 * Math.cos(k * x) + (2 ** power / 2) * Math.cos(2 * k * x));
  const upward = (y: number, power: number) =>
    (power === 0 ? 0.5 : 0) - (-1) ** (power / 2) * (2 * k) ** power * 0.5 * Math.cos(2 * k * y);
  const force: Plane = (x, y) =>
    across(x, 4) * upward(y, 0) + 2 * across(x, 2) * upward(y, 2) + across(x, 0) * upward(y, 4);
  const seen = orderOf((cell) => {
    const space = channelSpace(straight, uniform(degree, cell));
    const coefs = solveForced(space, NEWTONIAN, { psi: force, w: none });
    return errorOf(space, coefs, 0, (x, y) => across(x, 0) * upward(y, 0));
  });
  expect(seen.order).toBeGreaterThan(order - 0.3);
  expect(seen.error).toBeLessThan(0.15);
});

test('leaning flanks: -div grad w = f with w = (b(y)^2 - x^2) sin(pi y) converges with order 4', () => {
  const t = leaning.flankSlope;
  const b = (y: number) => halfWidthAt(leaning, y);
  const exact: Plane = (x, y) => (b(y) ** 2 - x * x) * Math.sin(Math.PI * y);
  const force: Plane = (x, y) => {
    const [sine, cosine] = [Math.sin(Math.PI * y), Math.cos(Math.PI * y)];
    const wyy = 2 * t * t * sine + 4 * t * b(y) * Math.PI * cosine - Math.PI ** 2 * exact(x, y);
    return 2 * sine - wyy;
  };
  const seen = orderOf((cell) => {
    const space = channelSpace(leaning, uniform(3, cell));
    return errorOf(space, solveForced(space, NEWTONIAN, { psi: none, w: force }), 1, exact);
  });
  expect(seen.order).toBeGreaterThan(3.7);
});

test('leaning flanks: biharmonic psi = (b(y)^2 - x^2)^2 (y - y^2)^2 converges with order 4', () => {
  const exact: Plane = (x, y) => (halfWidthAt(leaning, y) ** 2 - x * x) ** 2 * (y - y * y) ** 2;
  const seen = orderOf((cell) => {
    const space = channelSpace(leaning, uniform(3, cell));
    const coefs = solveForced(space, NEWTONIAN, { psi: (x, y) => biharmonic(exact, x, y), w: none });
    return errorOf(space, coefs, 0, exact);
  });
  expect(seen.order).toBeGreaterThan(3.6);
});

test('power law n = 0.5: -div(eta grad w) = f with w = cos(pi x / 2) sin(pi y) converges with order 4', () => {
  const g0 = 1;
  const viscosity = (rate: number) => (rate * rate + g0 * g0) ** -0.25;
  const law: Rheology = { viscosity, index: (rate) => 1 - (0.5 * rate * rate) / (rate * rate + g0 * g0), stiff: 1 };
  const exact: Plane = (x, y) => Math.cos((Math.PI * x) / 2) * Math.sin(Math.PI * y);
  const wx: Plane = (x, y) => (-Math.PI / 2) * Math.sin((Math.PI * x) / 2) * Math.sin(Math.PI * y);
  const wy: Plane = (x, y) => Math.PI * Math.cos((Math.PI * x) / 2) * Math.cos(Math.PI * y);
  const eta: Plane = (x, y) => viscosity(Math.hypot(wx(x, y), wy(x, y)));
  const h = 1e-4;
  const force: Plane = (x, y) =>
    -(eta(x + h, y) * wx(x + h, y) - eta(x - h, y) * wx(x - h, y)) / (2 * h) -
    (eta(x, y + h) * wy(x, y + h) - eta(x, y - h) * wy(x, y - h)) / (2 * h);
  const seen = orderOf((cell) => {
    const space = channelSpace(straight, uniform(3, cell));
    return errorOf(space, solveForced(space, law, { psi: none, w: force }), 1, exact);
  });
  expect(seen.order).toBeGreaterThan(3.6);
  expect(seen.error).toBeLessThan(2e-5);
});

/** Biharmonic of a polynomial up to degree 8: thirteen-point differences, exact after elimination of h^2 and h^4. */
function biharmonic(f: Plane, x: number, y: number): number {
  const [one, two, four] = [0.05, 0.1, 0.2].map((h) => thirteenPoint(f, x, y, h));
  return (16 * ((4 * one - two) / 3) - (4 * two - four) / 3) / 15;
}

function thirteenPoint(f: Plane, x: number, y: number, h: number): number {
  const at = (i: number, j: number) => f(x + i * h, y + j * h);
  const near = at(1, 0) + at(-1, 0) + at(0, 1) + at(0, -1);
  const diagonal = at(1, 1) + at(1, -1) + at(-1, 1) + at(-1, -1);
  const far = at(2, 0) + at(-2, 0) + at(0, 2) + at(0, -2);
  return (20 * at(0, 0) - 8 * near + 2 * diagonal + far) / h ** 4;
}
