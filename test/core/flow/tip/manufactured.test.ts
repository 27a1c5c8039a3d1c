/** Orders of convergence against solutions made up beforehand, axis included. */

import { describe, expect, it } from 'vitest';
import { ageField } from '../../../../core/flow/tip/ageField.ts';
import { newPointShapes, pointShapes } from '../../../../core/flow/tip/pointShapes.ts';
import { solveStokes } from '../../../../core/flow/tip/stokesSolve.ts';
import { gatherVelocity, restState, type StokesState } from '../../../../core/flow/tip/stokesState.ts';
import { eachBoundaryEdge, edgeNodes, stokesSystem } from '../../../../core/flow/tip/stokesSystem.ts';
import { EDGE, zipOutline } from '../../../../core/flow/tip/zipper.ts';
import { type ViscosityLaw, viscosityAt } from '../../../../core/material/viscosityLaw.ts';
import { type TriMesh, withEdgeNodes } from '../../../../core/math/triMesh.ts';
import { POINT_BARYCENTRIC, POINT_COUNT } from '../../../../core/math/triQuadrature.ts';
import { refineTriangles } from '../../../../core/math/triRefine.ts';

type Field = (z: number, r: number) => number;

const outline = { inner: { z: [0], r: [0] }, outer: { z: [0, 1], r: [1, 1] }, length: 1 };
const meshOf = (h: number): TriMesh => withEdgeNodes(refineTriangles(zipOutline(outline), () => h, 50_000).mesh);

// psi = r^2 g h / 2 with g = 1 + r^2, h = 2 + sin(2 z)
const uz: Field = (z, r) => (1 + 2 * r * r) * (2 + Math.sin(2 * z));
const ur: Field = (z, r) => -0.5 * r * (1 + r * r) * 2 * Math.cos(2 * z);
const p: Field = (z, r) => Math.cos(2 * z) * (1 + r * r);

const STEP = 1e-3;
const slope = (f: (x: number) => number, x: number): number =>
  (8 * (f(x + STEP) - f(x - STEP)) - f(x + 2 * STEP) + f(x - 2 * STEP)) / (12 * STEP);
const dz =
  (f: Field): Field =>
  (z, r) =>
    slope((x) => f(x, r), z);
const dr =
  (f: Field): Field =>
  (z, r) =>
    slope((x) => f(z, x), r);

function bodyForce(law: ViscosityLaw): (z: number, r: number, out: Float64Array) => void {
  const [drr, dzz] = [dr(ur), dz(uz)];
  const drz: Field = (z, r) => (dz(ur)(z, r) + dr(uz)(z, r)) / 2;
  const dtt: Field = (z, r) => ur(z, r) / r;
  const eta: Field = (z, r) =>
    viscosityAt(law, Math.sqrt(2 * (drr(z, r) ** 2 + dzz(z, r) ** 2 + dtt(z, r) ** 2) + 4 * drz(z, r) ** 2));
  const stress =
    (d: Field): Field =>
    (z, r) =>
      2 * eta(z, r) * d(z, r);
  const [srr, szz, srz, stt] = [drr, dzz, drz, dtt].map(stress);
  const known = new Map<string, readonly [number, number]>(); // the same points are asked again in every step
  const at: (z: number, r: number) => readonly [number, number] = (z, r) => [
    -dr(srr)(z, r) - (srr(z, r) - stt(z, r)) / r - dz(srz)(z, r) + dr(p)(z, r),
    -dr(srz)(z, r) - srz(z, r) / r - dz(szz)(z, r) + dz(p)(z, r),
  ];
  return (z, r, out) => {
    const key = `${z} ${r}`;
    const force = known.get(key) ?? at(z, r);
    known.set(key, force);
    out.set(force);
  };
}

function givenState(mesh: TriMesh): StokesState {
  const state = restState(mesh, 2);
  eachBoundaryEdge(mesh, (t, k, tag) => {
    if (tag === EDGE.axis) return;
    for (const node of edgeNodes(mesh, t, k)) {
      state.velocity[2 * node] = ur(mesh.x[node], mesh.y[node]);
      state.velocity[2 * node + 1] = uz(mesh.x[node], mesh.y[node]);
    }
  });
  return state;
}

/** Root of the integral over r dr dz of squared errors of velocity and of pressure without its mean. */
function flowErrors(mesh: TriMesh, state: StokesState): [number, number] {
  const point = newPointShapes();
  const local = new Float64Array(14);
  let velocity2 = 0;
  const pressure: [number, number][] = [];
  for (let t = 0; t < mesh.triangleCount; t++) {
    gatherVelocity(mesh, t, state, local);
    for (let q = 0; q < POINT_COUNT; q++) {
      pointShapes(mesh, t, q, point);
      let [r, z, ph] = [0, 0, 0];
      for (let a = 0; a < 7; a++) {
        r += point.value[a] * local[2 * a];
        z += point.value[a] * local[2 * a + 1];
      }
      for (let k = 0; k < 3; k++) ph += POINT_BARYCENTRIC[3 * q + k] * state.pressure[3 * t + k];
      velocity2 += point.weight * ((r - ur(point.z, point.r)) ** 2 + (z - uz(point.z, point.r)) ** 2);
      pressure.push([point.weight, ph - p(point.z, point.r)]);
    }
  }
  const volume = pressure.reduce((sum, [w]) => sum + w, 0);
  const mean = pressure.reduce((sum, [w, e]) => sum + w * e, 0) / volume;
  return [Math.sqrt(velocity2), Math.sqrt(pressure.reduce((sum, [w, e]) => sum + w * (e - mean) ** 2, 0))];
}

function flowAt(h: number, law: ViscosityLaw): { errors: [number, number]; count: number } {
  const mesh = meshOf(h);
  const system = stokesSystem(mesh, 2, { bodyForce: bodyForce(law), closed: true });
  const state = givenState(mesh);
  const rule = { tolerance: 1e-9, maxIterations: 30, speed: 2, rate: 4, flux: 1.5 };
  expect(solveStokes(system, state, law, rule).converged).toBe(true);
  return { errors: flowErrors(mesh, state), count: mesh.triangleCount };
}

describe('flow against a made-up solution', () => {
  const laws: [string, ViscosityLaw][] = [
    ['newtonian', { model: 'newtonian', viscosity: 1 }],
    [
      'carreauYasuda',
      {
        ...{ model: 'carreauYasuda', zeroShearViscosity: 1, infiniteShearViscosity: 0, timeConstant: 0.5 },
        ...{ transition: 2, index: 0.4 },
      },
    ],
  ];
  it.each(laws)('velocity converges at third, pressure at second order: %s', (_name, law) => {
    const coarse = flowAt(0.25, law);
    const fine = flowAt(0.1, law);
    const shrink = Math.log(Math.sqrt(fine.count / coarse.count));
    expect(Math.log(coarse.errors[0] / fine.errors[0]) / shrink).toBeGreaterThan(2.7);
    expect(Math.log(coarse.errors[1] / fine.errors[1]) / shrink).toBeGreaterThan(1.7);
    expect(fine.errors[0]).toBeLessThan(4e-4);
  });
});

describe('age against a made-up solution', () => {
  const kappa = 1e-6;
  const exact: Field = (z, r) => Math.sin((Math.PI * z) / 2) * (1 + r * r * (1 - (r * r) / 2));
  const source: Field = (z, r) => {
    const g = 1 + r * r * (1 - (r * r) / 2);
    const laplace = 4 - 8 * r * r - (Math.PI / 2) ** 2 * g;
    return (Math.PI / 2) * Math.cos((Math.PI * z) / 2) * g - kappa * Math.sin((Math.PI * z) / 2) * laplace;
  };
  const errorAt = (h: number): [number, number] => {
    const mesh = meshOf(h);
    const state = restState(mesh, 2);
    for (let i = 0; i < mesh.x.length; i++) state.velocity[2 * i + 1] = 1;
    const { age, sound } = ageField(mesh, state, kappa, source);
    expect(sound).toBe(true);
    const square = age.reduce((sum, a, i) => sum + (a - exact(mesh.x[i], mesh.y[i])) ** 2, 0);
    return [Math.sqrt(square / age.length), mesh.triangleCount];
  };
  it('converges at better than second order', () => {
    const [coarse, few] = errorAt(0.2);
    const [fine, many] = errorAt(0.05);
    expect(Math.log(coarse / fine) / Math.log(Math.sqrt(many / few))).toBeGreaterThan(2.4);
    expect(fine).toBeLessThan(1e-4);
  });
});
