import { expect, test } from 'vitest';
import { convectionCoefficient, stillAirCoefficient } from '../../../core/heat/stillAir.ts';

test('a still cylinder without buoyancy keeps Nu = 0.36, 0.6 squared, the limit of its correlation', () => {
  // 0.1 µm wire, 1 K
  const fine = convectionCoefficient(1e-7, 301, 300);
  expect(Math.abs((fine * 1e-7) / 0.0263 / 0.36 - 1)).toBeLessThan(0.05);
});

test('hotter surfaces lose more, by air and radiation together', () => {
  const losses = [350, 400, 450, 500].map((surface) => stillAirCoefficient(0.04, surface, 295));
  expect(losses).toEqual([...losses].sort((a, b) => a - b));
});
