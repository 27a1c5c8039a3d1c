import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Design } from '../../../core/design/types.ts';
import { feedCapacity, feedPlace } from '../../../core/feed/capacity.ts';
import { conveyorPower } from '../../../core/feed/conveyor.ts';
import { advanceOfAngle, angleOfAdvance, plugConveying } from '../../../core/feed/plug.ts';
import { solidsState } from '../../../core/feed/solids.ts';
import type { SolidsOptions, SolidsState } from '../../../core/feed/solidsTypes.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import { changedFriction, changedMaterial, demo, evenScrew } from './made.ts';

/** One evaluation with all that went in. */
function run(design: Design, share: number, options: SolidsOptions = {}, speed = 0.5) {
  const stations = buildStations(design, 12);
  const place = feedPlace(design, stations);
  if (!place) throw new Error('no flight under the opening');
  const meltsFrom = stations.z.findIndex((z) => z > 0.07);
  const capacity = feedCapacity(design, place, speed);
  const massFlow = share * capacity.massFlow;
  const state = solidsState(design, stations, place, massFlow, speed, meltsFrom, options);
  return { design, stations, place, meltsFrom, massFlow, speed, state, capacity };
}

const over = ({ stations, state }: ReturnType<typeof run>) =>
  state.heat.reduce((sum, heat, i) => sum + heat * (stations.z[i + 1] - stations.z[i]), 0);

const even = evenScrew(0.0035, changedFriction(0.4, 0.2));

describe('a packed plug', () => {
  const made = run(even, 0.5);
  const { state, stations, place, meltsFrom, massFlow, speed } = made;

  test('carries the flow: density x free volume x advance', () => {
    const advance = advanceOfAngle(state.conveyingAngle, Math.tan(stations.helixBarrel[place.station]));
    const carried = even.material.bulkDensity * place.volumePerTurn * speed * advance;
    expect(carried / massFlow).toBeCloseTo(1, 9);
    expect(state.conveyingAngle).toBeLessThan(state.freeAngle);
    expect(state.freeAngle).toBeCloseTo(plugConveying(place.plug, 0.4, 0.2).angle, 12);
  });

  test('pressure grows as Darnell & Mol say, put back into their equation', () => {
    const from = stations.z.findIndex((z) => z > 0.045);
    const along = (stations.z[meltsFrom] - stations.z[from]) / Math.sin(stations.helixMean[from]);
    const term = (stations.depth[from] / along) * Math.log(state.pressure[meltsFrom] / state.pressure[from]);
    expect(term).toBeGreaterThan(0);
    expect(plugConveying(place.plug, 0.4, 0.2, term).angle).toBeCloseTo(state.conveyingAngle, 6);
  });

  test('power over a length is that of Tadmor & Klein (from memory)', () => {
    const from = stations.z.findIndex((z) => z > 0.045);
    const shorter = run(even, 0.5).state;
    const power = (state_: SolidsState) => {
      let sum = 0;
      for (let i = from; i < meltsFrom; i++) sum += state_.heat[i] * (stations.z[i + 1] - stations.z[i]);
      return sum + (massFlow / even.material.bulkDensity) * (state_.pressure[meltsFrom] - state_.pressure[from]);
    };
    const [p1, p2] = [state.pressure[from], state.pressure[meltsFrom]];
    const along = (stations.z[meltsFrom] - stations.z[from]) / Math.sin(stations.helixBarrel[from]);
    const published = Math.PI * speed * even.barrel.boreDiameter * stations.widthBarrel[from] * along * 0.4;
    expect(power(shorter) / ((published * Math.cos(state.conveyingAngle) * (p2 - p1)) / Math.log(p2 / p1))).toBeCloseTo(
      1,
      9,
    );
  });

  test('what the screw puts in is heat and pressure', () => {
    const rise =
      state.pressure[meltsFrom] - state.pressure[stations.z.findIndex((z) => z >= even.barrel.feedOpening.start)];
    const given = 2 * Math.PI * speed * state.torque;
    expect((over(made) + (massFlow / even.material.bulkDensity) * rise) / given).toBeCloseTo(1, 9);
  });

  test('without friction on a shallow screw all heat comes from slip on the barrel', () => {
    const thin = evenScrew(0.0002, changedFriction(0.01, 0));
    const shallow = run({ ...thin, screw: { ...thin.screw, radialClearance: 0 } }, 0.5);
    const i = shallow.meltsFrom - 3;
    const { helixBarrel, widthBarrel, pressure } = { ...shallow.stations, ...shallow.state };
    const barrelSpeed = Math.PI * demo.barrel.boreDiameter * shallow.speed;
    const slip = (barrelSpeed * Math.sin(helixBarrel[i])) / Math.sin(helixBarrel[i] + shallow.state.conveyingAngle);
    const mean = (pressure[i] + pressure[i + 1]) / 2;
    const heat = (0.01 * mean * slip * widthBarrel[i]) / Math.sin(helixBarrel[i]);
    expect(mean).toBeGreaterThan(0);
    expect(shallow.state.heat[i] / heat).toBeGreaterThan(0.98);
    expect(shallow.state.heat[i] / heat).toBeLessThan(1.02);
  });

  test('nothing is left for pressure at the free capacity; more with less flow', () => {
    const at = (share: number) => run(even, share).state.nominal.buildable;
    const free = at(1 - 1e-9);
    expect(free / run(even, 1).state.pressure[place.station]).toBeCloseTo(1, 4);
    expect(at(0.5)).toBeGreaterThan(at(0.8));
    expect(at(0.8)).toBeGreaterThan(free);
  });
});

describe('limits', () => {
  test('a nut held from turning goes a whole lead per turn', () => {
    expect(angleOfAdvance(1, 0.3)).toBe(Math.PI / 2);
    expect(advanceOfAngle(Math.PI / 2, 0.3)).toBe(1);
    for (const advance of [0, 0.1, 0.7, 0.99]) {
      expect(advanceOfAngle(angleOfAdvance(advance, 0.3), 0.3)).toBeCloseTo(advance, 12);
    }
  });

  test.each([
    [0.2, 0.4],
    [0, 0.2],
  ])('friction %s on the barrel, %s on the screw: no plug, granules tumble as in a trough', (onBarrel, onScrew) => {
    const { state, massFlow, stations } = run(changedFriction(onBarrel, onScrew), 0.9);
    expect(state).toMatchObject({ limitedBy: 'trough', packedFrom: null, freeAngle: 0 });
    expect(state.nominal).toMatchObject({ freeFlow: 0, buildable: 0 });
    expect(Math.max(...state.pressure)).toBe(0);
    expect(Math.max(...state.fill.slice(0, 20))).toBeCloseTo(0.27, 2);
    const span = stations.z.findIndex((z) => z > 0.07);
    const first = stations.z.findIndex((z) => z >= demo.barrel.feedOpening.start);
    const length = stations.z[span] - stations.z[first];
    expect(2 * Math.PI * 0.5 * state.torque).toBeCloseTo(conveyorPower(massFlow, length), 12);
  });

  test('no flow, no speed, no flight', () => {
    const none = run(even, 0).state;
    expect(none.conveyingAngle).toBe(0);
    expect(none.nominal.buildable).toBeGreaterThan(run(even, 0.5).state.nominal.buildable);
    const stations = buildStations(even, 8);
    const place = feedPlace(even, stations);
    for (const still of [
      solidsState(even, stations, place, 1e-5, 0, 30),
      solidsState(even, stations, null, 1e-5, 1, 30),
    ]) {
      expect(still).toMatchObject({ torque: 0, conveyingAngle: 0, packedFrom: null });
      expect(Math.max(...still.pressure, ...still.heat)).toBe(0);
    }
  });

  test('a self-locking plug is capped where granules yield at the wall, and says so', () => {
    const grippy = changedMaterial({ mechanical: null }, changedFriction(0.9, 0.02, even));
    const { state } = run(grippy, 0.01);
    expect(state.capped).toBe(true);
    expect(Math.max(...state.pressure)).toBeCloseTo(state.pressureLimit, 0);
    expect(state.pressureLimit).toBeCloseTo(30e6 / Math.sqrt(3) / 0.9, 0);
    expect(state.doubts.join()).toContain('capped');
  });
});

describe('the melt’s pressure', () => {
  test('is held by no longer a packed stretch than it takes', () => {
    const high = run(even, 0.3, { meltPressure: 2000 });
    const low = run(even, 0.3, { meltPressure: 1000 });
    expect(high.state.pressure[high.meltsFrom]).toBeCloseTo(2000, 6);
    expect(high.state.holds).toBe(true);
    expect(high.state.packedFrom ?? 1).toBeLessThan(low.state.packedFrom ?? 0);
    expect(high.state.torque).toBeGreaterThan(low.state.torque);
    expect(run(even, 0.3, { meltPressure: 0 }).state.packedFrom).toBeNull();
  });

  test('that is too high is not held, and that is said', () => {
    const { state } = run(even, 0.9, { meltPressure: 5e7 });
    expect(state.holds).toBe(false);
    expect(state.doubts.join()).toContain('back');
  });
});

describe('starved by a feeder', () => {
  const slow = { ...even, process: { ...even.process, starvedRate: 2e-6 } };
  const stations = buildStations(slow, 12);
  const place = feedPlace(slow, stations);
  const at = (options: SolidsOptions) => solidsState(slow, stations, place, 2e-6, 0.5, 60, options);

  test('granules fill just what they need: fill x free advance carries the flow', () => {
    const { fill, freeAngle, limitedBy, packedFrom } = at({});
    const i = stations.z.findIndex((z) => z > 0.04);
    const free = advanceOfAngle(freeAngle, Math.tan(stations.helixBarrel[i]));
    const carried = slow.material.bulkDensity * stations.freeArea[i] * stations.lead[i] * 0.5 * free * fill[i];
    expect(carried / 2e-6).toBeCloseTo(1, 6);
    expect(fill[i]).toBeLessThan(0.5);
    expect({ limitedBy, packedFrom }).toEqual({ limitedBy: 'feeder', packedFrom: null });
  });

  test('a feeder that offers more than is taken floods the screw like a hopper', () => {
    const fed = (starvedRate: number | null) => {
      const design = { ...even, process: { ...even.process, starvedRate } };
      return solidsState(design, stations, feedPlace(design, stations), 2e-6, 0.5, 60, { meltPressure: 0 });
    };
    const full = fed(null);
    expect({ ...fed(4e-6), limitedBy: full.limitedBy }).toEqual(full);
    expect(fed(2e-6).fill[30]).toBeLessThan(1);
    expect(fed(2e-6).nominal.torque).not.toBe(full.nominal.torque);
  });

  test('and back up before the melt only as far as its pressure asks', () => {
    const { packedFrom, fill } = at({ meltPressure: 1000 });
    expect(packedFrom).toBeGreaterThan(0.03);
    expect(fill[59]).toBe(1);
    expect(fill[25]).toBeLessThan(0.5);
  });
});

test('doubts: soft granules, granules as large as the channel', () => {
  expect(run(even, 0.5, { softensAt: 0.05 }).state.doubts.join()).toContain('soften');
  expect(run(even, 0.5, { softensAt: 0.2 }).state.doubts).toEqual([]);
  expect(run(evenScrew(0.0025, even), 0.5).state.doubts.join()).toContain('large');
});

test('the friction’s range brackets the nominal', () => {
  const { state } = run(demo, 0.3);
  expect(state.low.freeFlow).toBeLessThanOrEqual(state.nominal.freeFlow);
  expect(state.high.freeFlow).toBeGreaterThanOrEqual(state.nominal.freeFlow);
  expect(state.low.buildable).toBeLessThanOrEqual(state.nominal.buildable);
  expect(state.high.buildable).toBeGreaterThanOrEqual(state.nominal.buildable);
});

test('a plain stretch takes pressure off the plug', () => {
  const [section] = even.screw.sections;
  const plain = { kind: 'plain' as const, length: 0.02, rootDiameterStart: 0.007, rootDiameterEnd: 0.007 };
  const broken = {
    ...even,
    screw: { ...even.screw, sections: [{ ...section, length: 0.05 }, plain, { ...section, length: 0.09 }] },
  };
  const { state, stations } = run(broken, 0.5);
  const enter = stations.z.findIndex((z) => z > 0.0501);
  expect(state.pressure[enter + 2]).toBeLessThan(state.pressure[enter]);
});

test('stays finite whatever comes in', () => {
  const stations = buildStations(demo, 8);
  const unit = fc.double({ min: 0, max: 1, noNaN: true });
  const property = fc.property(unit, unit, unit, unit, unit, unit, (onBarrel, onScrew, flow, speed, from, pressure) => {
    const design = changedFriction(onBarrel, onScrew);
    const place = feedPlace(design, stations);
    const meltsFrom = Math.floor(from * 2 * stations.count) - 3;
    const options = pressure > 0.5 ? { meltPressure: 1e8 * (pressure - 0.5) } : {};
    const state = solidsState(design, stations, place, 1e-3 * flow ** 3, 10 * speed ** 3, meltsFrom, options);
    const numbers = [...state.pressure, ...state.fill, ...state.heat, state.torque, state.conveyingAngle];
    const ends = [state.nominal, state.low, state.high].flatMap((each) => Object.values(each));
    for (const value of [...numbers, ...ends]) expect(Number.isFinite(value) && value >= 0).toBe(true);
    for (const fill of state.fill) expect(fill).toBeLessThanOrEqual(1);
  });
  fc.assert(property, { seed: 11, numRuns: 120 });
});
