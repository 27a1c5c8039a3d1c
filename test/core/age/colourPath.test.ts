/** Interpolation between anchors. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { colourPath } from '../../../core/age/colourPath.ts';
import { monotoneCurve } from '../../../core/age/monotoneCurve.ts';

describe('monotone curve', () => {
  it('passes the points, holds the ends, is straight through a line', () => {
    const line = monotoneCurve([0, 1, 4], [1, 3, 9]);
    for (const x of [0, 0.3, 1, 2.5, 4]) expect(line(x)).toBeCloseTo(1 + 2 * x, 12);
    expect([line(-1), line(9)]).toEqual([1, 9]);
    expect(monotoneCurve([2], [7])(5)).toBe(7);
    expect(monotoneCurve([0, 2], [1, 5])(0.5)).toBeCloseTo(2, 12);
  });

  it('converges on a smooth rising curve at second order or better', () => {
    const error = (n: number) => {
      const xs = Array.from({ length: n + 1 }, (_, i) => i / n);
      const curve = monotoneCurve(xs, xs.map(Math.exp));
      return Math.max(...Array.from({ length: 1001 }, (_, i) => Math.abs(curve(i / 1000) - Math.exp(i / 1000))));
    };
    expect(error(8) / error(16)).toBeGreaterThan(4);
  });

  it('never overshoots and keeps the direction between any neighbours', () => {
    const ys = fc.array(fc.double({ min: -50, max: 50, noNaN: true }), { minLength: 2, maxLength: 8 });
    fc.assert(
      fc.property(
        ys,
        fc.array(fc.double({ min: 0.01, max: 5, noNaN: true }), { minLength: 8, maxLength: 8 }),
        (values, steps) => {
          const xs = values.map((_, i) => steps.slice(0, i).reduce((sum, step) => sum + step, 0));
          const curve = monotoneCurve(xs, values);
          for (let i = 1; i < values.length; i++) {
            const inside = Array.from({ length: 21 }, (_, k) => curve(xs[i - 1] + ((xs[i] - xs[i - 1]) * k) / 20));
            const way = Math.sign(values[i] - values[i - 1]);
            for (let k = 1; k < inside.length; k++)
              expect(way * (inside[k] - inside[k - 1])).toBeGreaterThanOrEqual(-1e-9);
          }
        },
      ),
      { seed: 20240611, numRuns: 200 },
    );
  });
});

describe('colour path', () => {
  it('takes anchors in any order, averages doubles, and says when it is beyond', () => {
    const path = colourPath([
      { extent: 2, lab: [60, 6, 20] },
      { extent: 0, lab: [80, 2, 10] },
      { extent: 0, lab: [84, 4, 12] },
    ]);
    expect(path?.at(0)).toEqual({ lab: [82, 3, 11], beyond: false });
    expect(path?.at(1).lab).toEqual([71, 4.5, 15.5]);
    expect(path?.at(2.1)).toEqual({ lab: [60, 6, 20], beyond: true });
    expect(colourPath([])).toBeNull();
  });
});
