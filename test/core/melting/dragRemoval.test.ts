import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  bedProfile,
  bedShare,
  type FilmState,
  filmOver,
  filmThickness,
  grownFilm,
  meltingLength,
  meltingNumber,
  meltingRate,
  relativeSpeed,
} from '../../../core/melting/dragRemoval.ts';
import { pinned } from '../../helpers/arbitraries.ts';

const film: FilmState = { crossSpeed: 0.02, meltDensity: 1000, drive: 8, demand: 3e5, carried: 1 };
const [width, depth, massFlow] = [0.013, 0.003, 3e-4];
const rate = meltingRate(film);
const number = meltingNumber(rate, width, depth, massFlow);

describe('film and rate', () => {
  test('what the barrel drags off is what melts: half the speed times film and density', () => {
    const thick = filmThickness(film, width);
    const dragged = (film.crossSpeed * film.meltDensity * thick) / 2;
    expect(dragged).toBeCloseTo(rate * Math.sqrt(width), 9);
    expect(dragged).toBeCloseTo((film.drive / thick / film.demand) * width, 9);
  });

  test('a clearance thickens the film and slows melting in balance with what is scraped off', () => {
    const thick = filmThickness(film, width);
    const over = filmOver(thick, 1e-4);
    expect(over).toBeGreaterThan(thick);
    const scraped = (film.crossSpeed * film.meltDensity * (over - 1e-4)) / 2;
    expect(scraped).toBeCloseTo((film.drive / over / film.demand) * width, 9);
    expect(filmOver(thick, 0)).toBe(thick);
  });

  test('a growing film follows the root of its way, from any start', () => {
    const far = grownFilm(film, 0, 0.01, 0.04);
    expect(far).toBeCloseTo(2 * grownFilm(film, 0, 0.01, 0.01), 12);
    expect(grownFilm(film, grownFilm(film, 0, 0.01, 0.01), 0.01, 0.03)).toBeCloseTo(far, 12);
  });

  test('speeds of barrel and bed join by the cosine rule; nothing is dragged at rest', () => {
    expect(relativeSpeed(3, 4, Math.PI / 2)).toBeCloseTo(5, 12);
    expect(relativeSpeed(2, 2, 0)).toBe(0);
    expect(filmThickness({ ...film, crossSpeed: 0 }, width)).toBe(Number.POSITIVE_INFINITY);
  });
});

describe('bed in steps against the closed forms', () => {
  /** Largest difference over a channel of linear taper. */
  const worst = (taper: number, steps: number) => {
    const length = 0.95 * meltingLength(number, depth, taper);
    const z = Float64Array.from({ length: steps + 1 }, (_, i) => (length * i) / steps);
    const channel = {
      z,
      depth: z.map((at) => depth - taper * at),
      width: z.map(() => width),
      rate: z.map(() => rate),
    };
    return bedProfile(channel, massFlow).reduce(
      (most, share, i) => Math.max(most, Math.abs(share - bedShare(number, depth, z[i], taper))),
      0,
    );
  };

  test('constant depth: exact', () => expect(worst(0, 7)).toBeLessThan(1e-12));

  test('linear taper: second order', () => {
    const taper = 0.4 * number;
    expect(worst(taper, 100)).toBeLessThan(1e-3);
    expect(worst(taper, 50) / worst(taper, 100)).toBeGreaterThan(3);
  });

  test('a taper shortens melting, and beyond the melting number the bed plugs', () => {
    const length = meltingLength(number, depth);
    expect(meltingLength(number, depth, 0.5 * number)).toBeCloseTo(0.75 * length, 12);
    expect(meltingLength(number, depth, number)).toBe(Number.POSITIVE_INFINITY);
    expect(bedShare(number, depth, 0.3 * (depth / number), 2 * number)).toBe(1);
  });

  test('share stays between 0 and 1 and falls', () => {
    const share = fc.double({ min: 0, max: 0.9, noNaN: true });
    fc.assert(
      fc.property(share, share, share, (taper, a, b) => {
        const length = meltingLength(number, depth, taper * number);
        const [near, far] = [Math.min(a, b), Math.max(a, b)].map((s) =>
          bedShare(number, depth, s * length, taper * number),
        );
        expect(far).toBeGreaterThanOrEqual(0);
        expect(far).toBeLessThanOrEqual(near + 1e-12);
        expect(near).toBeLessThanOrEqual(1);
      }),
      pinned(100),
    );
  });
});
