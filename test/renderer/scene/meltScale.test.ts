import { expect, test } from 'vitest';
import { speedColour, timeColour, timeMarks, timePlace } from '../../../renderer/scene/meltScale.ts';

test('times lie evenly by their logarithm, the mean in the middle, the ends held', () => {
  expect(timePlace(1)).toBeCloseTo(0.5, 12);
  expect(timePlace(10)).toBe(1);
  expect(timePlace(0.1)).toBeCloseTo(0, 12);
  expect(timePlace(0)).toBe(0);
  expect(timePlace(1e6)).toBe(1);
  expect(timePlace(3) - timePlace(1)).toBeCloseTo(Math.log10(3) / 2, 12);
  expect(timeMarks.map(timePlace)).toEqual([...timeMarks.map(timePlace)].sort((a, b) => a - b));
});

/** Relative luminance of #rrggbb or rgb(r, g, b) (WCAG 2.2, "relative luminance"). */
function luminance(css: string): number {
  const parts = css.startsWith('#')
    ? [1, 3, 5].map((at) => Number.parseInt(css.slice(at, at + 2), 16))
    : (css.match(/\d+/g) ?? []).map(Number);
  const [r = 0, g = 0, b = 0] = parts.map((part) => {
    const share = part / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r + 0.7152 * g + 0.0722 * b;
}

test.each([
  ['times', timeColour],
  ['speeds', speedColour],
])('colours of %s grow lighter all the way, so that they read without hue', (_name, colour) => {
  const steps = Array.from({ length: 21 }, (_, i) => luminance(colour(i / 20)));
  for (let i = 1; i < steps.length; i++) expect(steps[i]).toBeGreaterThan(steps[i - 1] ?? 1);
});
