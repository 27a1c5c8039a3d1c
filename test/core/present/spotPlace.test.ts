import { expect, test } from 'vitest';
import { buildStations } from '../../../core/geometry/stations.ts';
import { stationPlace, stationValue } from '../../../core/present/mapBetween.ts';
import { spotPlace } from '../../../core/present/spotPlace.ts';
import { flatMap } from '../../helpers/flatMaps.ts';
import { loadDesign } from '../../helpers/projects.ts';

const stations = buildStations(loadDesign('demo'), 16);
const end = stations.z[stations.count - 1] ?? 0;
const maps = [0.5, 0.7, 0.9].map((share) => flatMap(stations, share * end, () => 7));

test('a spot of the channel is shown in the nearest corner at the root that the half-plane cuts', () => {
  const spot = { part: 'channel', z: 0.8 * end, r: 0.001 } as const;
  for (const azimuth of [0, 1, 2, 4]) {
    const place = spotPlace(spot, stations, maps, azimuth, 'right');
    const here = stationPlace(stations, place.z);
    // two corners per pitch, so one lies within half a pitch
    expect(Math.abs(place.z - spot.z)).toBeLessThanOrEqual(stationValue(stations.lead, here) / 2);
    const height = place.r - stationValue(stations.rootRadius, here);
    expect(height).toBeGreaterThan(0);
    expect(height).toBeLessThan(0.4 * stationValue(stations.depth, here));
  }
});

test('a spot of the head stays where it is', () => {
  const spot = { part: 'nozzle', z: 1.1 * end, r: 0.002 } as const;
  expect(spotPlace(spot, stations, maps, 1, 'right')).toEqual({ z: spot.z, r: spot.r });
});
