import { describe, expect, test } from 'vitest';
import { coarseIndex } from '../../../renderer/scene/coarseIndex.ts';
import { fanOut } from '../../../renderer/scene/fanOut.ts';
import { moveOfKey } from '../../../renderer/scene/moveKeys.ts';
import { axialUnder, pixelOf, worldOf } from '../../../renderer/scene/projection.ts';
import { sliceAt } from '../../../renderer/scene/sliceAt.ts';
import { outlineAt, radiusAt } from '../../../renderer/scene/surfaces.ts';

describe('markers', () => {
  test('alone stay on their places', () => {
    const places = [
      [10, 10],
      [100, 40],
    ] as const;
    expect(fanOut(places, 25)).toEqual(places.map((place) => [...place]));
  });

  test('close together are fanned out: none covers another, and all stay near', () => {
    const places = Array.from({ length: 7 }, (_, i) => [200 + i, 150 - (i % 2)] as const);
    const heads = fanOut([...places, [300, 150]], 25);
    heads.forEach(([x, y], i) => {
      for (const [u, v] of heads.slice(0, i)) expect(Math.hypot(x - u, y - v)).toBeGreaterThan(24.5);
      const [px, py] = places[i] ?? [300, 150];
      expect(Math.hypot(x - px, y - py)).toBeLessThan(120);
    });
  });

  test('order along x is kept, so that lines do not cross', () => {
    const heads = fanOut(
      [
        [12, 50],
        [10, 50],
        [11, 50],
      ],
      25,
    );
    expect((heads[1]?.[0] ?? 0) < (heads[2]?.[0] ?? 0) && (heads[2]?.[0] ?? 0) < (heads[0]?.[0] ?? 0)).toBe(true);
  });
});

describe('projection', () => {
  // looks along -z at 4 px/mm, world origin in the middle of 400 x 200 px
  const view = { matrix: [0.02, 0, 0, 0, 0, 0.04, 0, 0, 0, 0, -0.001, 0, 0, 0, 0, 1], width: 400, height: 200 };

  test('places of the machine are found in the view', () => {
    const [x, y] = pixelOf(view, worldOf(0, 0.01, 0.02));
    expect([x, y]).toEqual([expect.closeTo(280, 6), expect.closeTo(60, 6)]);
  });

  test('the axial position under a pixel is read back', () => {
    const found = axialUnder(view, [280, 60]);
    expect(found?.x).toBeCloseTo(20, 9);
    expect(found?.off).toBeCloseTo(40, 9);
    expect(axialUnder({ ...view, matrix: view.matrix.map((value, k) => (k < 3 ? 0 : value)) }, [1, 1])).toBeNull();
  });
});

test('a slice stands at its share of the radius, or of the length', () => {
  const bounds = { start: -0.1, feedStart: 0, feedEnd: 0.01, barrelEnd: 0.2, end: 0.3, radius: 0.02 };
  expect(sliceAt('upright', 0.5, bounds)).toBeCloseTo(0.01, 12);
  expect(sliceAt('across', -1, bounds)).toBeCloseTo(-0.1, 12);
  expect(sliceAt('across', 0, bounds)).toBeCloseTo(0.1, 12);
});

test('radii to be measured to come from the outlines', () => {
  const line = (r: number[]) => ({ z: Float64Array.from([0, 0.1, 0.1, 0.2]), r: Float64Array.from(r) });
  const shape = {
    outline: { inner: line([0.003, 0.005, 0.004, 0.004]), outer: line([0.007, 0.007, 0.006, 0.001]) },
    flightRadius: 0.0068,
  };
  expect(outlineAt(shape.outline.inner, 0.05)).toBeCloseTo(0.004, 12);
  expect(radiusAt(shape, 0.014, 'bore', 0.15)).toBeCloseTo(0.0035, 12);
  expect(radiusAt(shape, 0.014, 'root', 9)).toBeCloseTo(0.004, 12);
  expect(['axis', 'flight', 'outside'].map((name) => radiusAt(shape, 0.014, name as 'axis', 0))).toEqual([
    0, 0.0068, 0.014,
  ]);
});

test('keys move the camera, with Shift they pan', () => {
  expect(moveOfKey('ArrowLeft', false)).toBe('left');
  expect(moveOfKey('ArrowLeft', true)).toBe('pan-left');
  expect(moveOfKey('+', true)).toBe('in');
  expect(moveOfKey('x', false)).toBeNull();
});

describe('fewer triangles while moving', () => {
  /** A flat square of n by n cells, side 1. */
  function square(n: number) {
    const at = (i: number, j: number) => i * (n + 1) + j;
    const positions = Float32Array.from(
      Array.from({ length: (n + 1) ** 2 }, (_, k) => [Math.floor(k / (n + 1)) / n, (k % (n + 1)) / n, 0]).flat(),
    );
    const indices: number[] = [];
    for (let i = 0; i < n; i++)
      for (let j = 0; j < n; j++)
        indices.push(at(i, j), at(i + 1, j), at(i, j + 1), at(i + 1, j), at(i + 1, j + 1), at(i, j + 1));
    const normals = positions.map((_, k) => (k % 3 === 2 ? 1 : 0));
    return { positions, normals, indices: Uint32Array.from(indices) };
  }

  const area = (mesh: ReturnType<typeof square>, indices: Uint32Array) => {
    let sum = 0;
    for (let t = 0; t < indices.length; t += 3) {
      const [a, b, c] = [0, 1, 2].map((k) => mesh.positions.subarray(3 * (indices[t + k] ?? 0)));
      if (a && b && c)
        sum +=
          Math.abs(
            ((b[0] ?? 0) - (a[0] ?? 0)) * ((c[1] ?? 0) - (a[1] ?? 0)) -
              ((c[0] ?? 0) - (a[0] ?? 0)) * ((b[1] ?? 0) - (a[1] ?? 0)),
          ) / 2;
    }
    return sum;
  };

  test('a mesh that is small enough stays as it is', () => {
    const mesh = square(10);
    expect(coarseIndex(mesh, 200)).toBe(mesh.indices);
  });

  test('a larger one has at most what is allowed and covers nearly the same', () => {
    const mesh = square(120);
    const coarse = coarseIndex(mesh, 4000);
    expect(coarse.length / 3).toBeLessThanOrEqual(4000);
    expect(coarse.length / 3).toBeGreaterThan(500);
    expect(area(mesh, coarse)).toBeGreaterThan(0.93);
  });
});
