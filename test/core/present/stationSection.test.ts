import { expect, test } from 'vitest';
import { buildStations } from '../../../core/geometry/stations.ts';
import type { HeadMap } from '../../../core/path/viewTypes.ts';
import { meltStart } from '../../../core/present/dwellSection.ts';
import { axialGap, stationPlace, stationValue } from '../../../core/present/mapBetween.ts';
import { radialProfile, stationSection } from '../../../core/present/stationSection.ts';
import { flatMap } from '../../helpers/flatMaps.ts';
import { loadDesign } from '../../helpers/projects.ts';

const stations = buildStations(loadDesign('demo'), 16);
const end = stations.z[stations.count - 1] ?? 0;
const maps = [0.5, 0.7, 0.9].map((share) => flatMap(stations, share * end, (z) => 1000 * z));

test('a cross-section between two maps has the depth and width of the screw there', () => {
  const z = 0.63 * end;
  const section = stationSection(stations, maps, z);
  const place = stationPlace(stations, z);
  expect(Math.max(...(section?.depth ?? []))).toBeCloseTo(stationValue(stations.depth, place), 7);
  expect(Math.min(...(section?.depth ?? []))).toBeCloseTo(0, 7);
  const x = Array.from(section?.x ?? []);
  expect(Math.max(...x) - Math.min(...x)).toBeCloseTo(axialGap(stations, place), 7);
  const middle = ((section?.columns ?? 1) >> 1) * (section?.rows ?? 1);
  expect(section?.age[middle]).toBeCloseTo(1000 * z, 2);
});

test('there is none before the melt and beyond the screw', () => {
  expect(stationSection(stations, maps, meltStart(stations, maps) - 1e-4)).toBeNull();
  expect(stationSection(stations, maps, end + 1e-4)).toBeNull();
  expect(stationSection(stations, [], 0.6 * end)).toBeNull();
});

test('values across the head are read off the triangles', () => {
  const head: HeadMap = {
    z: Float32Array.of(0, 0, 1, 1),
    r: Float32Array.of(0, 2, 2, 0),
    triangles: Uint32Array.of(0, 1, 2, 0, 2, 3),
    speed: Float32Array.of(3, 0, 0, 3),
    stream: new Float32Array(4),
    dwell: new Float32Array(4),
    age: Float32Array.of(10, 10, 20, 20),
  };
  const profile = radialProfile(head, 0.25);
  expect(Array.from(profile?.r ?? [])).toEqual([0, 0.5, 2]);
  expect(Array.from(profile?.age ?? [])).toEqual([12.5, 12.5, 12.5]);
  expect(profile?.speed[0]).toBe(3);
  expect(profile?.speed[2]).toBe(0);
  expect(radialProfile(head, 1.5)).toBeNull();
});
