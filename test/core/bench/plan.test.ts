import { describe, expect, test } from 'vitest';
import { fitCalibration } from '../../../core/bench/fitCalibration.ts';
import { planCandidates } from '../../../core/bench/planCandidates.ts';
import { planTrials } from '../../../core/bench/planTrials.ts';
import { trialSheet } from '../../../core/bench/trialSheet.ts';
import { loadExample } from '../../helpers/projects.ts';
import { measuredTrials, syntheticModel, syntheticTrial } from './synthetic.ts';

const demo = loadExample('demo');
const grid = [170, 180, 190].flatMap((celsius) =>
  [4, 10, 20, 40].map((n) => syntheticTrial(`${n}-${celsius}`, n, celsius)),
);

describe('planning trials', () => {
  test('goes first where the unknown feed shows: fast', () => {
    const { trials, candidates, evaluations } = planTrials(grid, syntheticModel, null, { kinds: ['rate'], count: 3 });
    expect([trials.length, candidates]).toEqual([3, 12]);
    expect(trials[0].expected.limit).toBe('feed');
    expect(trials[0].narrows[0].factor).toBe('feed');
    expect(trials[0].spreadAfter).toBeLessThan(0.6 * trials[0].spreadBefore);
    for (const [i, plan] of trials.slice(1).entries()) expect(plan.spreadBefore).toBeCloseTo(trials[i].spreadAfter, 12);
    expect(evaluations).toBeLessThanOrEqual(grid.length * 10);
  });

  test('goes elsewhere once the feed is known', () => {
    const fast = [24, 28, 32, 36, 40, 44].map((n) => syntheticTrial(`F${n}`, n, 180));
    const known = measuredTrials({ feed: 1, wallFriction: 1, viscosity: 1, colourRate: 1 }, fast.slice(0, 3), 0.01, 1);
    const fit = fitCalibration(known, syntheticModel, { factors: ['feed', 'wallFriction'] });
    expect([fit.factors.feed.fitted, fit.factors.wallFriction.entangled]).toEqual([true, true]);
    const [first] = planTrials(grid, syntheticModel, fit, { kinds: ['rate', 'torque'], count: 1 }).trials;
    expect(first.narrows[0].factor).toBe('viscosity');
  });

  test('takes the steepest of trials that differ in slope alone, and reckons its gain exactly', () => {
    const steep = [1, 4, 2].map((slope) => syntheticTrial(`slope ${slope}`, slope, 180));
    const { trials } = planTrials(
      steep,
      ({ feed }, { screwSpeedRpm: slope }) => ({
        ...{ massFlow: 1e-4 * feed ** slope, torque: null, dE00: null },
        ...{ limit: 'feed', residence: null, sound: true },
      }),
      null,
      { kinds: ['rate'], count: 3 },
    );
    expect(trials.map(({ trial }) => trial.id)).toEqual(['slope 4', 'slope 2', 'slope 1']);
    // Feed is known from 0.7 to 1.5, taken as 95 % limits; a weighing repeats within 0.05: inverse variances add.
    const before = Math.log(1.5 / 0.7) / 3.92;
    const after = 1 / Math.sqrt(before ** -2 + (4 / 0.05) ** 2);
    expect(trials[0].narrows[0].before).toBeCloseTo(before, 9);
    expect(trials[0].narrows[0].after).toBeCloseTo(after, 6);
    expect(trials[0].spreadAfter).toBeCloseTo(after * Math.sqrt((1 + 16 + 4) / 3), 6);
    expect(trials[0].trial.seconds).toBe(60);
  });

  test('drops what the drive cannot hold, and what gives nothing', () => {
    const { trials, dropped } = planTrials(
      grid,
      (factors, trial) => {
        const figures = syntheticModel(factors, trial);
        if (trial.screwSpeedRpm === 4) return null;
        return figures && { ...figures, sound: trial.screwSpeedRpm < 40 };
      },
      null,
      { count: 10 },
    );
    expect(dropped).toHaveLength(6);
    expect(trials.every(({ trial }) => trial.screwSpeedRpm === 10 || trial.screwSpeedRpm === 20)).toBe(true);
    expect(planTrials([], syntheticModel, null).trials).toEqual([]);
  });
});

test('candidates stay within the window, the safe limit and the drive', () => {
  const candidates = planCandidates(demo, 'C', '2026-06-01');
  expect(candidates.length).toBeGreaterThan(5);
  const { drive } = demo.revisions[2];
  const fastest = drive.motorCurve[drive.motorCurve.length - 1].speedRpm / drive.gearRatio;
  const { windowHighC, maxSafeC } = demo.materials[0];
  for (const { setTempsC, screwSpeedRpm } of candidates) {
    expect(setTempsC).toHaveLength(3);
    expect(Math.max(...setTempsC)).toBeLessThanOrEqual(Math.min(windowHighC.value, maxSafeC.value));
    expect(screwSpeedRpm > 0 && screwSpeedRpm < fastest).toBe(true);
  }
  expect(planCandidates(demo, 'nowhere', '2026-06-01')).toEqual([]);
});

test('the sheet says what to set, names blanks and cautions, and that the example is invented', () => {
  const trial = { ...syntheticTrial('P1', 12, 180), setTempsC: [170, 180, 185] };
  const expected = { massFlow: 5e-5, torque: 3.2, dE00: null, limit: 'pumping', residence: 100, sound: true } as const;
  const plan = { trial, expected, spreadBefore: 0.2, spreadAfter: 0.1, narrows: [], reason: 'It shows feed.' };
  const sheet = trialSheet(demo, 'C', [plan]);
  expect(sheet.rows[0]).toMatchObject({ screwSpeed: '12 rpm', collect: '60 s', why: 'It shows feed.' });
  expect(sheet.rows[0].heaters.map(({ name, temperature }) => `${name} ${temperature}`)).toEqual([
    'melting zone 170 °C',
    'metering zone 180 °C',
    'nozzle 185 °C',
  ]);
  expect(sheet.rows[0].settle).toContain('5 min');
  expect(sheet.rows[0].expected).toBe('about 3 g/min, 3.2 N·m');
  expect(sheet.notes[0]).toContain('invented');
  expect(sheet.cautions.length).toBeGreaterThan(demo.materials[0].cautions.length);
});
