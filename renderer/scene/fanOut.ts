/** Markers that would cover each other are fanned out, each with a line back to its place. Pure. */

import type { Pixel } from './projection.ts';

/** Length of a line from a place to its marker at first, px. */
const lineLength = 30;

/** Groups of places nearer to each other than `gap`, each by index, in order of x. */
function groupsOf(places: readonly Pixel[], gap: number): number[][] {
  const group = places.map((_, i) => i);
  const find = (i: number): number => (group[i] === i ? i : find(group[i] ?? i));
  places.forEach(([x, y], i) => {
    for (let j = 0; j < i; j++) {
      const [u, v] = places[j] ?? [0, 0];
      if (Math.hypot(x - u, y - v) < gap) group[find(i)] = find(j);
    }
  });
  const found = new Map<number, number[]>();
  places.forEach((_, i) => {
    const key = find(i);
    found.set(key, [...(found.get(key) ?? []), i]);
  });
  const x = (i: number) => places[i]?.[0] ?? 0;
  return [...found.values()].map((list) => list.sort((a, b) => x(a) - x(b) || a - b));
}

/** Pushes two markers that are too near apart, along the line between them. */
function part(a: [number, number], b: [number, number], gap: number): boolean {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
  const now = Math.hypot(dx, dy);
  if (now >= gap) return false;
  const [ux, uy] = now > 1e-6 ? [dx / now, dy / now] : [1, 0];
  const half = (gap - now) / 2 + 0.01;
  a[0] -= half * ux;
  a[1] -= half * uy;
  b[0] += half * ux;
  b[1] += half * uy;
  return true;
}

/**
 * Places for markers: alone at their own place, else fanned out above it, and none nearer than `gap` to another.
 * @param places where the marked things stand, px; @param gap least distance of markers, px
 */
export function fanOut(places: readonly Pixel[], gap: number): Pixel[] {
  const markers = places.map(([x, y]): [number, number] => [x, y]);
  for (const list of groupsOf(places, gap)) {
    if (list.length < 2) continue;
    const reach = Math.max(lineLength, (gap * list.length) / Math.PI);
    list.forEach((index, k) => {
      const angle = Math.PI * (1 - (k + 0.5) / list.length);
      const [x, y] = places[index] ?? [0, 0];
      markers[index] = [x + reach * Math.cos(angle), y - reach * Math.sin(angle)];
    });
  }
  for (let round = 0; round < 80; round++) {
    let moved = false;
    markers.forEach((marker, i) => {
      for (const other of markers.slice(0, i)) moved = part(other, marker, gap) || moved;
    });
    if (!moved) break;
  }
  return markers;
}
