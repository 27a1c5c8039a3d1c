import { describe, expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import { meltTemperatures } from '../../../core/heat/meltTemperature.ts';
import { wallTemperatures } from '../../../core/heat/wallTemperature.ts';
import { demoC } from '../../helpers/edgeProjects.ts';
import { expectOk, loadDesign } from '../../helpers/projects.ts';

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

describe('walls', () => {
  test('heated zones stand at their set temperature, the feed block near its coolant', () => {
    const { z, barrel: wall, heaters } = wallTemperatures(design);
    barrel.zones.forEach((zone) => {
      const middle = wall[z.findIndex((at) => at >= (zone.start + zone.end) / 2)];
      if (zone.kind === 'heated') expect(Math.abs(middle - zone.setTemperature)).toBeLessThan(3);
      if (zone.kind === 'cooled') expect(Math.abs(middle - zone.coolantTemperature)).toBeLessThan(30);
    });
    for (const heater of heaters) expect(heater.held).toBe(true);
  });

  test('without its heat break the feed end is warmer', () => {
    const open = expectOk(
      validateDesign(
        demoC((revision) => {
          revision.barrel.heatBreak = null;
        }),
        'C',
      ),
    );
    const end = (d: typeof design) => wallTemperatures(d).barrel[Math.floor((240 * 40) / 162)];
    expect(end(open)).toBeGreaterThan(end(design) + 2);
  });

  test('a heater without the watts gives what it has and says so', () => {
    const weak = expectOk(
      validateDesign(
        demoC((revision) => {
          for (const zone of revision.barrel.zones) if (zone.kind === 'heated') zone.maxPowerW = 1;
        }),
        'C',
      ),
    );
    const { heaters } = wallTemperatures(weak);
    expect(heaters.some((heater) => !heater.held)).toBe(true);
    for (const heater of heaters) expect(heater.power).toBeLessThanOrEqual(1 + 1e-9);
  });
});
