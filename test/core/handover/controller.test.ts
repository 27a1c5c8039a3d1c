import { strFromU8 } from 'fflate';
import { describe, expect, test } from 'vitest';
import { benchContext } from '../../../core/bench/csvTypes.ts';
import { readBenchCsv } from '../../../core/bench/readBenchCsv.ts';
import {
  controllerModule,
  gcodeModule,
  weighingSheetModule,
} from '../../../core/handover/controller/controllerModules.ts';
import { trialShare } from '../../../core/handover/controller/flowLimits.ts';
import { heatersOf } from '../../../core/handover/controller/heaters.ts';
import { runHandover } from '../../../core/handover/run.ts';
import type { HandoverModule, HandoverSource } from '../../../core/handover/types.ts';
import { interpolateLinear } from '../../../core/math/interpolate.ts';
import { expectOk, loadExample } from '../../helpers/projects.ts';
import { predictedSource, sourceOf } from './source.ts';
import { solidTools } from './tools.ts';

const demo = () => predictedSource('demo', ['B']);

async function written(module: HandoverModule, values: Record<string, unknown> = {}, source?: HandoverSource) {
  return runHandover(module, source ?? (await demo()), values, solidTools);
}

async function gcode(values: Record<string, unknown> = {}) {
  const [file] = expectOk(await written(gcodeModule, values));
  const text = strFromU8(file?.bytes ?? new Uint8Array());
  const codes = text
    .split('\n')
    .map((line) => line.split(';')[0]?.trim() ?? '')
    .filter((code) => code !== '');
  return { text, codes, file };
}

/** Screw speed (rpm) and seconds of each move, from what the controller would do with it. */
async function turning(codes: readonly string[]) {
  const { prediction } = (await demo()).subjects[0] ?? {};
  const perMm = Number(/^M92 E([\d.]+)/.exec(codes.find((code) => code.startsWith('M92')) ?? '')?.[1]);
  const perTurn = prediction?.print.firmware.stepsPerScrewTurn ?? Number.NaN;
  return codes.flatMap((code) => {
    const found = /^G1 E([\d.]+) F([\d.]+)$/.exec(code);
    if (!found) return [];
    const [length, feed] = [Number(found[1]), Number(found[2])];
    return [{ length, rpm: (feed * perMm) / perTurn, seconds: (60 * length) / feed }];
  });
}

describe('flow test', () => {
  test('heats, waits, soaks, purges, weighs slow steps first, and ends with motors and heaters off', async () => {
    const { codes, text } = await gcode();
    const at = (start: string, from = 0) => codes.findIndex((code, i) => i >= from && code.startsWith(start));
    const order = [at('M104'), at('M109'), at('G4'), at('G1'), at('M400'), at('M117 Step 1')];
    expect(order.every((place, i) => place > (order[i - 1] ?? -1))).toBe(true);
    expect(codes.indexOf('M0')).toBeGreaterThan(at('M109'));
    expect(codes.indexOf('M0')).toBeLessThan(at('G4'));
    expect(text.indexOf('MIND')).toBeLessThan(text.indexOf('M104'));
    const last = codes.findLastIndex((code) => code.startsWith('G1'));
    expect(at('M104 S0', last)).toBeGreaterThan(last);
    expect(at('M84', last)).toBeGreaterThan(at('M104 S0', last));
    const speeds = (
      await turning(codes.slice(at('M117 Step 1')).concat(codes.filter((code) => code.startsWith('M92'))))
    ).map(({ rpm }) => rpm);
    expect(speeds.every((rpm, i) => rpm > (speeds[i - 1] ?? 0) - 1e-3)).toBe(true);
  });

  test('uses plain ASCII and only documented codes, none of which moves an axis', async () => {
    const { codes, text } = await gcode({ heaters: 'tools' });
    expect(text).toMatch(/^[\n\x20-\x7e]*$/);
    for (const code of codes)
      expect(code).toMatch(
        /^(G1 E[\d.]+ F[\d.]+|G4 S\d+|G21|G92 E0|M0|M8[34]|M92 E[\d.]+|M10[49]( T\d)? S\d+|M117 .+|M200 D0|M22[01] S100|M400|T0)$/,
      );
    const heaters = heatersOf((await demo()).subjects[0]?.design ?? (null as never));
    expect(codes.filter((code) => code.startsWith('M109'))).toHaveLength(heaters.length);
    expect(codes.find((code) => code.startsWith('M109 T0'))).toBe(`M109 T0 S${heaters.at(-1)?.celsius}`);
  });

  test('never asks for more torque or pressure than the share it may, nor for long moves', async () => {
    const { codes } = await gcode({ speeds: 8 });
    const { prediction, design } = (await demo()).subjects[0] ?? {};
    const moves = await turning(codes);
    const curve = prediction?.curve;
    const speeds = [...(curve?.screwSpeed ?? [])];
    for (const { rpm, seconds, length } of moves) {
      const torque = interpolateLinear(speeds, [...(curve?.torque ?? [])], rpm / 60);
      const available = interpolateLinear(speeds, [...(curve?.torqueAvailable ?? [])], rpm / 60);
      expect(torque).toBeLessThanOrEqual(trialShare * available);
      const pressure = interpolateLinear(speeds, [...(curve?.headPressure ?? [])], rpm / 60);
      expect(pressure).toBeLessThanOrEqual(trialShare * (design?.barrel.pressureLimit ?? Number.POSITIVE_INFINITY));
      expect(seconds).toBeLessThanOrEqual(10.01);
      expect(length).toBeLessThanOrEqual(50);
    }
    expect(moves.length).toBeGreaterThan(20);
  });

  test('refuses a speed beyond the limits by name, value and range', async () => {
    const refused = await written(gcodeModule, { highest: 999 });
    expect(refused).toMatchObject({ ok: false, issues: [{ path: ['options', 'highest'], value: '999 rpm' }] });
    expect(refused.ok ? '' : refused.issues[0]?.allowed).toMatch(/^0 to [\d.]+ rpm/);
  });

  test('refuses a design out of which nothing comes', async () => {
    const project = loadExample('demo');
    for (const revision of project.revisions)
      for (const zone of revision.barrel.zones) if (zone.kind === 'heated') zone.setTempC = 40;
    const refused = await written(gcodeModule, {}, await sourceOf(project, ['B']));
    expect(refused.ok ? [] : refused.issues.map(({ code }) => code)).toContain('flow-test-refused');
  });
});

test('the weighing sheet, filled in, reads back as trials with the speeds and temperatures of the program', async () => {
  const project = loadExample('demo');
  const [csv, page] = expectOk(await written(weighingSheetModule, { speeds: 3, collect: 45 }));
  const lines = strFromU8(csv?.bytes ?? new Uint8Array()).split('\r\n');
  const heading = lines.find((line) => line.startsWith('id,')) ?? '';
  const [date, mass] = ['date', 'mass (g)'].map((name) => heading.split(',').indexOf(name));
  let weighed = 0;
  const filled = lines.map((line) => {
    const cells = line.split(',');
    if (cells.length < 10 || line === heading) return line;
    weighed += 2.5;
    return cells.map((cell, i) => (i === date ? '2026-05-05' : i === mass ? `${weighed}` : cell)).join(',');
  });
  const read = expectOk(readBenchCsv(filled.join('\r\n'), benchContext(project, 'B')));
  expect(read.errors).toEqual([]);
  const { codes } = await gcode({ speeds: 3, collect: 45 });
  const speeds = new Set((await turning(codes)).map(({ rpm }) => Number(rpm.toPrecision(3))));
  const heaters = heatersOf((await demo()).subjects[0]?.design ?? (null as never)).map(({ celsius }) => celsius);
  expect(read.trials.map(({ trial }) => trial.grams)).toEqual([2.5, 5, 7.5]);
  for (const { trial } of read.trials) {
    expect([...speeds]).toContain(trial.screwSpeedRpm);
    expect(trial).toMatchObject({ seconds: 45, setTempsC: heaters, revisionId: 'B', date: '2026-05-05' });
  }
  const html = strFromU8(page?.bytes ?? new Uint8Array());
  for (const { trial } of read.trials) expect(html).toContain(`<td>${trial.screwSpeedRpm}</td>`);
  expect(html).not.toMatch(/<script|http/);
});

test('the numbers agree among themselves in every form', async () => {
  const json = JSON.parse(
    strFromU8(expectOk(await written(controllerModule, { form: 'json' }))[0]?.bytes ?? new Uint8Array()),
  );
  const numberOf = (name: string): number => json.numbers.find((row: { name: string }) => row.name === name)?.value;
  expect(numberOf('E steps per mm, Ø 1.128379 mm')).toBeCloseTo(numberOf('Steps per volume'), 3);
  expect(numberOf('E steps per mm, Ø 1.75 mm')).toBeCloseTo(
    (numberOf('Steps per volume') * Math.PI * 1.75 ** 2) / 4,
    2,
  );
  const perVolume = numberOf('Microsteps per turn of the screw') / numberOf('Melt per turn of the screw');
  expect(perVolume / numberOf('Steps per volume')).toBeCloseTo(1, 3);
  const text = strFromU8(expectOk(await written(controllerModule))[0]?.bytes ?? new Uint8Array());
  expect(text).toContain('steps/mm³');
  expect(text).not.toMatch(/NaN|Infinity|undefined/);
});
