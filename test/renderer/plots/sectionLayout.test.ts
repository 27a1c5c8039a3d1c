import { expect, test } from 'vitest';
import type { StationSection } from '../../../core/index.ts';
import { roundTimes } from '../../../renderer/plots/residenceMarks.ts';
import { nearestNode, roundMarks, sectionLayout } from '../../../renderer/plots/sectionLayout.ts';

/** Two by two nodes: 10 mm wide, 2 mm deep. */
const section: StationSection = {
  ...{ z: 0.1, columns: 2, rows: 2 },
  x: Float32Array.of(-0.005, -0.005, 0.005, 0.005),
  depth: Float32Array.of(0.002, 0, 0.002, 0),
  speed: Float32Array.of(0, 1, 0, 1),
  age: Float32Array.of(1, 2, 3, 4),
  dwell: Float32Array.of(1, 1, 1, 1),
};

test('width and depth are drawn to one scale, barrel on top, within the box', () => {
  const layout = sectionLayout(section, 300);
  expect(layout.x(0.005) - layout.x(-0.005)).toBeCloseTo(5 * (layout.y(0.002) - layout.y(0)), 4);
  expect(layout.y(0)).toBeLessThan(layout.y(0.002));
  expect(layout.x(-0.005)).toBeGreaterThan(0);
  expect(layout.x(0.005)).toBeLessThan(300);
  expect(layout.y(0.002)).toBeLessThan(layout.height);
});

test('a deep channel is kept from growing over the window', () => {
  const deep = { ...section, depth: section.depth.map((depth) => 20 * depth) };
  expect(sectionLayout(deep, 900).height).toBeLessThanOrEqual(301);
});

test('the node under the pointer is found', () => {
  const layout = sectionLayout(section, 300);
  expect(nearestNode(section, layout, layout.x(0.005) - 2, layout.y(0.002) + 1).node).toBe(2);
  expect(nearestNode(section, layout, layout.x(-0.005), layout.y(0)).distance).toBeCloseTo(0, 4);
});

test('marks are round and lie inside', () => {
  expect(roundMarks(-6.9, 6.9, 7)).toEqual([-6, -4, -2, 0, 2, 4, 6]);
  expect(roundMarks(0, 2.1, 2)).toEqual([0, 2]);
  expect(roundTimes(63, 1390)).toEqual([100, 200, 500, 1000]);
  expect(roundTimes(0.4, 3)).toEqual([0.5, 1, 2]);
});
