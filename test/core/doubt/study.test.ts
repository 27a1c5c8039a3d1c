import { describe, expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { parseFieldPath, replacedAt, resolveField, valueAt } from '../../../core/doubt/fieldPath.ts';
import { doubtInputs } from '../../../core/doubt/inputs.ts';
import { doubtOutputs } from '../../../core/doubt/outputs.ts';
import { doubtPlan, sampledDesign, sampleRun } from '../../../core/doubt/sample.ts';
import { summariseDoubt } from '../../../core/doubt/summary.ts';
import type { SampleResult } from '../../../core/doubt/types.ts';
import type { Calibration, Project } from '../../../core/project/schema.ts';
import { expectOk, loadExample } from '../../helpers/projects.ts';

const demo = loadExample('demo');
const pathsOf = (project: Project) => doubtInputs(project, 'C').inputs.map(({ path }) => path);

const fitted = (value: number, low: number, high: number) => ({ value, low, high, fitted: true });
const held = { value: 1, low: 1, high: 1, fitted: false };
const calibration: Calibration = {
  id: 'k',
  name: 'spring trials',
  materialId: 'pale-wood-micro',
  trialIds: ['T1'],
  factors: { feed: held, viscosity: fitted(1.2, 1.1, 1.4), wallFriction: held, colourRate: held },
  error: { before: 0.3, after: 0.1, leaveOneOut: null },
};
const calibratedDemo: Project = {
  ...demo,
  calibrations: [calibration],
  revisions: demo.revisions.map((each) => (each.id === 'C' ? { ...each, calibrationId: 'k' } : each)),
};

describe('places in a project', () => {
  test('are found in revision, material, process and print, and nowhere else', () => {
    const at = (text: string) => resolveField(demo, 'C', text);
    expect(at('process.feedC')).toEqual(['process', 'feedC']);
    expect(at('material.meltDensityKgM3')).toEqual(['materials', 0, 'meltDensityKgM3', 'value']);
    expect(at('screw.sections[0].leadStartMm')).toEqual(['revisions', 2, 'screw', 'sections', 0, 'leadStartMm']);
    expect([at('screw.hand'), at('screw.sections[99].leadStartMm'), at('material.nothing')]).toEqual([
      null,
      null,
      null,
    ]);
    for (const text of ['__proto__.x', 'a.constructor', 'a..b', 'a[', '', 'a.prototype[0]']) {
      expect(parseFieldPath(text)).toBeNull();
    }
  });

  test('are replaced in a copy', () => {
    const path = resolveField(demo, 'C', 'process.feedC') ?? [];
    const changed = replacedAt(demo, path, 40);
    expect(valueAt(changed, path)).toBe(40);
    expect(demo.process.feedC).not.toBe(40);
    expect(changed.revisions).toBe(demo.revisions);
  });
});

describe('inputs of a study', () => {
  test('are the material’s ranges and the model’s own, with what is left out and why', () => {
    const { inputs, skipped } = doubtInputs(demo, 'C');
    expect(inputs.map(({ path }) => path)).toEqual(
      expect.arrayContaining(['material.frictionOnBarrel', 'factor.feed']),
    );
    expect(inputs.every(({ low, nominal, high }) => low <= nominal && nominal <= high && low < high)).toBe(true);
    expect(skipped.find(({ path }) => path === 'factor.wallFriction')?.reason).toContain('frictionOnBarrel');
    expect(skipped.some(({ path }) => path.startsWith('material.mechanical'))).toBe(true);
  });

  test('a range of the project goes before that of the material; a wrong one is told', () => {
    const doubts = [
      { path: 'material.frictionOnBarrel', low: 0.4, high: 0.45 },
      { path: 'screw.radialClearanceMm', low: 0, high: 1 },
      { path: 'process.feedC', low: 100, high: 120 },
      { path: 'screw.nowhere', low: 0, high: 1 },
    ];
    const { inputs, skipped } = doubtInputs({ ...demo, doubts }, 'C');
    expect(inputs.filter(({ path }) => path === 'material.frictionOnBarrel').map(({ high }) => high)).toEqual([0.45]);
    expect(inputs.find(({ path }) => path === 'screw.radialClearanceMm')?.unit).toBe('mm');
    const wrong = skipped.map(({ path }) => path);
    expect(wrong).toEqual(expect.arrayContaining(['process.feedC', 'screw.nowhere']));
  });

  test('a measured factor stands for what it scales', () => {
    const paths = pathsOf(calibratedDemo);
    expect(paths).toContain('factor.viscosity');
    expect(paths).not.toContain('material.rheology.d1PaS');
    expect(pathsOf(demo)).toContain('material.rheology.d1PaS');
  });
});

describe('a range that a calibration has measured', () => {
  test('is not sampled beside the factor, whoever states it', () => {
    const fields = ['viscosityPaS', 'consistencyPaSn', 'zeroShearViscosityPaS', 'd1PaS'];
    const name = fields.find((field) => resolveField(calibratedDemo, 'C', `material.rheology.${field}`));
    const stated = `material.rheology.${name}`;
    const at = resolveField(calibratedDemo, 'C', stated) ?? [];
    const value = Number(valueAt(calibratedDemo, at));
    const project = { ...calibratedDemo, doubts: [{ path: stated, low: 0.8 * value, high: 1.2 * value }] };
    expect(pathsOf({ ...project, calibrations: [] })).toContain(stated);
    const { inputs, skipped } = doubtInputs(project, 'C');
    expect(inputs.map((input) => input.path)).not.toContain(stated);
    expect(skipped.find((one) => one.path === stated)?.reason).toContain('has measured it');
  });
});

describe('samples', () => {
  test('at the nominal values are the design itself', () => {
    const plan = doubtPlan(demo, 'C', { samples: 2 });
    const nominal = plan.inputs.map((input) => input.nominal);
    const sampled = expectOk(sampledDesign(plan, nominal));
    const plain = expectOk(validateDesign(demo, 'C'));
    expect(sampled.material.viscosityLaw(460, 0)).toEqual(plain.material.viscosityLaw(460, 0));
    expect(sampled.barrel).toEqual(plain.barrel);
  });

  test('carry their values and the factors of the calibration into the design', () => {
    const plan = doubtPlan(calibratedDemo, 'C', { samples: 2 });
    const values = plan.inputs.map(({ path, nominal }) =>
      path === 'factor.viscosity' ? 1.3 : path === 'material.bulkDensityKgM3' ? 610 : nominal,
    );
    const sampled = expectOk(sampledDesign(plan, values));
    const plain = expectOk(validateDesign(demo, 'C'));
    const level = (design: typeof plain) => {
      const law = design.material.viscosityLaw(460, 0);
      return law.model === 'cross' ? law.zeroShearViscosity : Number.NaN;
    };
    expect(level(sampled) / level(plain)).toBeCloseTo(1.3, 10);
    expect(sampled.material.bulkDensity).toBe(610);
  });

  test('stay within their ranges and run; one that cannot be is counted', () => {
    const doubts = [{ path: 'material.softeningC', low: 45, high: 300 }];
    const plan = doubtPlan({ ...demo, doubts }, 'C', { samples: 12, curvePoints: 2 });
    plan.values.forEach((value, i) => {
      const { low, high } = plan.inputs[i % plan.inputs.length];
      expect(value >= low && value <= high).toBe(true);
    });
    const softening = plan.inputs.findIndex(({ path }) => path === 'material.softeningC');
    const hot = Array.from({ length: 12 }, (_, k) => k).find(
      (k) => plan.values[k * plan.inputs.length + softening] > 200,
    );
    const failed = sampleRun(plan, hot ?? 0);
    expect(failed.failure).toContain('softening');
    const good = sampleRun(plan, -1);
    expect(good.failure).toBeNull();
    expect(good.outputs[0]).toBeGreaterThan(0);
    const summary = summariseDoubt(plan, good, [failed, { ...good, index: 3 }]);
    expect([summary.done, summary.failed, summary.outputs[0].known]).toEqual([2, 1, 1]);
    expect(summary.curve.q50).toEqual(good.curve);
  });
});

test('a summary gives exact quantiles, bands and the strongest input, in any order of samples', () => {
  const plan = doubtPlan(demo, 'C', { samples: 101 });
  const count = plan.inputs.length;
  const fake = (index: number): SampleResult => {
    const values = index < 0 ? new Float64Array(count) : plan.values.slice(index * count, (index + 1) * count);
    const outputs = new Float64Array(doubtOutputs.length).fill(index);
    outputs[1] = values[2];
    return { index, values, outputs, speed: Float64Array.of(1), curve: Float64Array.of(index), failure: null };
  };
  const results = Array.from({ length: 101 }, (_, i) => fake(i));
  const summary = summariseDoubt(plan, fake(-1), results);
  expect([summary.outputs[0].q05, summary.outputs[0].q50, summary.outputs[0].q95]).toEqual([5, 50, 95]);
  expect([summary.curve.q05[0], summary.curve.q95[0]]).toEqual([5, 95]);
  expect(summary.influences[1].ranked[0]).toMatchObject({ path: plan.inputs[2].path, aboveNoise: true });
  expect(summary.influences[1].ranked[0].strength).toBeCloseTo(1, 9);
  expect(summary.measureNext.map(({ path }) => path)).toContain(plan.inputs[2].path);
  expect(summariseDoubt(plan, fake(-1), results.toReversed())).toEqual(summary);
});

test('bands of the outputs lie about the figures shown, where these are told', () => {
  const plan = doubtPlan(demo, 'C', { samples: 4, curvePoints: 0 });
  const at = (index: number, factor: number): SampleResult => ({
    index,
    values: new Float64Array(plan.inputs.length),
    outputs: Float64Array.from(doubtOutputs, () => 2 * factor),
    speed: new Float64Array(0),
    curve: new Float64Array(0),
    failure: null,
  });
  const samples = [0.9, 1, 1.1].map((factor, i) => at(i, factor));
  const plain = summariseDoubt(plan, at(-1, 1), samples);
  const shown = summariseDoubt(
    plan,
    at(-1, 1),
    samples,
    doubtOutputs.map(() => 2.2),
  );
  expect([plain.fields, plain.outputs[0].nominal, shown.outputs[0].nominal]).toEqual(['formula', 2, 2.2]);
  expect(shown.outputs[0].q95 / plain.outputs[0].q95).toBeCloseTo(1.1, 12);
  expect(plain.note).toContain('by formulas');
});
