import fc from 'fast-check';
import { expect, test } from 'vitest';
import { orderOfRuns, reordered } from '../../../core/math/orderOfRuns.ts';

test('runs of any length come out as a stable sort puts them', () => {
  const runs = fc.integer({ min: 1, max: 9 }).chain((run) =>
    fc.tuple(
      fc.constant(run),
      fc.array(fc.integer({ min: 0, max: 20 }), { maxLength: 70 }).map((all) => {
        const values = Float64Array.from(all);
        for (let from = 0; from < values.length; from += run) values.subarray(from, from + run).sort();
        return values;
      }),
    ),
  );
  fc.assert(
    fc.property(runs, ([run, values]) => {
      const order = orderOfRuns(values, run);
      const wanted = [...values.keys()].sort((a, b) => (values[a] ?? 0) - (values[b] ?? 0));
      expect([...order]).toEqual(wanted);
      expect([...reordered(values, order)]).toEqual([...values].sort((a, b) => a - b));
    }),
    { numRuns: 200, seed: 11 },
  );
});
