import { describe, expect, test } from 'vitest';
import type { Design } from '../../../core/design/types.ts';
import { buildStations } from '../../../core/geometry/stations.ts';
import { type HeaterCapacity, heaterCapacity } from '../../../core/heat/heaterCapacity.ts';
import type { Load } from '../../../core/heat/stream.ts';
import { wallTemperatures } from '../../../core/heat/wallTemperature.ts';
import { loadDesign } from '../../helpers/projects.ts';

const design = loadDesign('demo', 'C');
const cells = { barrel: 80, nozzle: 8 };

/** The demo with watts in its heated zones in order, and in the nozzle. */
const powered = (zones: readonly number[], nozzle: number): Design => {
  let next = 0;
  return {
    ...design,
    nozzle: { ...design.nozzle, maxPower: nozzle },
    barrel: {
      ...design.barrel,
      zones: design.barrel.zones.map((zone) => (zone.kind === 'heated' ? { ...zone, maxPower: zones[next++] } : zone)),
    },
  };
};

function loadOn(own: Design, massFlow: number): Load {
  const stations = buildStations(own, 8);
  const reaches = stations.count - 1;
  return { stations, massFlow, dissipation: new Float64Array(reaches).fill(2 / reaches), headDissipation: 0.5 };
}

const at = (own: Design, massFlow: number) => wallTemperatures(own, loadOn(own, massFlow), cells);
const capacity = (own: Design): HeaterCapacity => heaterCapacity(own, loadOn(own, 0), undefined, cells);

describe('flow at which the first heater gives all it has', () => {
  test.each([
    [[60, 120], 40],
    [[120, 45], 40],
    [[60, 60], 9],
  ])('zones %j, nozzle %d: all hold just below it, the named one does not just above', (zones, nozzle) => {
    const own = powered(zones, nozzle);
    const { holding, converged } = capacity(own);
    expect(converged).toBe(true);
    expect(holding.massFlow).toBeGreaterThan(0);
    expect(at(own, 0.98 * holding.massFlow).zones.every(({ duty }) => duty !== 'weak')).toBe(true);
    const weak = at(own, 1.02 * holding.massFlow).zones.filter(({ duty }) => duty === 'weak');
    expect(weak.map(({ name }) => name)).toEqual([holding.limitedBy]);
  });

  test('one weak zone limits though the watts of all together would do', () => {
    const even = capacity(powered([100, 100], 40)).holding.massFlow;
    const own = powered([30, 170], 40);
    const { holding } = capacity(own);
    expect(holding.limitedBy).toBe(design.barrel.zones[2].name);
    expect(holding.massFlow).toBeLessThan(0.6 * even);
    const { wantedFlows, zones } = at(own, 1.5 * holding.massFlow);
    expect(wantedFlows.heaters).toBeLessThan(zones.reduce((sum, { maxPower }) => sum + maxPower, 0));
  });
});

describe('flow at which what should be molten no longer is', () => {
  test('just below it all is molten, just above something is not', () => {
    for (const own of [powered([30, 60], 40), powered([12, 12], 40), powered([60, 20], 5)]) {
      const { melting, holding } = capacity(own);
      expect(melting.massFlow).toBeGreaterThanOrEqual(holding.massFlow);
      const sound = (flow: number) => {
        const { zones, outlet } = at(own, flow);
        const weak = zones.filter(({ duty }) => duty === 'weak');
        return weak.every(({ reached }) => reached > own.material.melting) && outlet > own.material.melting;
      };
      expect(sound(0.97 * melting.massFlow)).toBe(true);
      expect(sound(1.03 * melting.massFlow)).toBe(false);
    }
  });

  test('a warmer outlet allows less', () => {
    const own = powered([30, 40], 10);
    const load = loadOn(own, 0);
    const warm = heaterCapacity(own, load, own.material.melting + 30, cells).melting.massFlow;
    expect(warm).toBeLessThan(capacity(own).melting.massFlow);
  });
});

test('no watts hold nothing; ample watts leave the limit to the exchange', () => {
  const none = capacity(powered([0, 0], 0));
  expect(none.holding.massFlow).toBe(0);
  expect(none.melting.massFlow).toBe(0);
  const ample = capacity(powered([1e5, 1e5], 1e5));
  expect(ample.holding).toEqual({ massFlow: Number.POSITIVE_INFINITY, limitedBy: null });
});
