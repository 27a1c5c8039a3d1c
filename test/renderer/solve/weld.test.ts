import { expect, test } from 'vitest';
import { creaseNormals, screwMesh } from '../../../core/index.ts';
import { meshHash } from '../../../renderer/solve/meshHash.ts';
import { welded } from '../../../renderer/solve/weld.ts';
import { loadDesign } from '../../helpers/projects.ts';

const mesh = screwMesh(loadDesign('demo'), { aroundCount: 64, ringsPerTurn: 30 });
const shaded = creaseNormals(mesh, 0.6);
const drawn = welded(mesh, shaded);

/** Largest difference between the values that corners point at and those they had of their own. */
function worst(values: Float32Array, own: Float32Array): number {
  let most = 0;
  drawn.indices.forEach((vertex, corner) => {
    for (let k = 0; k < 3; k++) most = Math.max(most, Math.abs(values[3 * vertex + k] - own[3 * corner + k]));
  });
  return most;
}

test('every corner keeps its place and, within a thousandth, its normal', () => {
  expect(drawn.indices).toHaveLength(mesh.indices.length);
  expect(worst(drawn.positions, shaded.positions)).toBe(0);
  expect(worst(drawn.normals, shaded.normals)).toBeLessThan(1e-3);
});

test('smooth surfaces share corners, creases do not', () => {
  const kept = drawn.positions.length / 3;
  expect(kept).toBeLessThan(mesh.indices.length / 3);
  expect(kept).toBeGreaterThan(mesh.positions.length / 3);
});

test('a hash tells a moved vertex and repeats itself', () => {
  const moved = { ...mesh, positions: mesh.positions.slice() };
  moved.positions[300] += 2e-6;
  expect(meshHash(mesh)).toBe(meshHash({ ...mesh }));
  expect(meshHash(moved)).not.toBe(meshHash(mesh));
});
