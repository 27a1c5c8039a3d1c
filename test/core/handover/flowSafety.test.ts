/** What keeps a flow test safe, and told: direction, feeds, guard, state, first turn. */

import { describe, expect, test } from 'vitest';
import { flightAngle, placeSections } from '../../../core/geometry/profile.ts';
import { guardLimit } from '../../../core/handover/controller/coldGuard.ts';
import {
  controllerModule,
  gcodeModule,
  weighingSheetModule,
} from '../../../core/handover/controller/controllerModules.ts';
import { senseOf } from '../../../core/handover/controller/direction.ts';
import { fastestFeed } from '../../../core/handover/controller/flowPlan.ts';
import { heatersOf } from '../../../core/handover/controller/heaters.ts';
import { flowCautions } from '../../../core/handover/controller/words.ts';
import { changed, demo, planOf, subjectOf, written } from './flowSource.ts';

describe('direction', () => {
  test.each(['right', 'left'] as const)('a %s-hand screw turned as told moves its flights forward', async (hand) => {
    const { design } = subjectOf(await demo());
    const placed = placeSections(design.screw).find(({ section }) => section.kind === 'flighted');
    if (!placed) throw new Error('the demo has a flight');
    // seen along z, as from the drive, a growing angle is clockwise
    const turn = senseOf(hand) === 'clockwise' ? 0.1 : -0.1;
    const mirror = hand === 'left' ? -1 : 1;
    const angle = (z: number) => mirror * flightAngle(placed, z);
    // where a flight that is turned by `turn` meets the angle that it had at z0: angle(z) + turn = angle(z0)
    const z0 = (placed.start + placed.end) / 2;
    const step = 1e-6;
    const climb = (angle(z0 + step) - angle(z0 - step)) / (2 * step);
    expect(-turn / climb).toBeGreaterThan(0);
  });

  test('stands in program, sheet, page and numbers, and follows the hand', async () => {
    const source = await demo();
    const left = changed(source, ({ design }) => ({
      design: { ...design, screw: { ...design.screw, hand: 'left' as const } },
    }));
    for (const module of [gcodeModule, weighingSheetModule, controllerModule]) {
      expect((await written(module, source)).text).toMatch(/drive.* must turn counter-clockwise.*right-hand/);
      expect((await written(module, left)).text).toMatch(/drive.* must turn clockwise.*left-hand/);
    }
    expect((await written(weighingSheetModule, source)).page).toContain('must turn counter-clockwise');
  });
});

describe('feeds', () => {
  test('the fastest step stays below 10 mm/s by a thicker virtual filament, which is told; turns stay as they are', async () => {
    const source = await demo();
    const plan = planOf(source);
    const { firmware } = subjectOf(source).prediction.print;
    expect(
      ((plan.steps.at(-1)?.rpm ?? 0) * firmware.stepsPerScrewTurn * 1000) / (firmware.stepsPerLength ?? 1) / 60,
    ).toBeGreaterThan(15);
    expect(fastestFeed(plan)).toBeLessThanOrEqual(10);
    expect(fastestFeed(plan)).toBeGreaterThan(8);
    const perArea = plan.stepsPerMm / plan.filamentDiameter ** 2;
    expect(perArea / ((firmware.stepsPerLength ?? 0) / 1000 / (1000 * firmware.filamentDiameter) ** 2)).toBeCloseTo(
      1,
      4,
    );
    const { text, cautions, codes } = await written(gcodeModule, source);
    for (const told of [text.split('M104')[0], cautions.join('\n')]) {
      expect(told).toContain(`virtual filament of ${plan.filamentDiameter} mm`);
      expect(told).toContain('slows the screw silently');
    }
    const feeds = codes.flatMap((code) => /^G1 E[\d.]+ F([\d.]+)$/.exec(code)?.[1] ?? []).map(Number);
    expect(Math.max(...feeds)).toBeLessThanOrEqual(600);
  });

  test('a filament whose feeds are low is kept', async () => {
    const source = await demo();
    const plan = planOf(source, { highest: (planOf(source).steps.at(-1)?.rpm ?? 0) / 4 });
    expect(plan.filamentDiameter).toBeCloseTo(plan.printDiameter, 12);
  });
});

describe('the program', () => {
  test('tells, and only as a remark, how far a guard against cold extrusion may be lowered', async () => {
    // about what wax asks for
    const source = changed(await demo(), ({ design }) => ({
      design: { ...design, nozzle: { ...design.nozzle, setTemperature: 273.15 + 64 } },
    }));
    const lowest = Math.min(...heatersOf(subjectOf(source).design).map(({ celsius }) => celsius));
    const { text, codes, cautions } = await written(gcodeModule, source, { heaters: 'tools' });
    expect(lowest).toBe(64);
    expect(text).toContain(`;M302 S${lowest - 5} `);
    expect(codes.some((code) => code.startsWith('M302'))).toBe(false);
    expect(cautions.join()).toContain(`M302 S${lowest - 5}`);
    expect((await written(gcodeModule, await demo())).text).not.toContain('M302');
    const heater = (celsius: number) => [{ name: 'nozzle', celsius }];
    expect(guardLimit(heater(174))?.celsius).toBe(169);
    expect(guardLimit(heater(175))).toBeNull();
    // the nozzle is what it watches: a cooler zone does not take it lower than the nozzle needs
    expect(guardLimit([{ name: 'rear', celsius: 60 }, ...heater(64)])?.celsius).toBe(59);
    expect(guardLimit([{ name: 'rear', celsius: 160 }, ...heater(200)])?.celsius).toBe(155);
  });

  test('clears old state, takes its tool, and turns once, hot, before a person lets it go on', async () => {
    const source = await demo();
    const { perTurn, perMm } = { perTurn: planOf(source).stepsPerTurn, perMm: planOf(source).stepsPerMm };
    for (const heaters of ['tools', 'nozzle']) {
      const { codes } = await written(gcodeModule, source, { heaters });
      const first = codes.findIndex((code) => code.startsWith('G1'));
      for (const code of ['M220 S100', 'M221 S100', 'M200 D0', `M92 E${perMm}`])
        expect(codes.slice(0, first)).toContain(code);
      expect(codes.slice(0, first).includes('T0')).toBe(heaters === 'tools');
      const stop = codes.indexOf('M0', first);
      const soak = codes.findIndex((code) => code.startsWith('G4'));
      expect(codes.findLastIndex((code) => code.startsWith('M109'))).toBeLessThan(soak);
      expect(soak).toBeLessThan(first);
      const turned = codes.slice(first, stop).map((code) => Number(/^G1 E([\d.]+)/.exec(code)?.[1] ?? 0));
      expect((turned.reduce((sum, length) => sum + length, 0) * perMm) / perTurn).toBeCloseTo(1, 3);
      const slow = Number(/F([\d.]+)/.exec(codes[first] ?? '')?.[1]);
      expect((slow * perMm) / perTurn).toBeLessThan(6.001);
      expect(codes[stop - 1]).toMatch(/^M117 One turn/);
    }
    const { codes } = await written(gcodeModule, source);
    expect(codes[codes.indexOf('M0') - 1]).toBe('M117 Set zones by hand');
    expect(codes.findLast((code) => code.startsWith('M117'))).toContain('Reset controller');
  });

  test('carries every caution and the binding limit in its head', async () => {
    const { text, cautions } = await written(gcodeModule, await demo());
    const head = text.slice(0, text.indexOf('M104'));
    for (const caution of flowCautions) expect(head).toContain(caution);
    expect(cautions).toEqual(expect.arrayContaining([...flowCautions]));
    // once, though the granulate says it too
    expect(cautions.filter((text) => /metal burn/.test(text))).toHaveLength(1);
    expect(head).toMatch(/Highest speed of this test: [\d.]+ rpm; allowed: [\d.]+ rpm, bound by: /);
    expect(text).not.toContain('that torque and pressure leave');
  });
});
