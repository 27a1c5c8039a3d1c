/** Extents of parts in series against exact solutions. */

import { describe, expect, it, test } from 'vitest';
import { rateConstant } from '../../../core/age/arrhenius.ts';
import { scaledParts } from '../../../core/age/colourParts.ts';
import { type AgedPart, extentDistribution } from '../../../core/age/extentDistribution.ts';
import { extentAlong } from '../../../core/age/kinetics.ts';
import { nominalCorner } from '../../../core/age/laws.ts';
import { gaussLegendre } from '../../../core/math/gaussLegendre.ts';
import { channelAtoms, pipeAtoms } from '../../../core/residence/channel.ts';
import { plugAtoms } from '../../helpers/plugAtoms.ts';
import { orderLaw, part, reference, seriesLaw, tankAtoms } from './samples.ts';

/** The same parts with all temperatures shifted by kelvins. */
const shiftedParts = (parts: readonly AgedPart[], kelvins: number): AgedPart[] =>
  parts.map((one) => ({
    ...one,
    heat: one.heat.map((each) => ({ ...each, temperature: each.temperature + kelvins })),
  }));

const extents = (law: Parameters<typeof extentDistribution>[0], ...parts: AgedPart[]) =>
  extentDistribution(law, parts, nominalCorner);
const hot = 490;
const k = (temperature: number) => rateConstant(0.01, 80e3, reference, temperature);

describe('mean of zero order', () => {
  it('is the sum of k times mean age, each part at its own temperature', () => {
    const got = extents(orderLaw(0), part(channelAtoms(90)), part(pipeAtoms(12, 0.4), hot));
    expect(got.mean / (0.01 * 90 + k(hot) * 12)).toBeCloseTo(1, 6);
    // what is joined for the colours keeps it
    expect(got.extent.length).toBeLessThan(200);
    expect(got.extent.reduce((sum, x, i) => sum + x * got.share[i], 0) / got.mean).toBeCloseTo(1, 9);
    expect(got.share.reduce((sum, x) => sum + x, 0)).toBeCloseTo(1, 9);
  });
});

describe('first order', () => {
  /** Stirred tanks in series (Levenspiel 1999, chapter 6): left over = product of 1/(1 + k tau); linear kinetics. */
  it('of two stirred tanks at two temperatures leaves the product of 1/(1 + k tau)', () => {
    const got = extents(orderLaw(1), part(tankAtoms(80)), part(tankAtoms(50), hot));
    expect(1 - got.mean).toBeCloseTo(1 / (1 + 0.8) / (1 + k(hot) * 50), 3);
  });
});

describe('quantiles', () => {
  /** Laminar pipe: F = 1 - 1/(4 theta²), so theta at 50, 90, 99 % is 0.7071, 1.5811, 5 (Levenspiel 1999). */
  it('of a pipe at one temperature are k times the pipe’s', () => {
    const got = extents(orderLaw(0), part(pipeAtoms(100, 1)));
    expect(got.at(0)).toBeCloseTo(0.5, 9);
    expect(got.at(0.5)).toBeCloseTo(Math.SQRT1_2, 2);
    expect(Math.abs(got.at(0.9) / Math.sqrt(2.5) - 1)).toBeLessThan(0.01);
    expect(Math.abs(got.at(0.99) / 5 - 1)).toBeLessThan(0.02);
  });

  it('of plug flow are all the same', () => {
    const got = extents(orderLaw(0), part(plugAtoms(30)), part(plugAtoms(20)));
    for (const share of [0, 0.3, 0.99]) expect(got.at(share)).toBeCloseTo(0.5, 12);
  });

  it('never fall', () => {
    const got = extents(seriesLaw, part(channelAtoms(200)), part(tankAtoms(40), hot));
    const values = Array.from({ length: 101 }, (_, i) => got.at(i / 100));
    for (let i = 1; i < values.length; i++) expect(values[i]).toBeGreaterThanOrEqual(values[i - 1]);
    expect(values[0]).toBe(got.least);
  });
});

describe('order of parts', () => {
  const [cool, warm] = [part(channelAtoms(90), 460), part(pipeAtoms(60, 0.5), 500)];

  it('does not matter to laws of one reduced time', () => {
    for (const order of [0, 1, 2]) {
      const [one, other] = [extents(orderLaw(order), cool, warm), extents(orderLaw(order), warm, cool)];
      expect(one.at(0.9) / other.at(0.9)).toBeCloseTo(1, 9);
    }
  });

  it('matters to two steps in series: warmth after the first step finds more to act on', () => {
    expect(extents(seriesLaw, cool, warm).mean).toBeGreaterThan(1.02 * extents(seriesLaw, warm, cool).mean);
  });
});

describe('limits', () => {
  const parts = [part(channelAtoms(90)), part(pipeAtoms(12, 0.4), hot)];

  it.each([orderLaw(0), orderLaw(1), orderLaw(2.5), seriesLaw])('$id: no time or no warmth, no change', (law) => {
    expect(extents(law, ...scaledParts(parts, 0)).mean).toBeCloseTo(0, 12);
    expect(extents(law, ...shiftedParts(parts, -300)).at(0.99)).toBeLessThan(1e-9);
  });

  it('twice the time is twice the extent of zero order', () => {
    const twice = extents(orderLaw(0), ...scaledParts(parts, 2));
    expect(twice.at(0.95) / extents(orderLaw(0), ...parts).at(0.95)).toBeCloseTo(2, 9);
  });
});

describe('a ramp of temperature', () => {
  const [from, to, time] = [440, 500, 120];
  const stretches = (count: number) =>
    Array.from({ length: count }, (_, i) => ({
      duration: time / count,
      temperature: from + ((to - from) * (i + 0.5)) / count,
    }));
  const rule = gaussLegendre(20);
  const exact = rule.nodes.reduce((sum, x, i) => sum + rule.weights[i] * time * k(from + (to - from) * x), 0);

  it('in stretches nears the integral of k dt at second order', () => {
    const error = (count: number) => Math.abs(extentAlong(orderLaw(0), stretches(count)).extent / exact - 1);
    expect(error(60)).toBeLessThan(2e-4);
    expect(error(30) / error(60)).toBeCloseTo(4, 0);
  });

  test('one mean temperature would miss a tenth of it: local temperatures are needed', () => {
    const mean = extentAlong(orderLaw(0), [{ duration: time, temperature: (from + to) / 2 }]).extent;
    expect(mean / exact).toBeLessThan(0.9);
    const local = extents(orderLaw(0), { part: 'ramp', atoms: plugAtoms(time), heat: stretches(60) });
    expect(local.mean / exact).toBeCloseTo(1, 3);
  });
});
