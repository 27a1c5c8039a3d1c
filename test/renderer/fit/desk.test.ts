import { describe, expect, test } from 'vitest';
import type { RheologyPoint } from '../../../core/index.ts';
import type { FitAnswer, FitAsk } from '../../../renderer/fit/protocol.ts';
import { fitAnswers } from '../../../renderer/fit/solve/desk.ts';

/** Readings of a power law, 2000 Pa s^0.4 at 180 °C, falling by 2 % per kelvin. */
const readings = (temperaturesC: readonly number[], factor = 1): RheologyPoint[] =>
  temperaturesC.flatMap((celsius) =>
    [10, 30, 100, 300, 1000].map((shearRate) => ({
      shearRate,
      temperature: celsius + 273.15,
      viscosity: factor * 2000 * shearRate ** -0.6 * Math.exp(-0.02 * (celsius - 180)),
    })),
  );

const answer = (ask: Partial<FitAsk>): FitAnswer => {
  const [first] = fitAnswers({
    points: readings([180, 200]),
    model: 'powerLaw',
    options: { shift: 'exponential' },
    filler: null,
    ...ask,
  });
  if (!first) throw new Error('nothing was answered');
  return first;
};

function fitted(ask: Partial<FitAsk> = {}) {
  const got = answer(ask);
  if (got.kind !== 'fit') throw new Error('refused');
  return got;
}

const constant = (got: ReturnType<typeof fitted>, name: string) =>
  got.fit.parameters.find((one) => one.name === name)?.value;

test('each temperature has its curve, which passes through its readings', () => {
  const { drawing } = fitted();
  expect(drawing.curves.map(({ temperature }) => temperature)).toEqual(['180 °C', '200 °C']);
  const drawn = drawing.curves.map(({ points, value }) =>
    points.flatMap((point, k) => (point === null ? [] : [point / (value[k] ?? 0)])),
  );
  for (const ratios of drawn) {
    expect(ratios).toHaveLength(5);
    for (const ratio of ratios) expect(ratio).toBeCloseTo(1, 6);
  }
  expect(drawing.rates).toEqual(drawing.rates.toSorted((a, b) => a - b));
});

describe('many temperatures', () => {
  const many = [170, 171, 180, 190, 200, 210, 220, 230, 240];
  test('close ones share a curve, no more than six are drawn, and no reading is lost', () => {
    const { drawing } = fitted({ points: readings(many) });
    expect(drawing.temperatures).toBe(8);
    expect(drawing.curves).toHaveLength(6);
    const points = drawing.curves.flatMap((curve) => curve.points.filter((one) => one !== null));
    expect(points).toHaveLength(5 * many.length);
  });
});

test('what the filler adds is taken out of the law and stays in the drawing', () => {
  const filler = { volumeFraction: 0.3, maxPacking: 0.6 };
  const alone = fitted();
  const filled = fitted({ points: readings([180, 200], 4), filler });
  expect(constant(filled, 'consistencyPaSn')).toBeCloseTo(constant(alone, 'consistencyPaSn') ?? 0, 3);
  expect(filled.drawing.span[0] / alone.drawing.span[0]).toBeCloseTo(4, 6);
});

test('a reading far off is drawn as such, and the scatter is told in percent', () => {
  const points = readings([180, 200]).map((one, k) => (k === 3 ? { ...one, viscosity: 5 * one.viscosity } : one));
  const { drawing, fit, scatterPercent } = fitted({ points: [...points, ...readings([180, 200])] });
  expect(drawing.outliers.filter((one) => one !== null)).toEqual([points[3]?.viscosity]);
  expect(scatterPercent).toBeCloseTo(100 * (Math.exp(fit.scatter) - 1), 9);
});

test('too few readings are refused with what would do', () => {
  expect(answer({ points: readings([180]).slice(0, 2) })).toMatchObject({
    kind: 'refused',
    issues: [{ code: 'too-few-points', allowed: expect.stringMatching(/at least/) }],
  });
});
