import { describe, expect, test } from 'vitest';
import { applyCalibration } from '../../../core/bench/applyCalibration.ts';
import { fitCalibration } from '../../../core/bench/fitCalibration.ts';
import type { FitTrial } from '../../../core/bench/fitTypes.ts';
import { type Factors, plainFactors } from '../../../core/design/calibrate.ts';
import { checkProject } from '../../../core/project/parse.ts';
import { codesOf, expectOk, loadExample } from '../../helpers/projects.ts';
import { measuredTrials, syntheticModel, syntheticTrial } from './synthetic.ts';

const truth: Factors = { feed: 0.8, wallFriction: 1, viscosity: 1.3, colourRate: 1.6 };
const settings = Array.from({ length: 20 }, (_, i) => syntheticTrial(`T${i}`, 4 + 2 * (i % 8), 170 + 10 * (i % 4)));
const trials = measuredTrials(truth, settings, 0.03, 7);
const fit = fitCalibration(trials, syntheticModel);

describe('calibration', () => {
  test('finds the true factors through noise and one trial in ten that is wrong', () => {
    expect(fit.converged).toBe(true);
    expect(fit.outliers).toEqual(['T3', 'T13']);
    for (const name of ['feed', 'viscosity', 'colourRate'] as const) {
      const { value, low, high, fitted } = fit.factors[name];
      expect(fitted).toBe(true);
      expect(Math.abs(Math.log(value / truth[name]))).toBeLessThan(0.06);
      expect(low < truth[name] && truth[name] < high).toBe(true);
    }
    expect(fit.error.after.median).toBeLessThan(fit.error.before.median / 3);
  });

  test('says that friction cannot be told from feed, and holds it', () => {
    expect(fit.factors.wallFriction).toMatchObject({ value: 1, low: 1, high: 1, fitted: false });
    expect(fit.factors.wallFriction.reason).toContain('cannot tell it from feed');
  });

  test('limits hold the truth in about 95 of 100 cases', () => {
    const clean = settings.filter((_, i) => i % 10 !== 3);
    let held = 0;
    for (let seed = 1; seed <= 40; seed++) {
      const found = fitCalibration(
        measuredTrials(truth, clean, 0.03, seed).filter((_, i) => i % 10 !== 3),
        syntheticModel,
        { factors: ['viscosity'] },
      ).factors.viscosity;
      // The feed stays wrong here, so only the torque tells: limits must widen to what the trials scatter by.
      if (found.low < truth.viscosity && truth.viscosity < found.high) held++;
    }
    expect(held).toBeGreaterThan(33);
  });

  test('finds a factor that does nothing at 1 but limits in truth', () => {
    // Slow trials: pumping limits at 1; true feed is a third.
    const slow = [2, 3, 4, 5, 6].map((speed, i) => syntheticTrial(`S${i}`, speed, 180));
    const starving = measuredTrials({ ...plainFactors, feed: 0.33 }, slow.slice(0, 3), 0.01, 2);
    const found = fitCalibration(starving, syntheticModel, { factors: ['feed'] });
    expect(found.factors.feed.value).toBeCloseTo(0.33, 2);
  });

  test('says when feed cannot be seen because pumping limits', () => {
    const slow = [2, 3, 4, 5].map((speed, i) => syntheticTrial(`S${i}`, speed, 190));
    const strong = (factors: Factors, trial: FitTrial['trial']) =>
      syntheticModel({ ...factors, feed: 3 * factors.feed }, trial);
    const seen = slow.map((trial) => ({ trial, measured: syntheticModel({ ...plainFactors, feed: 3 }, trial) }));
    const measured = seen.flatMap(({ trial, measured: figures }) => (figures ? [{ trial, measured: figures }] : []));
    const found = fitCalibration(measured, strong, { factors: ['feed', 'viscosity'] });
    expect(found.factors.feed).toMatchObject({ value: 1, fitted: false });
    expect(found.factors.feed.reason).toContain('feed does not limit');
    expect(found.factors.viscosity.value).toBeCloseTo(1, 3);
    expect(found.factors.colourRate.reason).toBe('It was not asked for.');
  });

  test('leaving a trial out agrees with fitting without it', () => {
    const few = measuredTrials(truth, settings.slice(4, 12), 0.04, 3);
    const whole = fitCalibration(few, syntheticModel, { factors: ['feed', 'viscosity'] });
    const out = few[5];
    const { factors } = fitCalibration(
      few.filter((each) => each !== out),
      syntheticModel,
      { factors: ['feed', 'viscosity'] },
    );
    const values = { ...plainFactors, feed: factors.feed.value, viscosity: factors.viscosity.value };
    const predicted = syntheticModel(values, out.trial);
    const told = whole.observations.find(({ trialId, kind }) => trialId === out.trial.id && kind === 'torque');
    expect(told?.leaveOneOut).toBeCloseTo(Math.log((out.measured.torque ?? 1) / (predicted?.torque ?? 1)), 1);
    expect(Math.abs(told?.leaveOneOut ?? 0)).toBeGreaterThanOrEqual(Math.abs(told?.after ?? 1));
    expect(whole.error.leaveOneOut?.rms).toBeGreaterThanOrEqual(whole.error.after.rms);
  });

  test('one trial is not enough: figures without one to spare tell no factor', () => {
    const once = fitCalibration(measuredTrials(truth, [syntheticTrial('T', 14, 175)], 0.05, 1), syntheticModel);
    expect(Object.values(once.factors).map(({ value, fitted }) => [value, fitted])).toEqual(Array(4).fill([1, false]));
    expect(once.factors.feed.reason).toContain('not more figures than factors');
  });

  test('limits of two or three trials hold the truth in at least 93 of 100 cases', () => {
    const speeds = [14, 18, 8];
    for (const [count, slow] of [
      [1, 6],
      [2, 14],
      [3, 14],
    ] as const) {
      let [told, held] = [0, 0];
      for (let seed = 1; seed <= 25; seed++) {
        const at = speeds.slice(0, count).map((n, i) => syntheticTrial(`T${i}`, i === 0 ? slow : n, 175 + 10 * i));
        const { factors } = fitCalibration(measuredTrials(truth, at, 0.05, seed), syntheticModel);
        for (const name of ['feed', 'viscosity', 'colourRate'] as const) {
          const { fitted, low, high } = factors[name];
          if (fitted) told++;
          if (fitted && low < truth[name] && truth[name] < high) held++;
        }
      }
      expect(told).toBeGreaterThan(10);
      expect(held / told).toBeGreaterThan(0.93);
    }
  });

  test('figures that agree by luck do not make sure, and none of few is thrown out', () => {
    const starved = { ...plainFactors, feed: 0.8 };
    const at = [syntheticTrial('a', 14, 180), syntheticTrial('b', 18, 190)];
    const exact = fitCalibration(measuredTrials(starved, at, 0, 1), syntheticModel, { factors: ['feed'] });
    const { low, high } = exact.factors.feed;
    // t of one spare figure, 12.7, over two weighings that each repeat within 0.7 of 5 %
    expect(Math.log(high / low) / 2).toBeCloseTo((12.706 * 0.7 * 0.05) / Math.SQRT2, 3);
    const [first, second] = measuredTrials(starved, at, 0, 1);
    const wrong = { ...second, measured: { ...second.measured, massFlow: 0.5 * second.measured.massFlow } };
    const found = fitCalibration([first, wrong], syntheticModel, { factors: ['feed'] });
    expect(found.outliers).toEqual([]);
    expect(found.factors.feed.low < starved.feed && starved.feed < found.factors.feed.high).toBe(true);
  });

  test('a fit that is worse than none says so and is not kept', () => {
    const worse = { ...fit, error: { ...fit.error, before: fit.error.after, after: fit.error.before } };
    const demo = loadExample('demo');
    const target = { revisionId: 'C', name: 'worse' };
    expect(codesOf(applyCalibration(demo, worse, 'variant', target))).toEqual(['calibration-worse']);
  });

  test('factors found by formulas hold for solved fields where the ratios are told', () => {
    const ratios = { massFlow: 1.087, torque: 0.9, dE00: 0.95 };
    const fast = [14, 16, 18].map((speed, i) => syntheticTrial(`F${i}`, speed, 175 + 10 * i));
    const solved = measuredTrials(truth, fast, 0, 1).map(({ trial, measured }) => {
      const { massFlow, torque, dE00 } = measured;
      const times = (value: number | null, ratio: number) => (value ?? 0) * ratio;
      return {
        trial,
        measured: { massFlow: massFlow * 1.087, torque: times(torque, 0.9), dE00: times(dE00, 0.95) },
      };
    });
    const found = fitCalibration(solved, syntheticModel, { ratios: () => ratios });
    expect(found.fields).toBe('solved');
    for (const name of ['feed', 'viscosity', 'colourRate'] as const) {
      expect(found.factors[name].value).toBeCloseTo(truth[name], 2);
    }
    expect(fitCalibration(solved, syntheticModel).factors.feed.value).toBeGreaterThan(0.83);
    expect(fitCalibration(solved, syntheticModel, { ratios: () => null }).observations).toEqual([]);
  });

  test('uses what can be used and says what cannot', () => {
    const [first, second, ...rest] = trials.slice(0, 6);
    const left = { ...first, trial: { ...first.trial, excluded: true, excludedWhy: 'wet' } };
    const empty = { ...second, measured: { massFlow: 0, torque: null, dE00: 0.1 } };
    const found = fitCalibration([left, empty, ...rest], syntheticModel);
    expect(found.skipped.map(({ trialId }) => trialId)).toEqual(['T0', 'T1', 'T1']);
    expect(found.skipped[0].reason).toContain('wet');
    expect(found.trialIds).not.toContain('T0');
    const nothing = fitCalibration([], syntheticModel);
    expect(Object.values(nothing.factors).every(({ fitted, value }) => !fitted && value === 1)).toBe(true);
    const dead = fitCalibration(trials, () => null);
    expect([dead.observations.length, dead.factors.feed.fitted]).toEqual([0, false]);
  });

  test('asks the model little, and never twice the same', () => {
    const asked = new Set<string>();
    const found = fitCalibration(trials, (factors, trial) => {
      const key = JSON.stringify([factors, trial.id]);
      expect(asked.has(key)).toBe(false);
      asked.add(key);
      return syntheticModel(factors, trial);
    });
    expect(found.evaluations).toBe(asked.size);
    expect(found.evaluations / trials.length).toBeLessThan(60);
  });
});

describe('keeping a calibration', () => {
  const demo = loadExample('demo');
  const target = { revisionId: 'C', name: 'spring trials', date: '2026-06-01' };
  const unlocked = { ...demo, revisions: demo.revisions.map((each) => ({ ...each, locked: false })) };

  test('applied, the revision names it and the file stays valid', () => {
    const { project, revisionId } = expectOk(applyCalibration(unlocked, fit, 'apply', target));
    expect(revisionId).toBe('C');
    const kept = expectOk(checkProject(JSON.parse(JSON.stringify(project))));
    expect(kept.calibrations?.[0]).toMatchObject({ name: 'spring trials', date: '2026-06-01' });
    expect(kept.revisions.find(({ id }) => id === 'C')?.calibrationId).toBe(kept.calibrations?.[0].id);
    expect(demo.calibrations).toBeUndefined();
  });

  test('as a variant, the old revision stays as it is', () => {
    const once = expectOk(applyCalibration(unlocked, fit, 'variant', target));
    const twice = expectOk(applyCalibration(once.project, fit, 'variant', target));
    expect([once.revisionId, twice.revisionId]).toEqual(['C-calibrated', 'C-calibrated-2']);
    expect(twice.project.revisions.find(({ id }) => id === 'C')).toEqual(unlocked.revisions[2]);
    expect(new Set(twice.project.calibrations?.map(({ id }) => id)).size).toBe(2);
    expectOk(checkProject(JSON.parse(JSON.stringify(twice.project))));
  });

  test('not where the revision is locked, unknown, or no factor was told', () => {
    const locked = { ...demo, revisions: demo.revisions.map((each) => ({ ...each, locked: true })) };
    expect(codesOf(applyCalibration(locked, fit, 'apply', target))).toEqual(['revision-locked']);
    expect(applyCalibration(locked, fit, 'variant', target).ok).toBe(true);
    expect(codesOf(applyCalibration(demo, fit, 'apply', { ...target, revisionId: 'Z' }))).toEqual(['unknown-id']);
    expect(codesOf(applyCalibration(demo, fitCalibration([], syntheticModel), 'variant', target))).toEqual([
      'nothing-fitted',
    ]);
  });
});
