import { expect, test } from 'vitest';
import { solveChannel } from '../../../core/flow/field/channelSolver.ts';
import { streamGrid } from '../../../core/flow/field/orbitGrid.ts';
import { bandOf } from '../../../core/math/levelSums.ts';
import { channelOrbits, type OrbitGrid } from '../../../core/residence/orbits.ts';
import { cumulativeAt, orbitTimes, shareOlder } from '../../../core/residence/orbitTimes.ts';
import { pintoTadmorOlder, pintoTadmorTime } from '../../../core/residence/pintoTadmor.ts';

const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0);

/** Middle of a wide channel: psi = y^2 (1 - y), w = y; the closed form holds for it exactly. */
function shallowGrid(rows: number): OrbitGrid {
  const columns = 3;
  const make = (value: (i: number, y: number) => number) =>
    Float64Array.from({ length: columns * rows }, (_, k) => value(Math.floor(k / rows), (k % rows) / (rows - 1)));
  return {
    columns,
    rows,
    x: make((i) => i),
    y: make((_, y) => y),
    stream: make((_, y) => y * y * (1 - y)),
    along: make((_, y) => y),
    density: make(() => 1),
  };
}

test('a wide channel follows the closed form of Pinto & Tadmor (1970)', () => {
  const orbits = channelOrbits(shallowGrid(3001));
  const times = orbitTimes(orbits);
  expect(times.minimum).toBeCloseTo(0.75, 3);
  for (const dwell of [0.8, 1, 1.5, 2, 3]) expect(shareOlder(orbits, dwell)).toBeCloseTo(pintoTadmorOlder(dwell), 2);
  for (const share of [0.25, 0.4, 0.5, 0.75, 0.93, 0.95, 0.98])
    expect(cumulativeAt(times, pintoTadmorTime(share))).toBeCloseTo(share, 2);
});

const channel = solveChannel(
  { kind: 'flat', depth: 2e-3, width: 4e-3, helixAngle: 0.31, rootFillet: 0, flankAngle: 0 },
  { model: 'newtonian', viscosity: 1000 },
  { barrelSpeed: 0.0125 },
  5e6,
);
const grid = streamGrid(channel, 0.01);
const orbits = channelOrbits(grid);

test('volume and flow of all orbits add up to the channel', () => {
  expect(sum(orbits.volume)).toBeCloseTo(1, 10);
  expect(sum(orbits.flow)).toBeCloseTo(1, 10);
});

test('flow-weighted dwell is the mean when nothing flows back', () => {
  const section = {
    kind: 'flat',
    depth: 2e-3,
    width: 4e-3,
    helixAngle: 0.31,
    rootFillet: 5e-4,
    flankAngle: 0,
  } as const;
  const open = solveChannel(section, { model: 'newtonian', viscosity: 1000 }, { barrelSpeed: 0.0125 }, 0);
  const times = orbitTimes(channelOrbits(streamGrid(open, 0.01)));
  expect(times.noForward).toBeLessThan(1e-4);
  const { time, cumulative } = times;
  const mean = time.reduce((total, at, k) => total + at * (cumulative[k] - (cumulative[k - 1] ?? 0)), 0);
  expect(mean).toBeCloseTo(1, 3);
});

test('F rises from 0 to 1', () => {
  const times = orbitTimes(orbits);
  expect(cumulativeAt(times, times.minimum * 0.999)).toBe(0);
  expect(cumulativeAt(times, 1e9)).toBe(1);
  const rising = [0.8, 0.9, 1, 1.5, 2, 4].map((multiple) => cumulativeAt(times, multiple));
  expect(rising).toEqual([...rising].sort((a, b) => a - b));
  expect(rising[0]).toBeLessThan(rising[5]);
});

test('the oldest melt sits at the walls, the youngest near the vortex centre', () => {
  const dwell = grid.stream.map(
    (value) =>
      orbits.dwell[
        bandOf(orbits.levels, Math.sign(value / orbits.extremum) * Math.sqrt(Math.abs(value / orbits.extremum)))
      ],
  );
  const centre = grid.stream.reduce((best, value, k, all) => (Math.abs(value) > Math.abs(all[best]) ? k : best), 0);
  expect(dwell[centre]).toBeCloseTo(orbitTimes(orbits).centre, 6);
  const nearRoot = Math.floor(grid.columns / 2) * grid.rows + 1;
  expect(Math.abs(dwell[nearRoot])).toBeGreaterThan(3);
});

test('dwell over mean does not depend on size, speed or a Newtonian viscosity', () => {
  const other = solveChannel(
    { kind: 'flat', depth: 6e-3, width: 12e-3, helixAngle: 0.31, rootFillet: 0, flankAngle: 0 },
    { model: 'newtonian', viscosity: 30 },
    { barrelSpeed: 0.5 },
    (5e6 * 0.03 * 40) / 9,
  );
  const times = orbitTimes(channelOrbits(streamGrid(other, 0.01)));
  expect(times.minimum).toBeCloseTo(orbitTimes(orbits).minimum, 6);
  expect(cumulativeAt(times, 1.5)).toBeCloseTo(cumulativeAt(orbitTimes(orbits), 1.5), 6);
});
