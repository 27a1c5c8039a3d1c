import { describe, expect, test } from 'vitest';
import { validateDesign } from '../../../core/design/validate.ts';
import { predict } from '../../../core/prediction/predict.ts';
import { overlapOf, withChanges } from '../../../core/search/changes.ts';
import { evaluateCandidate } from '../../../core/search/evaluate.ts';
import { figuresOf, searchFigures } from '../../../core/search/figures.ts';
import { proposedLimits } from '../../../core/search/goals.ts';
import { searchInputs } from '../../../core/search/inputs.ts';
import { seekResult } from '../../../core/search/result.ts';
import { seekGoal } from '../../../core/search/seek.ts';
import { makeableStep, onStepWithin } from '../../../core/search/steps.ts';
import { axisValues, sweepPlan } from '../../../core/search/sweep.ts';
import type { Evaluated, SeekInput, SweepAxis } from '../../../core/search/types.ts';
import { loadExample, revisionAt } from '../../helpers/projects.ts';

const project = loadExample('demo');
const inputs = searchInputs(project, 'C');
const inputOf = (id: string) => {
  const found = inputs.find((input) => input.id === id);
  if (!found) throw new Error(`no input ${id}`);
  return found;
};
const changed = (input: string, value: number) => revisionAt(withChanges(project, 'C', [{ input, value }]), 2);
const rootsOf = (revision: ReturnType<typeof changed>) =>
  revision.screw.sections.map(({ rootDiameterStartMm, rootDiameterEndMm }) => [rootDiameterStartMm, rootDiameterEndMm]);

describe('inputs', () => {
  test('every one has a range about its value, within its limits, and a step', () => {
    expect(inputs.length).toBeGreaterThan(80);
    for (const { low, high, floor, ceiling, value, step } of inputs) {
      expect(low).toBeLessThan(high);
      expect(low).toBeGreaterThanOrEqual(floor);
      expect(high).toBeLessThanOrEqual(ceiling);
      expect(value).toBeGreaterThanOrEqual(low);
      expect(value).toBeLessThanOrEqual(high);
      expect(step).toBeGreaterThan(0);
    }
  });

  test('sections and zones go by their names, units stand beside, limits are those of file and bore', () => {
    expect(inputOf('screw.sections[2].rootDiameterEndMm')).toMatchObject({
      label: 'Screw section 3 (metering), root diameter end',
      unit: 'mm',
      value: 10.4,
      floor: 1,
      ceiling: 13.5,
      step: 0.05,
      of: 'machine',
    });
    expect(inputOf('barrel.zones[3].setTempC')).toMatchObject({ low: 170, high: 200, step: 1 });
    expect(inputOf('process.screwSpeedRpm')).toMatchObject({
      label: 'Running, screw speed',
      low: 5,
      high: 20,
      step: 1,
    });
    expect(inputOf('material.meltDensityKgM3').of).toBe('granulate');
    expect(inputOf('screw.sections[0].starts')).toMatchObject({ low: 1, high: 3, step: 1 });
  });

  test('joint inputs move what belongs together and nothing else', () => {
    expect(rootsOf(changed('joint.meteringRoot', 11))).toEqual([
      [6.4, 6.4],
      [6.4, 11],
      [11, 11],
    ]);
    expect(rootsOf(changed('joint.feedRoot', 7))).toEqual([
      [7, 7],
      [7, 10.4],
      [10.4, 10.4],
    ]);
    // bore 14: metering depth 1.8, three times that is 5.4, a root of 3.2
    expect(rootsOf(changed('joint.compression', 3))).toEqual([
      [3.2, 3.2],
      [3.2, 10.4],
      [10.4, 10.4],
    ]);
    expect(changed('joint.lead', 16).screw.sections.map((s) => s.kind === 'flighted' && s.leadEndMm)).toEqual([
      16, 16, 16,
    ]);
    const hot = changed('joint.temperature', -5);
    expect(hot.barrel.zones.map((zone) => zone.kind === 'heated' && zone.setTempC)).toEqual([false, false, 170, 180]);
    expect(hot.nozzle.setTempC).toBe(183);
    expect(project).toEqual(loadExample('demo'));
  });

  test('the order of changes does not matter, and metering thickened to the feed stays two parts', () => {
    const both = [
      { input: 'joint.compression', value: 2 },
      { input: 'joint.meteringRoot', value: 6.4 },
    ];
    const one = withChanges(project, 'C', both);
    expect(withChanges(project, 'C', [...both].reverse())).toEqual(one);
    // metering depth 3.8, twice that leaves a negative root, which the checks then refuse; metering stays as set
    expect(rootsOf(revisionAt(one, 2))[2]).toEqual([6.4, 6.4]);
  });

  test('two inputs that set one number are told', () => {
    expect(overlapOf(project, 'C', ['joint.lead', 'screw.sections[1].leadEndMm'])).toEqual([
      'joint.lead',
      'screw.sections[1].leadEndMm',
    ]);
    expect(overlapOf(project, 'C', ['joint.lead', 'joint.meteringRoot', 'joint.compression'])).toBeNull();
  });

  test.each(['barrel.boreDiameterMm', 'screw.sections[2].rootDiameterEndMm'])(
    '%s, which compression rests on, is not varied beside it',
    (place) => {
      expect(overlapOf(project, 'C', ['joint.compression', place])).toEqual(['joint.compression', place]);
      expect(overlapOf(project, 'C', [place, 'joint.compression'])).toEqual([place, 'joint.compression']);
      expect(overlapOf(project, 'C', ['joint.lead', place])).toBeNull();
    },
  );

  test('a sweep tables the values that are built, each once', () => {
    const axis = { input: 'joint.lead', from: 10.33, to: 10.41, steps: 5, scale: 'linear' } as const;
    const plan = sweepPlan(project, 'C', inputs, [axis]);
    expect(plan.ok && plan.value.values).toEqual([[10.35, 10.4]]);
    const ratios = { input: 'joint.compression', from: 1.31, to: 1.62, steps: 4, scale: 'linear' } as const;
    const squeezed = sweepPlan(project, 'C', inputs, [ratios]);
    if (!squeezed.ok) throw new Error('no plan');
    for (const changes of squeezed.value.candidates) {
      const made = searchInputs(withChanges(project, 'C', changes), 'C').find(({ id }) => id === ratios.input);
      expect(made?.value).toBeCloseTo(changes[0]?.value ?? 0, 5);
    }
  });

  test('steps: sizes by the tool, speeds and temperatures whole, anything else to its third digit', () => {
    expect(onStepWithin(10.4312, 0.05, 8, 12)).toBe(10.45);
    expect(onStepWithin(7.96, 0.05, 8.03, 12)).toBe(8.05);
    expect(onStepWithin(3, 5, 1, 4)).toBe(3);
    expect(makeableStep('barrel.zones[1].setTempC', 185)).toBe(1);
    expect(makeableStep('screw.radialClearanceMm', 0.1)).toBe(0.005);
    expect(makeableStep('material.meltDensityKgM3', 1240)).toBe(10);
  });
});

describe('sweeps', () => {
  const axis = (more: Partial<SweepAxis>): SweepAxis => ({
    input: 'process.screwSpeedRpm',
    from: 5,
    to: 20,
    steps: 4,
    scale: 'linear',
    ...more,
  });

  test('values run evenly or in even ratios, ends exact, two inputs row by row', () => {
    expect(axisValues(axis({}))).toEqual([5, 10, 15, 20]);
    expect(axisValues(axis({ scale: 'log', steps: 3 }))).toEqual([5, 10, 20]);
    expect(axisValues(axis({ from: 20, to: 5 }))).toEqual([20, 15, 10, 5]);
    const plan = sweepPlan(project, 'C', inputs, [axis({}), axis({ input: 'joint.lead', from: 10, to: 14, steps: 3 })]);
    expect(plan.ok && plan.value.candidates.length).toBe(12);
    expect(plan.ok && plan.value.candidates[5]).toEqual([
      { input: 'process.screwSpeedRpm', value: 10 },
      { input: 'joint.lead', value: 12 },
    ]);
  });

  test.each([
    [[axis({ input: 'screw.nothing' })], 'input-unknown'],
    [[axis({ steps: 1 })], 'steps'],
    [[axis({ steps: 2.5 })], 'steps'],
    [[axis({ steps: 5e9 })], 'steps'],
    [[axis({ steps: 10_000 }), axis({ input: 'joint.lead', from: 10, to: 14, steps: 10_000 })], 'too-many'],
    [[axis({ to: 5 })], 'ends'],
    [[axis({ to: Number.NaN })], 'ends'],
    [[axis({ to: 4000 })], 'out-of-range'],
    [[axis({ input: 'joint.temperature', from: -5, to: 5, scale: 'log' })], 'log-ends'],
    [[], 'axis-count'],
    [[axis({}), axis({})], 'overlap'],
    [[axis({ steps: 200 }), axis({ input: 'joint.lead', from: 10, to: 14, steps: 200 })], 'too-many'],
  ])('%j is refused', (axes, code) => {
    expect(sweepPlan(project, 'C', inputs, axes)).toMatchObject({ ok: false, issues: [{ code }] });
  });
});

describe('candidates of the demo', () => {
  const evaluate = (changes: Evaluated['changes']) => evaluateCandidate(project, 'C', changes, { fields: 'formula' });

  test('one that cannot be made is a hole with its reason, one that runs has every figure', () => {
    const hole = evaluate([{ input: 'joint.meteringRoot', value: 13.9 }]);
    expect(hole.hole).toMatch(/root leaves no channel|clearance.*Allowed: less than/);
    expect(hole.figures).toEqual({});
    const runs = evaluate([]);
    expect(runs.hole).toBeNull();
    expect(Object.keys(runs.figures)).toEqual(searchFigures.map(({ id }) => id));
    expect(runs.figures.smallestRoot).toBeCloseTo(0.0064, 9);
    expect(runs.figures.torqueShare).toBeGreaterThan(0.1);
    expect(runs.figures.torqueShare).toBeLessThan(1);
  });

  test('the figures beside those of comparisons are the prediction’s', () => {
    const made = validateDesign(project, 'C');
    if (!made.ok) throw new Error('the design is refused');
    const prediction = predict(made.value, { fields: 'formula', curvePoints: 0 });
    const { residence, drive, melting } = prediction;
    const { figures } = evaluateCandidate(project, 'C', [], { fields: 'formula' });
    expect(figures.dwellSpread).toBeCloseTo(residence.t95 / residence.mean, 9);
    expect(figures.dwellSpread).toBeGreaterThan(1);
    expect(figures.rootMargin).toBe(drive.worstRoot.margin);
    // no example leaves anything solid, so that a share is put in
    const solid = { ...melting, engagement: { ...melting.engagement, unmelted: 0.12 } };
    expect(figuresOf({ ...prediction, melting: solid }, made.value).unmelted).toBe(0.12);
    expect(figures.unmelted).toBe(melting.engagement.unmelted);
    expect(figures.torqueShare).toBeCloseTo(drive.torque / drive.torquePullout, 9);
    const flighted = made.value.screw.sections.flatMap((one) => (one.kind === 'flighted' ? [one] : []));
    expect(figures.smallestFillet).toBe(Math.min(...flighted.map(({ rootFillet }) => rootFillet)));
    expect(figures.thinnestFlight).toBe(Math.min(...flighted.map(({ flightWidth }) => flightWidth)));
  });

  test('a short search shortens the residence and still meets the demand', () => {
    const picked = ['joint.lead', 'process.screwSpeedRpm'].map((id): SeekInput => {
      const { label, unit, value, low, high, step } = inputOf(id);
      return { input: id, label, unit, value, low, high, step };
    });
    const limits = proposedLimits(project, 'C').filter(({ on }) => on);
    const spec = { inputs: picked, objective: { figure: 't95', sense: 'least' }, limits, budget: 10 } as const;
    const base = evaluate([]);
    const seek = seekGoal(spec, base);
    const found: Evaluated[] = [];
    for (let next = seek.next(); !next.done; ) {
      const batch = next.value.candidates.map(evaluate);
      found.push(...batch);
      next = seek.next(batch);
    }
    const [first] = seekResult(spec, base, found).candidates;
    expect(first?.meets).toBe(true);
    expect(first?.design.figures.t95).toBeLessThan(0.9 * (base.figures.t95 ?? 0));
    expect(first?.design.figures.margin).toBeGreaterThanOrEqual(1);
    expect(first?.figures.find(({ id }) => id === 't95')?.verdict).toBe('better');
  });
});
