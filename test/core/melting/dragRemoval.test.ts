import { describe, expect, test } from 'vitest';
import {
  type FilmState,
  filmOver,
  filmThickness,
  relativeSpeed,
  solidLeft,
} from '../../../core/melting/dragRemoval.ts';

const film: FilmState = { crossSpeed: 0.02, meltDensity: 1000, drive: 8, demand: 3e5, carried: 1 };
const width = 0.013;

describe('film and rate', () => {
  test('what the barrel drags off is what melts: half the speed times film and density', () => {
    const thick = filmThickness(film, width);
    const dragged = (film.crossSpeed * film.meltDensity * thick) / 2;
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

  test('speeds of barrel and bed join by the cosine rule; nothing is dragged at rest', () => {
    expect(relativeSpeed(3, 4, Math.PI / 2)).toBeCloseTo(5, 12);
    expect(relativeSpeed(2, 2, 0)).toBe(0);
    expect(filmThickness({ ...film, crossSpeed: 0 }, width)).toBe(Number.POSITIVE_INFINITY);
  });
});

test('a bed whose melting falls with the root of its width: the square of a straight line, to nothing', () => {
  expect(solidLeft(1, 0.02, 50)).toBeCloseTo(0.25, 12);
  expect(solidLeft(1, 0.02, 100)).toBe(0);
  expect(solidLeft(1, 0.02, 200)).toBe(0);
  // in two goes as in one, the rate by the root
  const half = solidLeft(1, 0.02, 20);
  expect(solidLeft(half, 0.02 * Math.sqrt(half), 30)).toBeCloseTo(solidLeft(1, 0.02, 50), 12);
});
