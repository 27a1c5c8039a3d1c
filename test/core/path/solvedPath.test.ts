import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { solveChannel } from '../../../core/flow/field/channelSolver.ts';
import { reachLaw } from '../../../core/path/channelField.ts';
import { createFieldCache } from '../../../core/path/fieldCache.ts';
import { solvedPath } from '../../../core/path/solvedPath.ts';
import { drivenPoint } from '../../../core/prediction/drivenPoint.ts';
import { createMachine } from '../../../core/prediction/machine.ts';
import { predict } from '../../../core/prediction/predict.ts';
import type { Prediction } from '../../../core/prediction/types.ts';
import { anyDesign, pinned } from '../../helpers/arbitraries.ts';
import { demoC } from '../../helpers/edgeProjects.ts';
import { nonFinite } from '../../helpers/finite.ts';
import { changedDemo, expectOk, loadDesign, revisionAt } from '../../helpers/projects.ts';

const solved = { fields: 'solved', curvePoints: 0 } as const;

/** Capacities alone may be without bound. */
const unbound = /^capacities\.\d+\.(volumeFlow|reserve)$/;

const meltVolume = ({ residence }: Prediction) => residence.parts.reduce((sum, part) => sum + part.volume, 0);

describe('the demo', () => {
  const cache = createFieldCache();
  let a: Prediction;
  let c: Prediction;

  beforeAll(() => {
    a = predict(loadDesign('demo', 'A'), solved, undefined, cache);
    c = predict(loadDesign('demo', 'C'), solved, undefined, cache);
  }, 120_000);

  test('converges, finite, mean residence = melt volume over flow', () => {
    for (const prediction of [a, c]) {
      expect(prediction.converged).toBe(true);
      expect(nonFinite(prediction, unbound)).toEqual([]);
      const mean = meltVolume(prediction) / prediction.output.volumeFlow;
      expect(Math.abs(prediction.residence.mean / mean - 1)).toBeLessThan(1e-6);
    }
  });

  test('times are in order, and washing out to a purity takes as long as that share of the flow', () => {
    for (const { residence } of [a, c]) {
      const { min, t50, t95, t99, washout99, washout999, mean } = residence;
      const rising = [min, t50, mean, t95, t99, washout999];
      expect([...rising].sort((p, q) => p - q)).toEqual(rising);
      expect(washout99).toBe(t99);
      expect(residence.time.every((time, i) => i === 0 || time >= residence.time[i - 1])).toBe(true);
    }
  });

  test('the flat shoulder of A holds dead melt that the cone of C does not', () => {
    const corner = (prediction: Prediction) =>
      prediction.dead.spots
        .filter(({ part, cause }) => part !== 'channel' && cause === 'corner')
        .reduce((sum, { volume }) => sum + volume, 0);
    expect(corner(a)).toBeGreaterThan(50e-9);
    expect(corner(c)).toBe(0);
    expect(a.dead.fractionOver3).toBeGreaterThan(1.2 * c.dead.fractionOver3);
    expect(a.dead.fractionOver5).toBeLessThan(a.dead.fractionOver3);
  });

  test('every spot has a place on the machine, an age above the mean, a fate and a remedy', () => {
    const { geometry } = a;
    for (const spot of a.dead.spots) {
      expect(spot.z).toBeGreaterThan(0);
      expect(spot.z).toBeLessThan(geometry.tipEnd + 0.05);
      expect(spot.zFrom).toBeLessThan(spot.zTo);
      expect(spot.r).toBeGreaterThanOrEqual(0);
      expect(spot.r).toBeLessThanOrEqual(7.001e-3);
      expect(spot.meanAge).toBeGreaterThan(a.residence.mean);
      expect(spot.extent).toBeGreaterThan(0);
      expect(spot.remedy.length).toBeGreaterThan(20);
    }
    expect(a.findings.find(({ code }) => code === 'dead-spot')?.change).toBe(a.dead.spots[0]?.remedy);
  });

  test('older melt is further degraded', () => {
    const byAge = a.dead.spots.filter(({ part }) => part === 'tip').sort((p, q) => p.meanAge - q.meanAge);
    const extents = byAge.map(({ extent }) => extent ?? 0);
    expect([...extents].sort((p, q) => p - q)).toEqual(extents);
  });

  test('maps lie inside the machine; ages grow along the channel and end where the head begins', () => {
    const { fields } = a;
    if (!fields?.head) throw new Error('no fields');
    for (const map of fields.channel) {
      expect(map.x.length).toBe(map.columns * map.rows);
      for (const r of map.r) expect(r).toBeGreaterThan(3.99e-3);
      for (const r of map.r) expect(r).toBeLessThan(7.01e-3);
    }
    const means = fields.channel.map(({ meanAge }) => meanAge);
    expect([...means].sort((p, q) => p - q)).toEqual(means);
    const channel = a.residence.parts[0]?.mean ?? 0;
    expect(means[means.length - 1] ?? 0).toBeLessThan(channel);
    const youngest = Math.min(...fields.head.age);
    expect(youngest).toBeGreaterThanOrEqual(0.999 * channel);
    for (const node of fields.head.triangles) expect(node).toBeLessThan(fields.head.z.length);
  });

  test('again: nothing is solved, the same comes out', () => {
    const before = [cache.channel.misses, cache.head.misses];
    const again = predict(loadDesign('demo', 'A'), solved, undefined, cache);
    expect([cache.channel.misses, cache.head.misses]).toEqual(before);
    expect(again.output.volumeFlow).toBe(a.output.volumeFlow);
    expect(again.dead).toEqual(a.dead);
  });

  test('a slower screw keeps the melt longer', () => {
    const project = changedDemo((changed) => {
      changed.process.screwSpeedRpm /= 2;
    });
    const slow = predict(expectOk(validateDesign(project, 'A')), solved, undefined, cache);
    expect(slow.residence.mean).toBeGreaterThan(1.6 * a.residence.mean);
    expect(slow.residence.t99).toBeGreaterThan(1.6 * a.residence.t99);
  });

  test('root fillets leave less dead melt in the channel', () => {
    const project = changedDemo((changed) => {
      for (const section of revisionAt(changed, 0).screw.sections) {
        if (section.kind === 'flighted') section.rootFilletMm = 1.5;
      }
    });
    const filleted = predict(expectOk(validateDesign(project, 'A')), solved, undefined, cache);
    const inChannel = ({ dead }: Prediction) =>
      dead.spots.filter(({ part }) => part === 'channel').reduce((sum, { volume }) => sum + volume, 0);
    expect(inChannel(filleted)).toBeLessThan(0.9 * inChannel(a));
  });
});

describe('where there is nothing to solve', () => {
  test('without flow there are no fields, and the residence says why', () => {
    const prediction = predict(loadDesign('pla-pellet-misfit'), solved);
    expect(prediction.fields).toBeNull();
    expect(prediction.dead.spots).toEqual([]);
    expect(prediction.residence.basis.doubt).toContain('Nothing flows');
  });

  test('a head that the solver refuses is left to the formulas, and says so', () => {
    const project = demoC((revision) => {
      const { segments } = revision.nozzle;
      for (const segment of segments) {
        if (segment.endDiameterMm < 2) segment.endDiameterMm = 0.12;
        if (segment.startDiameterMm < 2) segment.startDiameterMm = 0.12;
      }
    });
    const prediction = predict(expectOk(validateDesign(project, 'C')), solved);
    expect(prediction.fields?.head).toBeNull();
    expect(prediction.output.volumeFlow).toBeGreaterThan(0);
    expect(prediction.output.basis.doubt).toContain('not solved');
    expect(prediction.residence.basis.doubt).toContain('The orifice is nearly closed');
    expect(nonFinite(prediction, unbound)).toEqual([]);
  });
});

test('each reach carries what its own cross-section, solved directly, carries', () => {
  const project = changedDemo((changed) => {
    for (const revision of changed.revisions) revision.screw.radialClearanceMm = 0;
  });
  const machine = createMachine(expectOk(validateDesign(project, 'C')), 8);
  const path = solvedPath(machine, drivenPoint(machine), createFieldCache());
  if (!path) throw new Error('nothing flows');
  const { state } = path.driven.point;
  const { stations } = machine;
  let compared = 0;
  state.march.flows.forEach((flow, i) => {
    if (!flow || i % 12 !== 0 || (state.march.fill[i] ?? 0) < 1) return;
    const middle = (values: Float64Array) => ((values[i] ?? 0) + (values[i + 1] ?? 0)) / 2;
    const barrelRadius = stations.barrelRadius[i] ?? 0;
    const section = {
      kind: 'helical',
      barrelRadius,
      rootRadius: middle(stations.rootRadius),
      lead: middle(stations.lead),
      starts: 1,
      flightAxialWidth: middle(stations.flightWidth),
      flankAngle: 0,
      rootFillet: middle(stations.rootFillet),
    } as const;
    const barrelSpeed = 2 * Math.PI * barrelRadius * state.screwSpeed;
    const direct = solveChannel(section, reachLaw(machine, state, i), { barrelSpeed }, flow.gradient);
    expect(Math.abs(direct.flowRate / state.volumeFlow - 1)).toBeLessThan(0.006);
    expect(Math.abs(flow.channelPower / direct.barrelPower - 1)).toBeLessThan(0.015);
    compared++;
  });
  expect(compared).toBeGreaterThan(2);
}, 60_000);

test('any design: finite, mass in balance, never throws', () => {
  fc.assert(
    fc.property(anyDesign, (design) => {
      const prediction = predict(design, { ...solved, stationsPerTurn: 4 });
      expect(nonFinite(prediction, unbound)).toEqual([]);
      const { residence, output } = prediction;
      if (output.volumeFlow === 0) return;
      expect(Math.abs(residence.mean / (meltVolume(prediction) / output.volumeFlow) - 1)).toBeLessThan(1e-6);
    }),
    pinned(3),
  );
}, 120_000);
