import { describe, expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import type { Stations } from '../../../core/geometry/types.ts';
import type { HeadMap } from '../../../core/path/viewTypes.ts';
import { channelSection, type DwellSection, headSection, meltStart } from '../../../core/present/dwellSection.ts';
import { flightGaps } from '../../../core/present/flightGaps.ts';
import { flatMap } from '../../helpers/flatMaps.ts';
import { changedDemo, expectOk, loadDesign } from '../../helpers/projects.ts';

/** Volume swept by a half-plane's triangles if they were the same all round, m³ (Pappus). */
function revolvedVolume({ z, r, triangles }: DwellSection): number {
  let volume = 0;
  for (let t = 0; t < triangles.length; t += 3) {
    const [a, b, c] = [triangles[t] ?? 0, triangles[t + 1] ?? 0, triangles[t + 2] ?? 0];
    const [za, zb, zc] = [z[a] ?? 0, z[b] ?? 0, z[c] ?? 0];
    const [ra, rb, rc] = [r[a] ?? 0, r[b] ?? 0, r[c] ?? 0];
    volume += ((Math.abs((zb - za) * (rc - ra) - (zc - za) * (rb - ra)) / 2) * 2 * Math.PI * (ra + rb + rc)) / 3;
  }
  return volume;
}

const azimuths = Array.from({ length: 24 }, (_, i) => (2 * Math.PI * i) / 24);

/** Mean over half-planes all round: the volume of the channel. */
const meanVolume = (stations: Stations, maps: Parameters<typeof channelSection>[1]) =>
  azimuths.reduce((sum, azimuth) => sum + revolvedVolume(channelSection(stations, maps, azimuth, 'right')), 0) /
  azimuths.length;

const mapsOf = (stations: Stations, age: (z: number, r: number) => number) => {
  const end = stations.z[stations.count - 1] ?? 0;
  return [0.3, 0.45, 0.6, 0.8, 0.95].map((share) => flatMap(stations, share * end, age));
};

/** The demo without fillets, so that straight-sided maps fill its channel; every flight with as many starts. */
const sharpDemo = (starts = 1) => {
  const project = changedDemo(({ revisions }) => {
    for (const { screw } of revisions) {
      for (const section of screw.sections)
        if (section.kind === 'flighted') Object.assign(section, { rootFilletMm: 0, starts });
    }
  });
  return expectOk(validateDesign(project, project.activeRevision));
};

describe('a half-plane through the channel', () => {
  test.each([
    ['one start', 1],
    ['two starts', 2],
  ])('cuts areas that add up to the free volume: %s', (_name, starts) => {
    const stations = buildStations(sharpDemo(starts), 16);
    const maps = mapsOf(stations, () => 7);
    const start = meltStart(stations, maps);
    const first = stations.z.findIndex((z) => z >= start);
    let free = 0;
    for (let i = first; i + 1 < stations.count; i++) {
      if (!stations.flighted[i]) continue;
      free += (stations.freeVolume[i + 1] ?? 0) - (stations.freeVolume[i] ?? 0);
    }
    // all but the film over the lands
    const volume = meanVolume(stations, maps);
    expect(volume / free).toBeGreaterThan(0.97);
    expect(volume / free).toBeLessThan(1.01);
  });

  test('carries an age that grows evenly along the screw without change', () => {
    const stations = buildStations(sharpDemo(), 16);
    const maps = mapsOf(stations, (z) => 1000 * z);
    const section = channelSection(stations, maps, 1, 'right');
    const [first, last] = [maps[0]?.z ?? 0, maps.at(-1)?.z ?? 0];
    let checked = 0;
    section.z.forEach((z, k) => {
      if (z < first || z > last) return;
      // between two maps the age at mid-channel counts, half a pitch off at most
      expect(Math.abs((section.age[k] ?? 0) - 1000 * z)).toBeLessThan(8);
      checked++;
    });
    expect(checked).toBeGreaterThan(300);
  });

  test('lies between root and barrel and within the molten stretch', () => {
    const stations = buildStations(loadDesign('demo'), 16);
    const maps = mapsOf(stations, () => 7);
    const start = meltStart(stations, maps);
    const section = channelSection(stations, maps, 0.3, 'right');
    const end = stations.z[stations.count - 1] ?? 0;
    const bore = stations.barrelRadius[0] ?? 0;
    expect(section.triangles.length).toBeGreaterThan(900);
    expect(Math.min(...section.z)).toBeGreaterThanOrEqual(start - 1e-7);
    expect(Math.max(...section.z)).toBeLessThanOrEqual(end + 1e-7);
    expect(Math.max(...section.r)).toBeLessThanOrEqual(bore + 1e-7);
    expect(Math.min(...section.r)).toBeGreaterThan(0.3 * bore);
    expect(Math.max(...section.triangles)).toBeLessThan(section.z.length);
  });

  test('without maps is empty', () => {
    const stations = buildStations(loadDesign('demo'), 8);
    expect(channelSection(stations, [], 0, 'right').triangles).toHaveLength(0);
  });
});

test('fills the channel from land to land where the lead changes along it', () => {
  const project = changedDemo(({ revisions }) => {
    for (const { screw } of revisions) {
      for (const section of screw.sections) {
        if (section.kind === 'flighted') Object.assign(section, { rootFilletMm: 0, leadStartMm: 18, leadEndMm: 12 });
      }
    }
  });
  const stations = buildStations(expectOk(validateDesign(project, project.activeRevision)), 16);
  const maps = mapsOf(stations, () => 7);
  const gaps = flightGaps(stations, 1, 'right').filter(({ before, after, from, to }) => before > from && after < to);
  const whole = gaps.filter(({ before }) => before > meltStart(stations, maps));
  expect(whole.length).toBeGreaterThan(2);
  const { z } = channelSection(stations, maps, 1, 'right');
  for (const { before, after } of whole) {
    const inside = Array.from(z).filter((at) => at > before && at < after);
    // the demo's lands are 2 mm wide
    expect(Math.min(...inside) - before).toBeCloseTo(0.001, 6);
    expect(after - Math.max(...inside)).toBeCloseTo(0.001, 6);
  }
});

describe('gaps between flights', () => {
  const stations = buildStations(loadDesign('demo'), 16);

  test('lie half a pitch from where the flight crosses, and move with the half-plane', () => {
    const pitch = stations.lead[2] ?? 0;
    const [first] = flightGaps(stations, 0, 'right').filter(({ middle }) => middle > 0);
    // the flight's centre is at z = 0 on the +x side
    expect(first?.middle).toBeCloseTo(pitch / 2, 9);
    const [turned] = flightGaps(stations, Math.PI, 'right').filter(({ middle }) => middle > 1e-9);
    expect(turned?.middle).toBeCloseTo(pitch, 9);
  });

  test('of a left-hand screw are those of the mirrored half-plane', () => {
    const right = flightGaps(stations, 0.7, 'right').map(({ middle }) => middle);
    expect(flightGaps(stations, -0.7, 'left').map(({ middle }) => middle)).toEqual(right);
  });
});

test('the head begins where the screw ends, with dwell over its mean', () => {
  const head: HeadMap = {
    z: Float32Array.of(0, 0, 1, 1),
    r: Float32Array.of(0, 1, 1, 0),
    triangles: Uint32Array.of(0, 1, 2, 0, 2, 3),
    speed: new Float32Array(4),
    stream: new Float32Array(4),
    dwell: Float32Array.of(0, 2, 4, 8),
    age: Float32Array.of(10, 12, 14, 18),
  };
  expect(headSection(head, 0.5, 4).triangles).toEqual(Uint32Array.of(0, 2, 3));
  expect(headSection(head, 0.1, 4).triangles).toHaveLength(6);
  expect(headSection(head, 0.1, 4).dwell).toEqual(Float32Array.of(0, 0.5, 1, 2));
  expect(headSection(head, 0.1, 4).age).toEqual(head.age);
});
