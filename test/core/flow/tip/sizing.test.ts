import { describe, expect, it } from 'vitest';
import { outlineOf } from '../../../../core/flow/tip/outline.ts';
import { sizeField } from '../../../../core/flow/tip/sizing.ts';
import { NORMAL_FINENESS, tipMesh } from '../../../../core/flow/tip/tipMesh.ts';
import { DEG, head, pipe } from './regions.ts';

describe('wanted triangle size', () => {
  it.each([2.5e-3, 1e-3, 0.5e-3])('follows the width of an annulus of %f m', (gap) => {
    const region = { ...head({ kind: 'flat' }, 90 * DEG), screwRadius: 7e-3 - gap };
    const size = sizeField(outlineOf(region), NORMAL_FINENESS);
    const wall = size(2e-3, 7e-3);
    expect(wall).toBeGreaterThan(0.05 * gap);
    expect(wall).toBeLessThan(0.2 * gap);
    expect(size(2e-3, 7e-3 - gap)).toBeLessThan(0.2 * gap);
    expect(size(2e-3, 7e-3 - gap / 2)).toBeLessThan(0.3 * gap);
  });

  it('follows the gap before a shoulder', () => {
    const region = head({ kind: 'flat' }, Math.PI, 0.3e-3);
    const size = sizeField(outlineOf(region), NORMAL_FINENESS);
    expect(size(4.15e-3, 3e-3)).toBeLessThan(0.1e-3);
  });

  it('follows the radius of a pipe', () => {
    const size = sizeField(outlineOf(pipe(2e-3, 10e-3)), NORMAL_FINENESS);
    expect(size(5e-3, 2e-3) / 2e-3).toBeCloseTo(NORMAL_FINENESS.wall, 2);
    expect(size(5e-3, 0) / 2e-3).toBeGreaterThan(0.1);
  });

  it('keeps an endless slit within reach of the solver', () => {
    const region = { ...head({ kind: 'flat' }, Math.PI, 0.05e-3), screwRadius: 6.95e-3 };
    const { mesh, complete } = tipMesh(outlineOf(region), NORMAL_FINENESS);
    expect(complete).toBe(true);
    expect(mesh.triangleCount).toBeLessThan(12_000);
  });
});
