import { expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { feedCapacity, feedPlace } from '../../../core/feed/capacity.ts';
import { troughFilling } from '../../../core/feed/conveyor.ts';
import { blockedPassages } from '../../../core/feed/grainFit.ts';
import { hopperState } from '../../../core/feed/hopper.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import type { Project, Revision } from '../../../core/project/schema.ts';
import { demoC } from '../../helpers/edgeProjects.ts';
import { expectOk } from '../../helpers/projects.ts';

const made = (change: (revision: Revision, project: Project) => void) => {
  const design = expectOk(validateDesign(demoC(change), 'C'));
  return { design, place: feedPlace(design, buildStations(design, 8)) };
};
const withFriction = (onBarrel: number, onScrew: number) =>
  made((revision, project) => {
    const material = project.materials.find(({ id }) => id === revision.materialId);
    if (!material) throw new Error('no material');
    for (const [friction, value] of [
      [material.frictionOnBarrel, onBarrel],
      [material.frictionOnScrew, onScrew],
    ] as const) {
      friction.value = value;
      delete friction.low;
      delete friction.high;
    }
  });

test('never more than free volume x bulk density x speed, never less than a trough’s share of it', () => {
  for (const [onBarrel, onScrew] of [
    [0.6, 0],
    [0.4, 0.2],
    [0.2, 0.4],
    [0.05, 0.5],
  ] as const) {
    const { design, place } = withFriction(onBarrel, onScrew);
    const full = (place?.volumePerTurn ?? 0) * design.material.bulkDensity * 2;
    const feed = feedCapacity(design, place, 2);
    expect(feed.massFlow).toBeLessThanOrEqual(full);
    expect(feed.massFlow).toBeGreaterThanOrEqual(troughFilling * full * (1 - 1e-12));
    expect(feed.massFlowLow).toBeLessThanOrEqual(feed.massFlow * (1 + 1e-12));
    expect(feed.massFlowHigh).toBeGreaterThanOrEqual(feed.massFlow * (1 - 1e-12));
  }
});

test('says when friction carries no plug and the trough’s share was taken', () => {
  const { design, place } = withFriction(0.1, 0.4);
  expect(feedCapacity(design, place, 1)).toMatchObject({ trough: true, efficiency: troughFilling });
  const good = withFriction(0.5, 0.1);
  expect(feedCapacity(good.design, good.place, 1).trough).toBe(false);
});

test('grows in proportion to speed', () => {
  const { design, place } = made(() => {});
  expect(feedCapacity(design, place, 2).massFlow / feedCapacity(design, place, 1).massFlow).toBeCloseTo(2, 12);
});

test('the place is the shallowest flighted one under the opening', () => {
  const { design, place } = made(() => {});
  const stations = buildStations(design, 8);
  const { start, length } = design.barrel.feedOpening;
  const under = Array.from(stations.z.keys()).filter((i) => stations.z[i] >= start && stations.z[i] <= start + length);
  expect(place?.depth).toBeCloseTo(Math.min(...under.map((i) => stations.depth[i])), 12);
});

test('no flight under the opening feeds nothing', () => {
  expect(feedCapacity(made(() => {}).design, null, 1)).toMatchObject({ massFlow: 0, massFlowHigh: 0 });
});

test('stirring or shaking halves the outlet that is wanted; long grains count longer', () => {
  const still = made((revision) => {
    revision.hopper.agitation = 'none';
  }).design;
  const shaken = made((revision) => {
    revision.hopper.agitation = 'vibration';
  }).design;
  expect(hopperState(shaken).outletRatioWanted).toBeLessThan(hopperState(still).outletRatioWanted);
  const long = made((revision, project) => {
    for (const material of project.materials) material.grain.aspectRatio.value = 4;
    revision.hopper.agitation = 'none';
  }).design;
  expect(hopperState(long).outletRatio).toBeLessThan(hopperState(still).outletRatio);
  expect(hopperState(long).discharge).toBeLessThan(hopperState(still).discharge);
});

test('feeds no more than the hopper lets out, and says what the screw would take', () => {
  const { design, place } = made((revision) => {
    revision.hopper.outletDiameterMm = 4.4;
  });
  const { discharge } = hopperState(design);
  const feed = feedCapacity(design, place, 1);
  expect(feed.massFlow).toBe(discharge);
  expect(feed.intake).toBeGreaterThan(discharge);
  const open = made(() => {});
  expect(feedCapacity(open.design, open.place, 1).massFlow).toBe(feed.intake);
});

test.each([
  ['outlet', (r: Revision) => Object.assign(r.hopper, { outletDiameterMm: 2 })],
  ['openingLength', (r: Revision) => Object.assign(r.barrel.feedOpening, { lengthMm: 2 })],
  ['openingWidth', (r: Revision) => Object.assign(r.barrel.feedOpening, { widthMm: 2 })],
] as const)('a granule wider than the %s does not pass', (id, change) => {
  const { design, place } = made(change);
  expect(blockedPassages(design, place).map((passage) => passage.id)).toEqual([id]);
  expect(blockedPassages(made(() => {}).design, place)).toEqual([]);
});
