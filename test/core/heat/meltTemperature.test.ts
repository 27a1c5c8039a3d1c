import { describe, expect, test } from 'vitest';
import { buildStations } from '../../../core/geometry/stations.ts';
import { meltTemperatures } from '../../../core/heat/meltTemperature.ts';
import { loadDesign } from '../../helpers/projects.ts';

const design = loadDesign('demo', 'C');
const stations = buildStations(design, 16);
const none = new Float64Array(stations.count);
const walls = (temperature: number) => ({
  barrel: new Float64Array(stations.count).fill(temperature),
  screw: new Float64Array(stations.count).fill(temperature),
});
const { material, process, barrel } = design;

describe('granules and melt', () => {
  test('stay at feed temperature before the opening and never pass the wall without shear', () => {
    const melt = meltTemperatures(design, stations, walls(470), 5e-5, none);
    melt.temperature.forEach((value, i) => {
      if (stations.z[i] <= barrel.feedOpening.start) expect(value).toBe(process.feedTemperature);
      expect(value).toBeLessThanOrEqual(470 + 1e-9);
      if (i > 0) expect(value).toBeGreaterThanOrEqual(melt.temperature[i - 1] - 1e-9);
    });
  });

  test('take up exactly the heat that the walls give', () => {
    // far below saturation every kelvin counts: compare with the closed form of a constant channel
    const mass = 1e-3;
    const short = meltTemperatures(design, stations, walls(process.feedTemperature + 10), mass, none);
    const long = meltTemperatures(design, stations, walls(process.feedTemperature + 10), mass / 2, none);
    const rise = (melt: typeof short) => 1 - (melt.temperature[stations.count - 1] - process.feedTemperature) / 10;
    // approach is exponential in exchange over flow: half the flow squares what is left
    expect(rise(long)).toBeCloseTo(rise(short) ** 2, 9);
  });

  test('more flow melts later; the front moves without jumps', () => {
    const front = (mass: number) => {
      const { start } = meltTemperatures(design, stations, walls(470), mass, none);
      return stations.z[start.reach] + (1 - start.share) * (stations.z[start.reach + 1] - stations.z[start.reach]);
    };
    let before = front(2e-5);
    for (let mass = 2.1e-5; mass < 1.5e-4; mass += 1e-6) {
      const now = front(mass);
      expect(now).toBeGreaterThanOrEqual(before);
      expect(now - before).toBeLessThan(0.01);
      before = now;
    }
  });

  test('walls below melting never melt it', () => {
    const { start, molten } = meltTemperatures(design, stations, walls(material.melting - 5), 1e-6, none);
    expect(start.reach).toBe(stations.count - 1);
    expect(Math.max(...molten)).toBe(0);
  });

  test('a trickle reaches the wall’s temperature, no more', () => {
    const { temperature } = meltTemperatures(design, stations, walls(470), 1e-12, none);
    expect(temperature[stations.count - 1]).toBeCloseTo(470, 6);
  });

  test('heat of shear warms it above the wall by dissipation over exchange', () => {
    const warm = meltTemperatures(design, stations, walls(470), 1e-6, new Float64Array(stations.count).fill(20));
    expect(warm.temperature[stations.count - 1]).toBeGreaterThan(470.5);
  });
});
