import { describe, expect, test } from 'vitest';
import { feedPlace } from '../../../core/feed/capacity.ts';
import { grainsPerTurn, overFlight, pinchPoint } from '../../../core/feed/grainFit.ts';
import { perfectBite } from '../../../core/feed/throat.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import { changedGrain, demo, evenScrew } from './made.ts';

const stations = buildStations(demo, 12);
const last = stations.count - 1;

describe('the pinch', () => {
  /** The demo's compression: root 6.4 to 10.4 mm from z = 55 to 110 mm in a bore of 14 mm. */
  test.each([
    [2.35e-3, (55 + (55 * (3.8 - 2.35)) / 2) / 1000],
    [3e-3, (55 + (55 * (3.8 - 3)) / 2) / 1000],
  ])('lies where a taper’s depth is %s m, between stations', (d90, z) => {
    const pinch = pinchPoint(changedGrain({ d90 }), stations, last);
    expect(pinch?.z).toBeCloseTo(z, 9);
    expect(pinch?.depth).toBeLessThan(d90);
  });

  test('is none where melting begins before it, or grains are small', () => {
    const pinch = pinchPoint(demo, stations, last);
    expect(pinchPoint(demo, stations, (pinch?.station ?? 0) - 1)).toBeNull();
    expect(pinchPoint(demo, stations, pinch?.station ?? 0)).toEqual(pinch);
    expect(pinchPoint(changedGrain({ d90: 1e-3 }), stations, last)).toBeNull();
    expect(pinchPoint(demo, stations, -1)).toBeNull();
  });

  test('comes earlier when more than one grain is wanted', () => {
    expect(pinchPoint(demo, stations, last, 1.3)?.z).toBeLessThan(pinchPoint(demo, stations, last)?.z ?? 0);
  });

  test('starts behind the feed opening where all of the channel is too shallow', () => {
    const { start, length } = demo.barrel.feedOpening;
    const shallow = evenScrew(0.002);
    const from = buildStations(shallow, 12);
    const z = pinchPoint(shallow, from, from.count - 1)?.z ?? 0;
    expect(z).toBeGreaterThanOrEqual(start + length);
    expect(z).toBeLessThan(start + length + 0.002);
  });
});

test('fines get over the flight from half of them on', () => {
  const { radialClearance } = demo.screw;
  const { ratio, limit } = overFlight(changedGrain({ d10: 2 * radialClearance }));
  expect(ratio).toBeCloseTo(limit, 12);
});

test('a turn holds its volume of balls at their bulk density', () => {
  const place = feedPlace(demo, stations);
  if (!place) throw new Error('no flight');
  const { grain, bulkDensity, solidDensity } = demo.material;
  const volume = (grainsPerTurn(demo, place) * Math.PI * grain.d50 ** 3) / 6;
  expect((volume * solidDensity) / (place.volumePerTurn * bulkDensity)).toBeCloseTo(1, 12);
});

test('a perfect bite is the channel’s annulus over a lead, a tenth off for the flight', () => {
  const [outer, depth, lead] = [0.014, 0.0038, 0.014];
  const annulus = (Math.PI / 4) * (outer ** 2 - (outer - 2 * depth) ** 2) * lead;
  expect(perfectBite(outer, depth, lead) / annulus).toBeCloseTo(0.9, 12);
});
