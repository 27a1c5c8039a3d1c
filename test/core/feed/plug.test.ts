import { expect, test } from 'vitest';
import { conveyed, smallPlug, textbookPlug } from '../../../core/checks/feedCases.ts';

test('without friction on the screw tan(theta) = 1/K', () => {
  const plug = conveyed(smallPlug, 0.3, 0);
  expect(Math.abs(Math.tan(plug.angle) * plug.k - 1)).toBeLessThan(1e-9);
  expect(plug.m).toBe(0);
});

test('conveys nothing where the screw holds more than the barrel drives (M of 1 and more)', () => {
  const plug = conveyed(textbookPlug, 0.2, 0.4);
  expect(plug.m).toBeGreaterThan(1);
  expect(plug.efficiency).toBe(0);
});

test('more friction on the barrel never conveys less, more on the screw never more', () => {
  for (let f = 0.1; f < 0.6; f += 0.05) {
    const at = (onBarrel: number, onScrew: number) => conveyed(smallPlug, onBarrel, onScrew).efficiency;
    expect(at(f + 0.05, 0.2)).toBeGreaterThanOrEqual(at(f, 0.2));
    expect(at(0.4, f + 0.05)).toBeLessThanOrEqual(at(0.4, f));
  }
});
