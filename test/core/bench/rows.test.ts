import { describe, expect, test } from 'vitest';
import { benchRows } from '../../../core/bench/benchRows.ts';
import { freshColour, measuredFigures, predictTrial } from '../../../core/bench/trialFigures.ts';
import { projectForTrial } from '../../../core/bench/trialProject.ts';
import { plainFactors } from '../../../core/design/calibrate.ts';
import type { Trial } from '../../../core/project/schema.ts';
import { ok } from '../../../core/result.ts';
import { expectOk, loadExample } from '../../helpers/projects.ts';
import { syntheticModel, syntheticTrial } from './synthetic.ts';

const demo = loadExample('demo');
const [first] = demo.benchLog;

describe('a trial applied to a project', () => {
  test('sets revision, granulate, speed and heaters in the order of the machine', () => {
    const trial = { ...first, setTempsC: [171, 182, 193], screwSpeedRpm: 7 };
    const { project, revisionId } = expectOk(projectForTrial(demo, trial));
    const { barrel, nozzle } = project.revisions[0];
    expect([revisionId, project.process.screwSpeedRpm, nozzle.setTempC]).toEqual(['A', 7, 193]);
    expect(barrel.zones.map((zone) => ('setTempC' in zone ? zone.setTempC : null))).toEqual([null, null, 171, 182]);
    expect(demo.process.screwSpeedRpm).toBe(10);
  });

  test('does not guess: a wrong count, unknown names and a screw at rest are issues at the trial’s fields', () => {
    const wrong = { ...first, setTempsC: [180], screwSpeedRpm: 0, materialId: 'x', revisionId: 'Z' };
    const result = projectForTrial(demo, wrong);
    const fields = result.ok ? [] : result.issues.map(({ path }) => path);
    expect(fields).toEqual(['revisionId', 'materialId', 'screwSpeedRpm'].map((key) => ['benchLog', 0, key]));
    const short = projectForTrial(demo, { ...first, setTempsC: [180, 190] });
    expect(short.ok ? '' : short.issues[0].allowed).toBe('3: melting zone, metering zone, nozzle');
  });

  test('without calibration where a fit asks for that', () => {
    const revisions = demo.revisions.map((each) => ({ ...each, calibrationId: 'k' }));
    const kept = expectOk(projectForTrial({ ...demo, revisions }, first));
    const bare = expectOk(projectForTrial({ ...demo, revisions }, first, 'without'));
    expect(kept.project.revisions[0].calibrationId).toBe('k');
    expect(bare.project.revisions[0]).not.toHaveProperty('calibrationId');
  });

  test('is predicted with factors: more viscosity, more torque', () => {
    const plain = expectOk(predictTrial(demo, first, plainFactors));
    const thick = expectOk(predictTrial(demo, first, { ...plainFactors, viscosity: 0.8, colourRate: 2 }));
    expect(thick.torque ?? 0).toBeLessThan(0.95 * (plain.torque ?? 0));
    expect(thick.dE00 ?? 0).toBeGreaterThan(1.5 * (plain.dE00 ?? 9));
  });
});

test('figures of a trial in SI, colour against the fresh granulate', () => {
  const fresh = freshColour(demo.materials[0]);
  expect(fresh).toEqual([80, 4, 20]);
  const figures = measuredFigures({ ...first, lab: [80, 4, 20] }, fresh);
  expect(figures.massFlow).toBeCloseTo(8.1e-3 / 120, 12);
  expect([figures.torque, figures.dE00]).toEqual([3.4, 0]);
  expect(measuredFigures(first, null).dE00).toBeNull();
});

describe('measured against predicted', () => {
  const weighed = (id: string, share: number): Trial => {
    const trial = syntheticTrial(id, 10, 180);
    const figures = syntheticModel(plainFactors, trial);
    return { ...trial, grams: share * (figures?.massFlow ?? 0) * 60 * 1000 };
  };
  const trials = [1, 1.02, 0.97, 1.05, 1.6, 0.99].map((share, i) => weighed(`T${i}`, share));
  const predictAt = (trial: Trial) => ok(syntheticModel(plainFactors, trial) ?? expect.fail());

  test('gives residual and ratio, and flags the one that stands apart', () => {
    const rows = benchRows(trials, predictAt);
    expect(rows[4]).toMatchObject({ outlier: true, excluded: false });
    expect(rows[4].ratio).toBeCloseTo(1.6, 9);
    expect(rows[4].residual).toBeCloseTo(0.6 * (rows[4].predicted ?? 0), 12);
    expect(rows[4].reason).toContain('more than');
    expect(rows.filter(({ outlier }) => outlier)).toHaveLength(1);
    expect(rows[0].screwSpeed).toBeCloseTo(10 / 60, 12);
  });

  test('flags nothing among few, leaves out what the user left out, and names what cannot be predicted', () => {
    expect(benchRows(trials.slice(2, 5), predictAt).every(({ robustZ, outlier }) => robustZ === null && !outlier)).toBe(
      true,
    );
    const left = benchRows(
      trials.map((trial, i) => (i === 4 ? { ...trial, excluded: true, excludedWhy: 'wet lot' } : trial)),
      predictAt,
    );
    expect(left[4]).toMatchObject({ outlier: false, excluded: true, reason: 'Left out: wet lot.' });
    const none = benchRows([first], (trial) => {
      const run = projectForTrial(demo, { ...trial, revisionId: 'Z' });
      return run.ok ? ok(syntheticModel(plainFactors, trial) ?? expect.fail()) : run;
    });
    expect(none[0]).toMatchObject({ predicted: null, ratio: null });
    expect(none[0].reason).toContain('No revision');
    expect(
      benchRows(
        trials.map((trial) => ({ ...trial, grams: 0 })),
        predictAt,
      )[0].reason,
    ).toBe('Nothing was weighed.');
  });
});
