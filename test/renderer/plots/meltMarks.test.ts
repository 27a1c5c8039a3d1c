import fc from 'fast-check';
import { expect, test } from 'vitest';
import { meltMarks, spreadLabels } from '../../../renderer/plots/meltMarks.ts';

const at = (softensAt: number | null, meltsFrom: number | null, suited: number | null) =>
  meltMarks({ melting: { softensAt, meltsFrom, ends: { suited } } } as Parameters<typeof meltMarks>[0]).map(
    ({ z, name }) => `${name} ${z}`,
  );

test('places beyond the screw have no mark; melting within a station has one', () => {
  expect(at(0.02, 0.05, 0.08)).toEqual(['softens 0.02', 'first melt 0.05', 'molten 0.08']);
  expect(at(0.02, null, null)).toEqual(['softens 0.02']);
  expect(at(0.02, 0.051, 0.05)).toEqual(['softens 0.02', 'melts 0.05']);
});

test('labels stand at their places where there is room, and share the shift where there is none', () => {
  const width = 40;
  expect(
    spreadLabels(
      [100, 200, 300].map((x) => ({ at: x, width })),
      0,
      400,
      8,
    ),
  ).toEqual([80, 180, 280]);
  expect(
    spreadLabels(
      [100, 100].map((x) => ({ at: x, width })),
      0,
      400,
      8,
    ),
  ).toEqual([56, 104]);
});

test('labels never cover each other and stay inside the ends', () => {
  const label = fc.record({
    at: fc.double({ min: 0, max: 500, noNaN: true }),
    width: fc.integer({ min: 10, max: 70 }),
  });
  fc.assert(
    fc.property(fc.array(label, { minLength: 1, maxLength: 5 }), (some) => {
      const labels = some.sort((a, b) => a.at - b.at);
      const lefts = spreadLabels(labels, 20, 480, 8);
      lefts.forEach((left, i) => {
        const next = lefts[i + 1] ?? 480 + 8;
        expect(left + (labels[i]?.width ?? 0) + 8).toBeLessThanOrEqual(next + 1e-6);
        expect(left).toBeGreaterThanOrEqual(20 - 1e-6);
      });
    }),
    { seed: 7, numRuns: 200 },
  );
});
