import { expect, test } from 'vitest';
import { letterAt } from '../../../renderer/compare/curveOptions.ts';
import { drawingScale, moved, room, roundPlaces, zoomed } from '../../../renderer/compare/drawingScale.ts';
import { mostInStrip, stripOf } from '../../../renderer/compare/RevisionStrip.tsx';
import { sharedStretch, viewBoxes } from '../../../renderer/compare/views.ts';

const whole = { from: -0.02, to: 0.2 };

test('pixels and metres of the drawing are each other’s inverse; true proportions are true', () => {
  const scale = drawingScale(whole, { width: 1000, height: 300 }, 0.02, false);
  for (const z of [-0.02, 0, 0.17]) expect(scale.z(scale.x(z))).toBeCloseTo(z, 12);
  expect(scale.x(whole.from)).toBe(room.side);
  expect(scale.y(0.02)).toBeCloseTo(room.above, 9);
  expect(scale.stretch).toBeGreaterThan(1);
  const even = drawingScale(whole, { width: 1000, height: 300 }, 0.02, true);
  expect(even.stretch).toBe(1);
  expect(even.y(0) - even.y(0.01)).toBeCloseTo(even.x(0.01) - even.x(0), 9);
});

test('coming closer keeps the place under the pointer, and nothing leaves the whole', () => {
  const near = zoomed(whole, 4, 0.05, whole);
  expect((0.05 - near.from) / (near.to - near.from)).toBeCloseTo((0.05 - whole.from) / (whole.to - whole.from), 12);
  expect(zoomed(near, 0.01, 0.05, whole)).toEqual(whole);
  const end = moved(near, 5, whole);
  expect(end.to).toBe(whole.to);
  expect(end.to - end.from).toBeCloseTo(near.to - near.from, 12);
  expect(zoomed(near, 1e9, 0.05, whole).to - zoomed(near, 1e9, 0.05, whole).from).toBeCloseTo(0.002, 9);
});

test('numbers of an axis are round and inside', () => {
  expect(roundPlaces(-3, 21, 5)).toEqual([0, 5, 10, 15, 20]);
  expect(roundPlaces(0, 0.3, 3)).toEqual([0, 0.1, 0.2, 0.3]);
});

test('letters of lines stand on points that exist, and not all at one place', () => {
  const line = Array.from({ length: 50 }, (_, i) => (i < 10 ? null : i));
  const places = [0, 1, 2].map((place) => letterAt(line, place, 3));
  expect(new Set(places).size).toBe(3);
  for (const place of places) expect(line[place]).not.toBeNull();
  expect(letterAt([null, null], 0, 2)).toBe(-1);
});

test('linked views tile their canvas, the first at the upper left', () => {
  for (const count of [1, 2, 3, 4]) {
    const boxes = viewBoxes(count, 800, 600);
    expect(boxes[0]).toMatchObject({ x: 0 });
    expect((boxes[0]?.y ?? 0) + (boxes[0]?.height ?? 0)).toBe(600);
    expect(boxes.reduce((area, box) => area + box.width * box.height, 0)).toBeCloseTo(800 * 600, 6);
  }
});

test('a shared stretch holds every machine where it stands', () => {
  const bounds = { start: -0.02, feedStart: 0, feedEnd: 0.02, barrelEnd: 0.15, end: 0.18, radius: 0.015 };
  const stretch = sharedStretch('whole', [
    { bounds, shift: 0 },
    { bounds: { ...bounds, radius: 0.02 }, shift: 0.01 },
  ]);
  expect(stretch.from).toBeCloseTo(-20, 9);
  expect(stretch.to).toBeCloseTo(190, 9);
  expect(stretch.radius).toBeCloseTo(20, 9);
});

test('the strip holds one to twenty revisions and always the shown one', () => {
  for (const count of [1, 2, 5, 6, 20]) {
    const all = Array.from({ length: count }, (_, i) => ({ id: `R${i}` }));
    for (const { id } of all) {
      const strip = stripOf(all, id);
      expect(strip).toHaveLength(Math.min(count, mostInStrip));
      expect(strip.map((one) => one.id)).toContain(id);
    }
  }
});
