/** Limits, times and numbers of flow tests, each against what it must be. */

import { describe, expect, test } from 'vitest';
import { controllerModule, gcodeModule } from '../../../core/handover/controller/controllerModules.ts';
import { flowLimit, trialShare } from '../../../core/handover/controller/flowLimits.ts';
import { heatersOf } from '../../../core/handover/controller/heaters.ts';
import { controllerTable } from '../../../core/handover/controller/numbers.ts';
import type { HandoverSource } from '../../../core/handover/types.ts';
import { expectOk } from '../../helpers/projects.ts';
import { changed, demo, planOf, subjectOf, withPrediction, written } from './flowSource.ts';

describe('limits', () => {
  /** A curve of even speeds up to 10 times the set speed, with all else as given. */
  function flat(source: HandoverSource, torque: (i: number) => number, pressure: (i: number) => number) {
    const speeds = Array.from({ length: 10 }, (_, i) => ((i + 1) * subjectOf(source).design.process.screwSpeed) / 8);
    return withPrediction(source, ({ curve }) => ({
      curve: {
        ...curve,
        screwSpeed: speeds,
        torque: speeds.map((_, i) => torque(i)),
        torqueAvailable: speeds.map(() => 1),
        headPressure: speeds.map((_, i) => pressure(i)),
        volumeFlow: speeds.map((speed) => 1e-8 * speed),
      },
    }));
  }
  const highest = (source: HandoverSource) => {
    const { design, prediction } = subjectOf(source);
    const limit = expectOk(flowLimit(design, prediction));
    return [Math.round((8 * limit.highest) / design.process.screwSpeed), limit.reason];
  };

  test('a trial ends at 0.8 of the torque', async () => {
    expect(trialShare).toBe(0.8);
    const source = await demo();
    expect(
      highest(
        flat(
          source,
          (i) => 0.11 * (i + 1),
          () => 0,
        ),
      ),
    ).toEqual([7, 'torque of the drive']);
  });

  test('a trial ends at 0.8 of the pressure limit', async () => {
    const source = await demo();
    const limit = subjectOf(source).design.barrel.pressureLimit ?? Number.NaN;
    const rising = (i: number) => limit * (0.31 + 0.1 * i);
    expect(highest(flat(source, () => 0.1, rising))).toEqual([5, 'pressure limit of the barrel']);
  });

  test('a heater above what the granulate bears refuses the test', async () => {
    const hot = changed(await demo(), ({ design }) => ({
      design: { ...design, material: { ...design.material, maxSafe: design.nozzle.setTemperature - 1 } },
    }));
    const limit = flowLimit(subjectOf(hot).design, subjectOf(hot).prediction);
    expect(limit.ok ? '' : limit.issues[0]?.message).toMatch(/safe for the granulate/);
  });

  test('a screw that never gets warm refuses the test', async () => {
    const cold = withPrediction(await demo(), () => ({ warmUp: { ready: 100, mayTurn: Number.POSITIVE_INFINITY } }));
    expect(flowLimit(subjectOf(cold).design, subjectOf(cold).prediction).ok).toBe(false);
  });

  test('numbers of a blocked design tell its stops in every form and before saving', async () => {
    const stop = { severity: 'stop', saw: 'Granules jam here.', change: 'Open the channel.' };
    const source = withPrediction(await demo(), () => ({ findings: [stop] }));
    for (const form of ['text', 'csv', 'json']) {
      const { text, cautions } = await written(controllerModule, source, { form });
      expect(text).toContain(stop.saw);
      expect(cautions.join()).toContain(stop.saw);
    }
    expect((await written(controllerModule, await demo())).cautions).toEqual([]);
  });
});

describe('times', () => {
  /** The demo with a mean residence of so many turns of the screw. */
  const dwelling = async (turns: number) => {
    const source = await demo();
    const mean = turns / subjectOf(source).prediction.output.screwSpeed;
    return withPrediction(source, ({ residence }) => ({ residence: { ...residence, mean } }));
  };

  test('each step settles for a mean residence time and the middle speed purges for three', async () => {
    const turns = 20;
    const { steps, purge, cuts } = planOf(await dwelling(turns));
    expect(purge.rpm).toBe(steps[1]?.rpm);
    expect(purge.seconds).toBe(Math.ceil((3 * 60 * turns) / purge.rpm));
    for (const { rpm, settle } of steps) expect(settle).toBe(Math.ceil((60 * turns) / rpm));
    expect(cuts).toEqual([]);
  });

  test('what is cut short is told', async () => {
    const source = await dwelling(4000);
    const { steps, purge } = planOf(source);
    expect([steps[0]?.settle, purge.seconds]).toEqual([900, 1800]);
    const { cautions, text } = await written(gcodeModule, source);
    for (const words of ['Settling is cut at 15 min', 'purge is cut at 30 min']) {
      expect(cautions.join()).toContain(words);
      expect(text).toContain(words);
    }
  });

  test('the soak is as long as the prediction wants, and says where it is longer than asked', async () => {
    const slow = withPrediction(await demo(), () => ({ warmUp: { ready: 600, mayTurn: 600 + 1800 } }));
    const { cautions, codes } = await written(gcodeModule, slow);
    expect(codes).toContain('G4 S1800');
    expect(cautions.join()).toContain('The soak is 30 min, not the 20 min asked for');
    const long = await written(gcodeModule, slow, { soak: 40 });
    expect(long.codes).toContain('G4 S2400');
    expect(long.cautions.join()).not.toContain('The soak is');
  });

  test('a light step asks for a finer balance', async () => {
    const source = await demo();
    const [least] = planOf(source).steps;
    const short = Math.max(10, Math.floor((60 * 4.5) / (least?.grams ?? 1)));
    const light = await written(gcodeModule, source, { collect: Math.min(short, 600) });
    expect(light.cautions.join()).toContain('The lightest step brings about');
    const heavy = withPrediction(source, ({ output }) => ({ output: { ...output, massFlow: 1000 * output.massFlow } }));
    expect((await written(gcodeModule, heavy)).cautions.join()).not.toContain('lightest step');
  });
});

test('numbers: fastest feed, retract length and digits', async () => {
  const subject = subjectOf(await demo());
  const { rows } = controllerTable(subject);
  const row = (name: string) => rows.find((cells) => cells[1] === name);
  const { firmware } = subject.prediction.print;
  const { volumeFlow } = subject.prediction.output;
  // 1 mm of this filament is 1 mm³, so its feed is the flow
  expect(Number(row('Fastest feed, Ø 1.128379 mm')?.[2]) / (1e9 * volumeFlow)).toBeCloseTo(1, 3);
  expect(Number(row('Retract length')?.[2]) / (1000 * (firmware.releaseLength ?? 0))).toBeCloseTo(1, 3);
  expect(Number(row('Time constant')?.[2]) / (firmware.advanceTime ?? 0)).toBeCloseTo(1, 3);
  for (const cells of rows) {
    const [, name, value, unit, meaning] = cells;
    const set = /^M92 E([\d.]+)/.exec(String(meaning))?.[1];
    if (set !== undefined) expect(set).toBe(String(value));
    if (typeof value !== 'number' || /^steps/.test(String(unit))) continue;
    expect([name, Number(value.toPrecision(4))]).toEqual([name, value]);
  }
});

test('heaters go with the flow, the nozzle last, however the zones are listed', async () => {
  const { design } = subjectOf(await demo());
  const names = heatersOf(design).map(({ name }) => name);
  const heated = design.barrel.zones.filter(({ kind }) => kind === 'heated');
  expect(heated.length).toBeGreaterThan(1);
  const along = [...heated].sort((p, q) => p.start - q.start).map(({ name }) => name);
  expect(names).toEqual([...along, 'nozzle']);
  const backwards = { ...design, barrel: { ...design.barrel, zones: [...design.barrel.zones].reverse() } };
  expect(heatersOf(backwards).map(({ name }) => name)).toEqual(names);
});
