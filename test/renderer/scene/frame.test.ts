import { describe, expect, test } from 'vitest';
import { scaleLength, stretchOf, zoomFor } from '../../../renderer/scene/frame.ts';

const bounds = { start: -0.03, feedStart: 0.006, feedEnd: 0.03, barrelEnd: 0.162, end: 0.19, radius: 0.014 };

test('the whole machine fits the view in both directions', () => {
  const stretch = stretchOf('whole', bounds);
  const zoom = zoomFor(stretch, 600, 400);
  expect((stretch.to - stretch.from) * zoom).toBeLessThan(600);
  expect(2 * stretch.radius * zoom).toBeLessThan(400);
  expect(zoomFor(stretch, 1200, 800)).toBeCloseTo(2 * zoom, 9);
});

test('a finding is shown with some of its surroundings', () => {
  expect(stretchOf({ z: 0.1 }, bounds)).toEqual({ from: 72, to: 128, radius: 14 });
});

describe('scale bar', () => {
  test.each([
    [1, 140, 100],
    [3, 140, 20],
    [40, 140, 2],
    [2, 100, 50],
  ])('at %d px/mm and at most %d px it stands for %d mm', (zoom, most, expected) => {
    expect(scaleLength(zoom, most)).toBeCloseTo(expected, 12);
  });
});

test('a point beside the axis is put in the middle with its own surroundings', () => {
  const stretch = stretchOf({ z: 0.12, near: { r: 0.005, around: 0.009 } }, bounds);
  expect(stretch).toEqual({ from: 111, to: 129, radius: 9, up: 5 });
});
