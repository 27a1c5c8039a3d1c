import { describe, expect, test } from 'vitest';
import type { FindingContext } from '../../../core/findings/context.ts';
import { driveRules } from '../../../core/findings/driveRules.ts';
import type { DriveLoad } from '../../../core/prediction/types.ts';
import { contextOf, said, withDesign, withResult } from './machineContext.ts';

const demo = contextOf('demo', 'C');
const { drive, output } = demo.prediction;
const { design } = demo;
const rule = (code: string, context: FindingContext) => said(driveRules, code, context);
const loaded = (change: Partial<DriveLoad>) => withResult(demo, 'drive', change);
const bearing = { kind: 'ball', staticLoad: 2000, dynamicLoad: 1000 } as const;
const borne = (load: Partial<NonNullable<DriveLoad['bearing']>>) => {
  const fine = { staticMargin: 5, staticMarginBlocked: 2, lifeTurns: 1e9, lifeTime: 1e9, ...load };
  return withDesign(loaded({ bearing: fine, thrust: 400, thrustBlocked: 1000 }), {
    drive: { ...design.drive, bearing },
  });
};

describe('steps of the screw', () => {
  const allowed = design.screw.steel.yieldStress / 3;
  const step = drive.roots.find(({ kind }) => kind === 'shankShoulder') ?? drive.worstRoot;
  const at = (full: number) => loaded({ roots: [{ ...step, full }] });

  test('a note past what is allowed, a warning past yield, silent before', () => {
    expect(rule('shoulder-stress', at(0.999 * allowed))).toBeNull();
    expect(rule('shoulder-stress', at(1.001 * allowed))).toMatchObject({ severity: 'note', limit: allowed, z: 0 });
    expect(rule('shoulder-stress', at(1.501 * allowed))?.severity).toBe('warn');
  });

  test('the fillet it asks for is enough, or it says that none is', () => {
    expect(rule('shoulder-stress', at(1.2 * allowed))?.change).toMatch(/fillet of at least [\d.]+ mm/);
    expect(rule('shoulder-stress', at(4 * allowed))?.change).toContain('No fillet is enough');
    expect(
      rule('shoulder-stress', loaded({ roots: [drive.worstRoot].map((r) => ({ ...r, factor: 1, full: 1e12 })) })),
    ).toBeNull();
  });
});

describe('bearing', () => {
  test('not given: a note, unless the thrust is one that a motor bears', () => {
    const without = (thrustBlocked: number) =>
      withDesign(loaded({ bearing: null, thrustBlocked }), { drive: { ...design.drive, bearing: null } });
    expect(rule('bearing-unknown', without(500))?.severity).toBe('note');
    expect(rule('bearing-unknown', without(9))).toBeNull();
    expect(rule('bearing-unknown', borne({}))).toBeNull();
  });

  test('stop where running dents it, warn where blocking does, note where it is tight', () => {
    expect(rule('bearing-overloaded', borne({}))).toBeNull();
    expect(rule('bearing-overloaded', borne({ staticMargin: 1.99 }))?.severity).toBe('note');
    expect(rule('bearing-overloaded', borne({ staticMarginBlocked: 0.99 }))).toMatchObject({
      severity: 'warn',
      value: 1000,
    });
    expect(rule('bearing-overloaded', borne({ staticMargin: 0.99, staticMarginBlocked: 0.5 }))).toMatchObject({
      severity: 'stop',
      value: 400,
      limit: 2000,
    });
    expect(rule('bearing-overloaded', demo)).toBeNull();
  });

  test('a short life is told, an unknown one is not', () => {
    expect(rule('bearing-life', borne({ lifeTime: 999 * 3600 }))?.limit).toBe(3.6e6);
    expect(rule('bearing-life', borne({ lifeTime: 1001 * 3600 }))).toBeNull();
    expect(rule('bearing-life', borne({ lifeTime: null }))).toBeNull();
  });
});

describe('pressure', () => {
  test('past the limit when blocked: warn; when running: stop; unknown limit: a note where it can be high', () => {
    const limit = { pressureLimit: 10e6 };
    expect(rule('over-pressure-limit', loaded({ ...limit, mostPressure: 9.9e6 }))).toBeNull();
    expect(rule('over-pressure-limit', loaded({ ...limit, mostPressure: 11e6 }))).toMatchObject({
      severity: 'warn',
      limit: 10e6,
    });
    const running = withResult(loaded({ ...limit, mostPressure: 12e6 }), 'output', { headPressure: 10.5e6 });
    expect(rule('over-pressure-limit', running)).toMatchObject({ severity: 'stop', value: 10.5e6 });
    expect(rule('over-pressure-limit', loaded({ pressureLimit: null, mostPressure: 1e9 }))).toBeNull();
    expect(rule('pressure-limit-unknown', loaded({ pressureLimit: null, mostPressure: 6e6 }))?.where).toBe(
      'heat break',
    );
    expect(rule('pressure-limit-unknown', loaded({ pressureLimit: null, mostPressure: 4.9e6 }))).toBeNull();
    expect(rule('pressure-limit-unknown', loaded({ pressureLimit: 1e6, mostPressure: 6e6 }))).toBeNull();
  });

  test('a screw that bows is said to rub', () => {
    const force = { bucklingFree: 1000 };
    expect(rule('screw-bows', loaded({ ...force, thrust: 499, thrustBlocked: 999 }))).toBeNull();
    expect(rule('screw-bows', loaded({ ...force, thrust: 501, thrustBlocked: 600 }))).toMatchObject({
      value: 501,
      limit: 500,
    });
    expect(rule('screw-bows', loaded({ ...force, thrust: 100, thrustBlocked: 1001 }))?.why).toContain('rubs');
  });
});

test('no clearance: from 5 µm down', () => {
  const gap = (radialClearance: number) => withDesign(demo, { screw: { ...design.screw, radialClearance } });
  expect(rule('no-clearance', gap(4.9e-6))?.limit).toBe(5e-6);
  expect(rule('no-clearance', gap(5.1e-6))).toBeNull();
});

test('torque asked for and torque there is are of one speed, the set one', () => {
  const held = { ...demo, driven: { ...demo.driven, heldBy: 'torque' as const, torqueAtSetSpeed: 99 } };
  expect(rule('over-torque', held)).toMatchObject({ value: 99, limit: drive.torqueUsable });
  expect(rule('over-torque', held)?.saw).toContain('granules and melt');
});

test('nothing presses the screw back while nothing runs', () => {
  const still = withDesign(loaded({ bearing: null, thrust: 0, thrustBlocked: 500 }), {
    drive: { ...design.drive, bearing: null },
  });
  expect(rule('bearing-unknown', still)).toMatchObject({ value: 500, limit: 10 });
  expect(rule('bearing-unknown', still)?.saw).not.toContain('0 N,');
});

describe('motor', () => {
  test('close to stalling is told only where something runs', () => {
    const tight = loaded({ motorMargin: 1.49 });
    expect(rule('stall-close', tight)?.limit).toBe(1.5);
    expect(rule('stall-close', loaded({ motorMargin: 1.51 }))).toBeNull();
    expect(rule('stall-close', withResult(tight, 'output', { ...output, flows: false }))).toBeNull();
  });

  test('step rates: note for small controllers, warn for any; shaking in its band only', () => {
    const rate = (fullSteps: number, microsteps: number) => {
      const calm = withResult(demo, 'print', { firmware: { ...demo.prediction.print.firmware, demandStepRate: null } });
      return withResult(calm, 'drive', { stepping: { fullSteps, microsteps } });
    };
    expect(rule('step-rate-high', rate(100, 39e3))).toBeNull();
    expect(rule('step-rate-high', rate(100, 41e3))?.severity).toBe('note');
    expect(rule('step-rate-high', rate(100, 201e3))?.severity).toBe('warn');
    expect(rule('step-shake', rate(40, 640))?.saw).toContain('40 a second');
    expect(rule('step-shake', rate(61, 640))).toBeNull();
    expect(rule('step-shake', rate(0, 0))).toBeNull();
  });
});
