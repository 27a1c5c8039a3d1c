/** Colour over speed and set temperature, and the limit line. */

import { describe, expect, it } from 'vitest';
import { scaledParts, shiftedParts } from '../../../core/age/colourParts.ts';
import {
  colourOverSpeed,
  colourOverTemperature,
  glanceOf,
  keptStretch,
  layerStep,
  partsByFlow,
} from '../../../core/age/colourSweep.ts';
import { channelAtoms } from '../../../core/residence/channel.ts';
import { pale, part, reference } from './samples.ts';

const parts = [part(channelAtoms(300))];
const design = { material: pale, process: { acceptableDeltaE: 2 } };
const flow = 2e-7;
const speeds = Array.from({ length: 25 }, (_, i) => 0.05 * (i + 1));
const flowAt = (speed: number) => (flow * speed) / 0.1;
const sweep = colourOverSpeed(design, speeds, partsByFlow(parts, flow, flowAt));

describe('over speed', () => {
  it('a slower print is darker; the doubt range holds the value', () => {
    expect(sweep.points).toHaveLength(speeds.length);
    for (let i = 1; i < sweep.points.length; i++)
      expect(sweep.points[i].dE00Mean).toBeLessThan(sweep.points[i - 1].dE00Mean);
    for (const { dE00Mean, dE00MeanLow, dE00MeanHigh, dE00Worst } of sweep.points) {
      expect(dE00MeanLow).toBeLessThanOrEqual(dE00Mean);
      expect(dE00MeanHigh).toBeGreaterThanOrEqual(dE00Mean);
      expect(dE00Worst).toBeGreaterThan(dE00Mean);
    }
  });

  it('at its own speed has its own colour, at half of it that of twice the time', () => {
    const at = (speed: number) => sweep.points.find((point) => Math.abs(point.at - speed) < 1e-9)?.dE00Mean;
    expect(at(0.1)).toBeCloseTo(glanceOf(pale, parts)?.dE00Mean as number, 9);
    expect(at(0.05)).toBeCloseTo(glanceOf(pale, scaledParts(parts, 2))?.dE00Mean as number, 9);
  });

  it('crosses what is accepted at the speed that has just that colour', () => {
    const { from, to } = sweep.keptMean ?? {};
    expect(to).toBeNull();
    const there = glanceOf(pale, partsByFlow(parts, flow, flowAt)(from as number));
    expect(there?.dE00Mean).toBeCloseTo(2, 1);
    expect(sweep.keptWorst?.from as number).toBeGreaterThan(from as number);
  });

  it('layers laid at one speed are alike, at two they differ, either way round', () => {
    const [slow, , fast] = sweep.points;
    expect(layerStep(slow, slow)).toBe(0);
    expect(layerStep(slow, fast)).toBeGreaterThan(1);
    expect(layerStep(slow, fast)).toBeCloseTo(layerStep(fast, slow), 9);
  });

  it('leaves out speeds at which nothing flows', () => {
    const some = colourOverSpeed(design, [0, 0.1], partsByFlow(parts, flow, flowAt));
    expect(some.points.map(({ at }) => at)).toEqual([0.1]);
    const none = colourOverSpeed(design, [0], partsByFlow(parts, flow, flowAt));
    expect(none.reason).toContain('cannot be said');
    expect(none.keptMean).toBeNull();
  });

  it('without a colour law says why', () => {
    const other = { ...design, material: { ...pale, colourLaw: null } };
    expect(colourOverSpeed(other, speeds, () => parts)).toMatchObject({
      points: [],
      reason: expect.stringContaining('tied to colour'),
    });
  });
});

describe('over set temperature', () => {
  const temperatures = Array.from({ length: 21 }, (_, i) => 440 + 3 * i);
  const warm = colourOverTemperature(design, parts, reference, temperatures);

  it('is that of all melt shifted, and rises', () => {
    const one = warm.points.find(({ at }) => at === 485);
    expect(one?.dE00Mean).toBeCloseTo(glanceOf(pale, shiftedParts(parts, 485 - reference))?.dE00Mean as number, 12);
    for (let i = 1; i < warm.points.length; i++)
      expect(warm.points[i].dE00Mean).toBeGreaterThan(warm.points[i - 1].dE00Mean);
  });

  it('names the hottest that keeps the colour and says what stays fixed', () => {
    const hottest = warm.keptMean?.to as number;
    expect(warm.keptMean?.from).toBeNull();
    expect(glanceOf(pale, shiftedParts(parts, hottest - reference))?.dE00Mean).toBeCloseTo(2, 1);
    expect(warm.assumptions.join(' ')).toContain('residence is kept');
  });
});

describe('kept stretch', () => {
  const line = (...values: number[]) => values.map((value, i) => [i, value] as const);

  it.each([
    ['all within', line(1, 1, 1), { from: null, to: null }],
    ['none', line(3, 4, 3), null],
    ['from the start', line(1, 1, 3), { from: null, to: 1.5 }],
    ['to the end', line(4, 1, 1), { from: 2 / 3, to: null }],
    ['in the middle', line(3, 1, 3), { from: 0.5, to: 1.5 }],
    ['the longer of two', line(1, 3, 1, 1, 1, 3), { from: 1.5, to: 4.5 }],
    ['nothing given', line(), null],
  ])('%s', (_, values, expected) => {
    const got = keptStretch(values, 2);
    if (expected === null) expect(got).toBeNull();
    else {
      for (const end of ['from', 'to'] as const) {
        if (expected[end] === null) expect(got?.[end]).toBeNull();
        else expect(got?.[end]).toBeCloseTo(expected[end], 12);
      }
    }
  });
});
