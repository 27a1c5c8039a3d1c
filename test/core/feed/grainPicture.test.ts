import { describe, expect, test } from 'vitest';
import { type GrainPicture, grainPicture, overlapDrawn } from '../../../core/feed/grains/grainPicture.ts';
import { grainSizeAt, grainSizes } from '../../../core/feed/grains/sizes.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import { loadDesign } from '../../helpers/projects.ts';

const grain = { d10: 0.001, d50: 0.002, d90: 0.003, aspectRatio: 1 };

describe('sizes', () => {
  test('go through the three given ones and never beyond 2 and 98 %', () => {
    expect(grainSizeAt(grain, 0.1)).toBeCloseTo(grain.d10, 5);
    expect(grainSizeAt(grain, 0.5)).toBeCloseTo(grain.d50, 6);
    expect(grainSizeAt(grain, 0.9)).toBeCloseTo(grain.d90, 5);
    expect(grainSizeAt(grain, 1)).toBe(grainSizeAt(grain, 0.98));
  });

  test('one in ten is above d90, whatever the count', () => {
    for (const count of [10, 50, 730]) {
      const above = grainSizes(grain, count).filter((size) => size > grain.d90 * (1 + 1e-4)).length;
      expect(above).toBe(Math.round(count / 10));
    }
  });
});

const few = 260;
const pictures = new Map<string, GrainPicture>();
function pictureOf(name: string): GrainPicture {
  const design = loadDesign(name);
  const made = pictures.get(name) ?? grainPicture(design, buildStations(design, 48), 1, few);
  pictures.set(name, made);
  return made;
}

/** Distance of two rods' axes by plain sampling; an independent check of the closed form that settling uses. */
function sampledGap(picture: GrainPicture, i: number, j: number): number {
  const at = (n: number, share: number) => {
    const half = ((picture.aspect - 1) * (picture.diameters[n] ?? 0)) / 2;
    return [0, 1, 2].map((k) => (picture.middles[3 * n + k] ?? 0) + share * half * (picture.along[3 * n + k] ?? 0));
  };
  let least = Number.POSITIVE_INFINITY;
  for (let s = -1; s <= 1.001; s += 0.25) {
    for (let t = -1; t <= 1.001; t += 0.25) {
      const [a, b] = [at(i, s), at(j, t)];
      least = Math.min(least, Math.hypot(...a.map((value, k) => value - (b[k] ?? 0))));
    }
  }
  return least - ((picture.diameters[i] ?? 0) + (picture.diameters[j] ?? 0)) / 2;
}

test('no two granules stand in each other by more than is said', () => {
  const picture = pictureOf('demo');
  expect(picture.count).toBeGreaterThan(60);
  for (let i = 0; i < picture.count; i++) {
    for (let j = 0; j < i; j++) {
      const smaller = Math.min(picture.diameters[i] ?? 0, picture.diameters[j] ?? 0);
      expect(sampledGap(picture, i, j)).toBeGreaterThan(-(overlapDrawn + 0.01) * smaller);
    }
  }
});

test('granules lie neither in the root nor in the barrel’s wall', () => {
  const design = loadDesign('demo');
  const picture = pictureOf('demo');
  const bore = design.barrel.boreDiameter / 2;
  const opening = design.barrel.feedOpening;
  for (let i = 0; i < picture.count; i++) {
    const [x = 0, y = 0, z = 0] = picture.middles.subarray(3 * i, 3 * i + 3);
    const ball = (picture.diameters[i] ?? 0) / 2;
    const root = (design.screw.sections[0]?.rootDiameterStart ?? 0) / 2;
    if (y < design.barrel.outerDiameter / 2) expect(Math.hypot(x, y)).toBeGreaterThan(root + 0.75 * ball);
    const under = y > 0 && z > opening.start && z < opening.start + opening.length && Math.abs(x) < opening.width / 2;
    if (!under && y < design.barrel.outerDiameter / 2) expect(Math.hypot(x, y)).toBeLessThan(bore - 0.75 * ball);
  }
});

test('the same seed gives the same picture, another seed another', () => {
  const design = loadDesign('demo');
  const stations = buildStations(design, 48);
  const small = (seed: number) => Array.from(grainPicture(design, stations, seed, few).middles);
  const first = Array.from(pictureOf('demo').middles);
  expect(first.length).toBeGreaterThan(0);
  expect(small(1)).toEqual(first);
  expect(small(4)).not.toEqual(first);
});

test('granules larger than the channel are counted as misfits and none is drawn where it could not get', () => {
  const design = loadDesign('pla-pellet-misfit');
  const picture = pictureOf('pla-pellet-misfit');
  expect(picture.passage.id).toBe('depth');
  expect(picture.passage.size).toBeCloseTo(0.002, 9);
  expect(picture.tooLargeCount).toBe(picture.diameters.filter((size) => size > picture.passage.size).length);
  // d10 of this granulate is 2.7 mm: none fits
  expect(picture.tooLargeCount).toBe(picture.count);
  expect(picture.count).toBeGreaterThan(20);
  for (let i = 0; i < picture.count; i++) expect(picture.middles[3 * i + 1]).toBeGreaterThan(0);
  expect(pictureOf('demo').tooLargeCount).toBe(0);
  expect(design.material.grain.d10).toBeGreaterThan(picture.passage.size);
});

test('fine granulate is drawn as a slice, and dust not at all', () => {
  const design = loadDesign('demo');
  const stations = buildStations(design, 48);
  const withSize = (factor: number) => {
    const { d10, d50, d90 } = design.material.grain;
    const made = { ...design.material.grain, d10: d10 * factor, d50: d50 * factor, d90: d90 * factor };
    return grainPicture({ ...design, material: { ...design.material, grain: made } }, stations, 1, 500);
  };
  const slice = withSize(0.7);
  expect(slice.slab).toBeGreaterThan(0);
  const reach = Math.max(...Array.from({ length: slice.count }, (_, i) => Math.abs(slice.middles[3 * i] ?? 0)));
  expect(reach).toBeLessThanOrEqual((slice.slab ?? 0) + 1e-6);
  expect(withSize(0.02)).toMatchObject({ tooFine: true, count: 0 });
});
