import { describe, expect, it } from 'vitest';
import { meshArea } from '../../../core/checks/meshArea.ts';
import { creaseNormals } from '../../../core/geometry/creaseNormals.ts';
import { addFan, addRing, addStrip, createBuilder, finishMesh } from '../../../core/geometry/meshBuilder.ts';
import { areaVector } from '../../../core/geometry/meshMeasure.ts';
import { addJunction } from '../../../core/geometry/overlay.ts';
import { circleRing, evenAngles, type Ring } from '../../../core/geometry/ring.ts';
import type { SolidMesh } from '../../../core/geometry/types.ts';
import { eulerNumber, meshIsClosed, meshVolume } from '../../helpers/meshFacts.ts';
import { judge } from './manifold.ts';

/** The unit cube, two triangles a side. */
const cube: SolidMesh = {
  positions: Float32Array.from({ length: 24 }, (_, i) => (Math.floor(i / 3) >> (i % 3)) & 1),
  indices: Uint32Array.of(
    ...[0, 2, 3, 0, 3, 1, 4, 5, 7, 4, 7, 6, 0, 1, 5, 0, 5, 4, 2, 6, 7, 2, 7, 3, 0, 4, 6, 0, 6, 2, 1, 3, 7, 1, 7, 5],
  ),
};

describe('measures of a mesh', () => {
  it('knows the unit cube', () => {
    expect(meshVolume(cube)).toBeCloseTo(1, 12);
    expect(meshArea(cube)).toBeCloseTo(6, 12);
    expect(meshIsClosed(cube)).toBe(true);
    expect(eulerNumber(cube)).toBe(2);
  });

  it('refuses a hole, a flipped triangle and a doubled triangle', () => {
    expect(meshIsClosed({ ...cube, indices: cube.indices.slice(3) })).toBe(false);
    const flipped = cube.indices.slice();
    [flipped[0], flipped[1]] = [flipped[1] as number, flipped[0] as number];
    expect(meshIsClosed({ ...cube, indices: flipped })).toBe(false);
    expect(meshIsClosed({ ...cube, indices: Uint32Array.of(...cube.indices, 0, 2, 3) })).toBe(false);
  });
});

describe('crease normals', () => {
  it('keeps the cube sharp below a right angle', () => {
    const { normals } = creaseNormals(cube, 1);
    for (let corner = 0; corner < 36; corner++) {
      const parts = Array.from(normals.subarray(3 * corner, 3 * corner + 3), Math.abs).sort();
      expect(parts).toEqual([0, 0, 1]);
    }
  });

  it('rounds the cube above a right angle, the same for all corners of a vertex', () => {
    const { normals, positions } = creaseNormals(cube, 2);
    for (let i = 0; i < normals.length; i++) {
      expect(Math.sign(normals[i] as number)).toBe((positions[i] as number) > 0.5 ? 1 : -1);
    }
  });
});

/** A closed solid of two discs of unit height, with the given outlines. */
function twoDiscs(lower: Omit<Ring, 'z'>, upper: Omit<Ring, 'z'>): SolidMesh {
  const mesh = createBuilder();
  const bottom = addRing(mesh, { ...lower, z: 0 });
  addFan(mesh, bottom, 0, -1);
  const middle = addJunction(mesh, { ...lower, z: 1 }, { ...upper, z: 1 });
  addStrip(mesh, bottom, middle.lower);
  const top = addRing(mesh, { ...upper, z: 2 });
  addStrip(mesh, middle.upper, top);
  addFan(mesh, top, 2, 1);
  const size = { positions: Float32Array.from(mesh.positions), indices: mesh.indices.slice(0, mesh.indexCount) };
  return finishMesh(mesh, meshVolume(size), 'none');
}

/** Area of a polar polygon with n even points: n/2 r² sin(2 pi / n). */
const even = (n: number, r: number) => (n / 2) * r * r * Math.sin((2 * Math.PI) / n);

describe('plane between two outlines', () => {
  it('leaves an annulus between circles of the same angles', () => {
    const solid = twoDiscs(circleRing(evenAngles(12), 2, 0), circleRing(evenAngles(12), 1, 0));
    expect(meshIsClosed(solid)).toBe(true);
    expect(meshVolume(solid)).toBeCloseTo(even(12, 2) + even(12, 1), 5);
  });

  it('welds equal circles of different angles completely', () => {
    const shifted = evenAngles(7).map((angle) => angle + 0.123);
    const solid = twoDiscs(circleRing(evenAngles(12), 1, 0), circleRing(shifted, 1, 0));
    expect(meshIsClosed(solid)).toBe(true);
    const flat = solid.indices.filter((vertex) => solid.positions[3 * vertex + 2] === 1);
    const allInPlane = (t: number) =>
      [0, 1, 2].every((k) => solid.positions[3 * (solid.indices[t + k] as number) + 2] === 1);
    expect(flat.length).toBeGreaterThan(0);
    for (let t = 0; t < solid.indices.length; t += 3) expect(allInPlane(t)).toBe(false);
  });

  const gear = { theta: Float64Array.of(0, 0, 1.5, 1.5, 3, 3, 4.5, 4.5), r: Float64Array.of(1, 2, 2, 1, 1, 2, 2, 1) };
  const others = {
    'turned and smaller': { theta: gear.theta.map((angle) => angle + 0.7), r: gear.r.map((r) => 0.8 * r) },
    'larger, steps on the same rays': { theta: gear.theta, r: gear.r.map((r) => 1.1 * r) },
    'opposite steps': { theta: gear.theta, r: gear.r.map((r) => 3 - r) },
    'the same': gear,
  };

  it.each(Object.entries(others))('closes a gear against another outline: %s', (_, upper) => {
    const solid = twoDiscs(gear, upper);
    expect(meshIsClosed(solid)).toBe(true);
    expect(eulerNumber(solid)).toBe(2);
  });

  it.each(Object.entries(others))('covers exactly what sticks out on either side: %s', async (_, upper) => {
    const solid = twoDiscs(gear, upper);
    const areas = { up: 0, down: 0 };
    const vector = new Float64Array(3);
    for (let t = 0; t < solid.indices.length; t += 3) {
      const inPlane = [0, 1, 2].every((k) => solid.positions[3 * (solid.indices[t + k] as number) + 2] === 1);
      areaVector(solid.positions, solid.indices, t, vector);
      const area = (vector[2] as number) / 2;
      if (inPlane) areas[area > 0 ? 'up' : 'down'] += Math.abs(area);
    }
    const judged = await judge(solid);
    // just off the plane: further away the outlines lack the points that the plane gave them
    const [below, above] = [judged.slice(1 - 1e-5), judged.slice(1 + 1e-5)];
    expect(areas.up).toBeCloseTo(below.subtract(above).area(), 3);
    expect(areas.down).toBeCloseTo(above.subtract(below).area(), 3);
  });
});
