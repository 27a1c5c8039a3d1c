import { describe, expect, it } from 'vitest';
import { integrate, integrateParts } from '../../../core/math/quadrature.ts';

describe('five-point integration', () => {
  it('is exact for degree 9 and not for degree 10', () => {
    expect(integrate((x) => x ** 9, 1, 3)).toBeCloseTo((3 ** 10 - 1) / 10, 8);
    expect(Math.abs(integrate((x) => x ** 10, -1, 1) - 2 / 11)).toBeGreaterThan(1e-6);
  });

  it('changes sign with the direction', () => {
    expect(integrate(Math.exp, 2, 0)).toBeCloseTo(1 - Math.exp(2), 8);
  });

  it('converges with the number of parts', () => {
    const f = (x: number) => Math.cos(20 * x);
    const exact = Math.sin(20) / 20;
    expect(Math.abs(integrateParts(f, 0, 1, 1) - exact)).toBeGreaterThan(1e-3);
    expect(integrateParts(f, 0, 1, 10)).toBeCloseTo(exact, 10);
  });
});
