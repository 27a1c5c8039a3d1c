import { describe, expect, test } from 'vitest';
import { flowsOf } from '../../../core/heat/flows.ts';
import { heatStep } from '../../../core/heat/heatSystem.ts';
import { heldHeat } from '../../../core/heat/thermostats.ts';
import { heaterOn, type RodCase, rodCells, stateOf } from '../../helpers/heatRod.ts';

const rod: RodCase = { count: 80, length: 0.1, conduction: 45 * 2e-4, exchange: 0.6, ambient: 300 };
const solve = (own: RodCase) => {
  const cells = rodCells(own);
  return { cells, ...heldHeat(cells, null) };
};

describe('rod with both ends at one temperature', () => {
  /** Fin equation, symmetric: (T - Ta)/(Te - Ta) = cosh m(x - L/2)/cosh(m L/2), m² = exchange/(k A) (Incropera & DeWitt, section 3.6). */
  const worst = (count: number): number => {
    const { cells, state } = solve({ ...rod, count, ends: 500 });
    const m = Math.sqrt(rod.exchange / rod.conduction);
    const half = rod.length / 2;
    return state.wall.reduce((most, value, i) => {
      const exact = 300 + (200 * Math.cosh(m * (cells.z[i] - half))) / Math.cosh(m * half);
      return Math.max(most, Math.abs(value - exact));
    }, 0);
  };

  test('follows cosh, second order in the cell', () => {
    expect(worst(80)).toBeLessThan(0.02);
    const order = Math.log2(worst(40) / worst(80));
    expect(order).toBeGreaterThan(1.9);
    expect(order).toBeLessThan(2.1);
  });

  test('the ends bring what the sides lose: 2 k A m (Te - Ta) tanh(m L/2)', () => {
    const { cells, state } = solve({ ...rod, count: 400, ends: 500 });
    const m = Math.sqrt(rod.exchange / rod.conduction);
    const exact = 2 * rod.conduction * m * 200 * Math.tanh((m * rod.length) / 2);
    const { ambient, coolant } = flowsOf(cells, null, state);
    expect(ambient / exact).toBeCloseTo(1, 4);
    expect(ambient + coolant).toBeCloseTo(0, 7);
  });
});

describe('heaters on a rod', () => {
  const middle = (maxPower: number, own: Partial<RodCase> = {}) =>
    solve({ ...rod, heaters: [heaterOn('middle', 500, maxPower, [30, 50])], ...own });

  test('with infinite conductivity the rod has one temperature and loses exchange times length', () => {
    const { state, cells } = middle(1e4, { conduction: 1e4 });
    for (const value of state.wall) expect(value).toBeCloseTo(500, 3);
    expect(flowsOf(cells, null, state).heaters / (0.6 * 0.1 * 200)).toBeCloseTo(1, 5);
  });

  test('without losses nothing is needed and all stands at the hottest set temperature', () => {
    const { state, duties, cells } = solve({
      ...rod,
      exchange: 0,
      heaters: [heaterOn('cool', 400, 100, [0, 20]), heaterOn('hot', 500, 100, [60, 80])],
    });
    expect(duties).toEqual(['off', 'held']);
    for (const value of state.wall) expect(value).toBeCloseTo(500, 6);
    expect(flowsOf(cells, null, state).heaters).toBeCloseTo(0, 6);
  });

  test('one without the watts gives all of them and warms the rod in proportion', () => {
    const full = middle(1e4);
    const needed = flowsOf(full.cells, null, full.state).heaters;
    const half = middle(needed / 2);
    expect(full.duties).toEqual(['held']);
    expect(half.duties).toEqual(['weak']);
    half.state.wall.forEach((value, i) => {
      expect(value - 300).toBeCloseTo((full.state.wall[i] - 300) / 2, 7);
    });
  });

  test('just enough holds, a hair less does not, and nothing jumps between them', () => {
    const full = middle(1e4);
    const needed = flowsOf(full.cells, null, full.state).heaters;
    const more = middle(needed * (1 + 1e-7));
    const less = middle(needed * (1 - 1e-7));
    expect(more.duties).toEqual(['held']);
    expect(less.duties).toEqual(['weak']);
    less.state.wall.forEach((value, i) => {
      expect(Math.abs(value - more.state.wall[i])).toBeLessThan(1e-4);
    });
  });

  test('a neighbour much hotter switches one off; it never takes heat', () => {
    const { duties, state, cells } = solve({
      ...rod,
      heaters: [heaterOn('cool', 320, 100, [0, 40]), heaterOn('hot', 600, 100, [40, 80])],
    });
    expect(duties).toEqual(['off', 'held']);
    expect(state.wall[20]).toBeGreaterThan(325);
    expect(flowsOf(cells, null, state).heaters).toBeGreaterThan(0);
  });

  test('balance closes after every single step, whatever the start', () => {
    const cells = rodCells({ ...rod, ends: 420, heaters: [heaterOn('a', 500, 7, [10, 30])] });
    for (const duty of ['held', 'weak', 'off'] as const) {
      const state = heatStep(cells, null, [duty], stateOf(cells, 1000));
      const { heaters, ambient, coolant } = flowsOf(cells, null, state);
      expect(heaters - ambient - coolant).toBeCloseTo(0, 9);
      if (duty === 'weak') expect(heaters).toBeCloseTo(7, 9);
    }
  });
});

test('a thin sleeve takes the drop of the wall it replaces: conductances in series', () => {
  const cells = rodCells({ ...rod, count: 100, exchange: 0, ends: 300 });
  for (let i = 40; i < 60; i++) cells.link[i] = 1e-2;
  cells.coolant[99] = 450;
  const { state } = heldHeat(cells, null);
  const resistance = cells.link.subarray(0, 99).reduce((sum, link) => sum + 1 / link, 2 / cells.toCoolant[0]);
  const drop = state.wall[60] - state.wall[40];
  expect(drop / (150 * (20 / 1e-2 / resistance))).toBeCloseTo(1, 9);
});
