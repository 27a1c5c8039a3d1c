/** Colour of the extrudate: mixing, streaks, doubts, and every way of not knowing. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Lab, labToSrgb, labToXyz, xyzToLab } from '../../../core/age/cielab.ts';
import type { ColouredMaterial } from '../../../core/age/colourTypes.ts';
import { deltaE2000 } from '../../../core/age/deltaE2000.ts';
import type { DegradationLaw } from '../../../core/design/types.ts';
import type { LagLaw } from '../../../core/material/kineticLaws.ts';
import type { ColourPrediction } from '../../../core/prediction/types.ts';
import { predictColour } from '../../helpers/predictColour.ts';

const darkening: DegradationLaw = {
  id: 'darkening',
  observed: 'colour difference',
  order: 0,
  rateAtReference: { value: 0.02, low: 0.01, high: 0.04 },
  referenceTemperature: 473.15,
  activation: { value: 77e3, low: 60e3, high: 95e3 },
  validFrom: 433.15,
  validTo: 483.15,
};
const scission: DegradationLaw = { ...darkening, id: 'scission', observed: 'chain breaks, which lower the molar mass' };
const wood: ColouredMaterial = {
  name: 'Pale wood',
  invented: true,
  degradation: [scission, darkening],
  colourLaw: 'darkening',
  colourAnchors: [
    { extent: 45, lab: [36.2, 11.4, 26.5] },
    { extent: 0, lab: [80, 4, 20] },
    { extent: 12, lab: [70.5, 7.4, 26.2] },
  ],
};
const reference = 473.15;
const plug = (age: number) => ({ time: Float64Array.of(age, age), cumulative: Float64Array.of(0, 1) });
const ages = (time: number[], cumulative: number[]) => ({
  time: Float64Array.from(time),
  cumulative: Float64Array.from(cumulative),
});
const close = (got: Lab | null, expected: Lab, digits = 9) => {
  for (const i of [0, 1, 2]) expect(got?.[i]).toBeCloseTo(expected[i], digits);
};

describe('colour of the extrudate', () => {
  it('plug flow that reaches an anchor has its colour, mean and streak alike', () => {
    const got = predictColour(wood, plug(600), reference);
    close(got.labMean, [70.5, 7.4, 26.2]);
    close(got.labWorst, [70.5, 7.4, 26.2]);
    expect(got.extentMean).toBeCloseTo(12, 10);
    expect(got.dE00Mean).toBeCloseTo(deltaE2000([80, 4, 20], [70.5, 7.4, 26.2]), 9);
    expect(got.srgb).toBe(labToSrgb([70.5, 7.4, 26.2]).hex);
    expect(got.srgbFresh).toBe(labToSrgb([80, 4, 20]).hex);
    expect([got.reason, got.basis.doubt]).toEqual([null, null]);
  });

  it('fresh melt is unchanged', () => {
    const got = predictColour(wood, plug(0), reference);
    expect(got.dE00Mean).toBeCloseTo(0, 9);
    expect(got.dE00Worst).toBe(0);
  });

  it('mixes in XYZ: nine tenths fresh, one tenth old', () => {
    const got = predictColour(wood, ages([0, 0, 600, 600], [0, 0.9, 0.9, 1]), reference);
    const [fresh, old] = [labToXyz([80, 4, 20]), labToXyz([70.5, 7.4, 26.2])];
    const mixed = [0, 1, 2].map((i) => 0.9 * fresh[i] + 0.1 * old[i]) as [number, number, number];
    close(got.labMean, xyzToLab(mixed));
    close(got.labWorst, [70.5, 7.4, 26.2]);
    expect(got.extentMean).toBeCloseTo(1.2, 10);
  });

  it('the streak is the melt that 99 % of the flux is younger than', () => {
    const got = predictColour(wood, ages([100, 100, 1000], [0, 0.98, 1]), reference);
    expect(got.extentWorst).toBeCloseTo(0.02 * 550, 10);
  });

  it('bins wide enough for a table give the mean of a fine integration (exponential ages)', () => {
    const exponential = (bins: number) => {
      const time = Array.from({ length: bins }, (_, i) => (3000 * (i + 1)) / bins);
      return ages(time, [...time.slice(0, -1).map((t) => 1 - Math.exp(-t / 200)), 1]);
    };
    const [coarse, fine] = [60, 6000].map((bins) => predictColour(wood, exponential(bins), reference));
    close(coarse.labMean, fine.labMean as Lab, 1);
    expect(coarse.dE00Mean).toBeCloseTo(fine.dE00Mean as number, 1);
    expect(fine.extentMean).toBeCloseTo(4, 2);
  });

  it('parts at their own temperatures add up like stretches of one history', () => {
    const twice = predictColour(wood, plug(600), [
      { duration: 10, temperature: reference },
      { duration: 30, temperature: reference },
    ]);
    close(twice.labMean, [70.5, 7.4, 26.2]);
    const [cold, mixed, hot] = [440, 0, reference].map((temperature) => {
      const parts = temperature === 0 ? [at(1, 440), at(1, reference)] : [at(1, temperature)];
      return predictColour(wood, plug(600), parts).extentMean as number;
    });
    expect(mixed).toBeCloseTo((cold + hot) / 2, 9);
  });

  it('is a ColourPrediction', () => {
    const got: ColourPrediction = predictColour(wood, plug(600), reference);
    expect(got.basis.assumptions.join(' ')).toContain('invented');
  });

  it('takes a law with a lag as well', () => {
    const lag: LagLaw = { ...darkening, kind: 'lag', id: 'lag', lagAtReference: 300 };
    const material = { ...wood, degradation: [lag], colourLaw: 'lag', colourAnchors: twoAnchors };
    const [early, late] = [50, 1000].map((age) => predictColour(material, plug(age), reference));
    expect(early.dE00Mean).toBeLessThan(0.01);
    expect(late.dE00Mean).toBeGreaterThan(20);
  });
});

const at = (duration: number, temperature: number) => ({ duration, temperature });
const twoAnchors = [
  { extent: 0, lab: [90, 0, 5] as const },
  { extent: 1, lab: [40, 15, 30] as const },
];

describe('range', () => {
  it('at the reference temperature spans the doubt of the rate alone', () => {
    const got = predictColour(wood, plug(300), reference);
    const [low, high] = [150, 600].map((age) => predictColour(wood, plug(age), reference));
    expect(got.range?.dE00MeanLow).toBeCloseTo(low.dE00Mean as number, 9);
    expect(got.range?.dE00MeanHigh).toBeCloseTo(high.dE00Mean as number, 9);
    close(got.range?.labMeanHigh ?? null, high.labMean as Lab);
    expect(got.range?.dE00WorstHigh).toBeCloseTo(high.dE00Worst as number, 9);
  });

  it('is wider away from it, on both sides', () => {
    const spread = (temperature: number) => {
      const range = predictColour(wood, plug(60), temperature).range;
      return Math.log((range?.dE00MeanHigh ?? Number.NaN) / (range?.dE00MeanLow ?? Number.NaN));
    };
    expect(spread(445)).toBeGreaterThan(spread(reference) + 0.1);
    expect(spread(483)).toBeGreaterThan(spread(reference) + 0.01);
  });
});

describe('doubt', () => {
  it('names temperatures outside the range of the law', () => {
    expect(predictColour(wood, plug(60), 500).basis.doubt).toContain('extrapolated');
    expect(predictColour(wood, plug(60), [at(1, 470), at(1, 430)]).basis.doubt).toContain('157 °C to 197 °C');
  });

  it('names the share that passes the last anchor, whose colour is held', () => {
    const got = predictColour(wood, ages([10, 10, 1e4, 1e4], [0, 0.8, 0.8, 1]), reference);
    expect(got.basis.doubt).toContain('20 %');
    close(got.labWorst, [36.2, 11.4, 26.5]);
  });

  it('names anchors that do not begin at fresh', () => {
    const late = { ...wood, colourAnchors: wood.colourAnchors.filter((anchor) => anchor.extent > 0) };
    expect(predictColour(late, plug(60), reference).basis.doubt).toContain('taken as fresh');
  });
});

describe('no prediction', () => {
  const reasonOf = (change: Partial<ColouredMaterial>) => {
    const got = predictColour({ ...wood, ...change }, plug(60), reference);
    expect([got.dE00Mean, got.dE00Worst, got.labMean, got.srgb, got.range]).toEqual([null, null, null, null, null]);
    return got.reason;
  };

  it('without a colour law says so', () => {
    expect(reasonOf({ colourLaw: null })).toMatch(/tied to colour, though its colours are there.*Colour follows/);
    expect(reasonOf({ colourLaw: null, degradation: [] })).toContain('tied to colour');
  });

  it('with molar mass alone says what that means', () => {
    const reason = reasonOf({ colourLaw: null, degradation: [scission] });
    expect(reason).toContain('only the loss of molar mass is known');
    expect(reason).toContain('not whether they discolour');
  });

  it('with a colour law that does not exist names it', () => {
    expect(reasonOf({ colourLaw: 'gone' })).toContain('gone');
  });

  it('with too few anchors asks for measurements and still shows the fresh colour', () => {
    expect(reasonOf({ colourAnchors: [] })).toContain('anchors');
    const one = predictColour({ ...wood, colourAnchors: [wood.colourAnchors[1]] }, plug(60), reference);
    expect(one.labMean).toBeNull();
    expect(one.srgbFresh).toBe(labToSrgb([80, 4, 20]).hex);
  });

  it.each([
    ['nothing', ages([], []), reference],
    ['no flux', ages([1, 2], [0, 0]), reference],
    ['not a number', ages([1, Number.NaN], [0.5, 1]), reference],
    ['temperature', plug(60), Number.NaN],
    ['no parts', plug(60), []],
    ['no time in parts', plug(60), [at(0, reference)]],
  ])('with unusable input: %s', (_, distribution, heat) => {
    const got = predictColour(wood, distribution, heat);
    expect(got.dE00Mean).toBeNull();
    expect(got.reason).toMatch(/cannot be said because/);
  });
});

describe('laws that always hold', () => {
  it('older or hotter melt is never nearer to fresh, the streak never nearer than the mean, the range holds the value', () => {
    const age = fc.double({ min: 1, max: 800, noNaN: true });
    const temperature = fc.double({ min: 435, max: 482, noNaN: true });
    fc.assert(
      fc.property(age, temperature, fc.double({ min: 1, max: 1.5, noNaN: true }), (mean, kelvin, factor) => {
        const spread = (m: number) => ages([m / 2, m, 3 * m], [0, 0.6, 1]);
        const base = predictColour(wood, spread(mean), kelvin);
        const older = predictColour(wood, spread(mean * factor), kelvin);
        const dE = base.dE00Mean as number;
        expect(older.dE00Mean).toBeGreaterThanOrEqual(dE - 1e-9);
        expect(base.dE00Worst).toBeGreaterThanOrEqual(dE);
        expect(base.range?.dE00MeanLow).toBeLessThanOrEqual(dE);
        expect(base.range?.dE00MeanHigh).toBeGreaterThanOrEqual(dE);
      }),
      { seed: 20240611, numRuns: 100 },
    );
  });
});
