import { describe, expect, test } from 'vitest';
import { contentRules } from '../../../core/findings/contentRules.ts';
import type { FindingContext } from '../../../core/findings/context.ts';
import { heaterRules } from '../../../core/findings/heaterRules.ts';
import { heatRules } from '../../../core/findings/heatRules.ts';
import type { HeaterLoad, Prediction } from '../../../core/prediction/types.ts';
import { contextOf, said } from './machineContext.ts';

const demo = contextOf('demo', 'C');
const { prediction, design } = demo;
const { softening } = design.material;
const withParts = (parts: Partial<Prediction>): FindingContext => ({
  ...demo,
  prediction: { ...prediction, ...parts },
});
const rule = (code: string, parts: Partial<Prediction>) => said(contentRules, code, withParts(parts));

test('a plug that locks itself, and one that slips back, with what the melt presses with', () => {
  const solids = (change: Partial<Prediction['solids']>) => ({ solids: { ...prediction.solids, ...change } });
  expect(rule('plug-locks', solids({ capped: true }))?.severity).toBe('warn');
  expect(rule('plug-locks', solids({ capped: false }))).toBeNull();
  expect(rule('plug-slips-back', solids({ holds: false }))?.limit).toBe(demo.driven.point.state.march.startPressure);
  expect(rule('plug-slips-back', solids({ holds: true }))).toBeNull();
});

test('models that put the end of melting before and behind the flights’ end', () => {
  const engagement = { ...prediction.melting.engagement, front: 0.1, flightEnd: 0.15 };
  const latest = (value: number | null) => ({
    melting: { ...prediction.melting, engagement, ends: { ...prediction.melting.ends, latest: value } },
  });
  expect(rule('melting-uncertain', latest(0.151))?.value).toBe(0.151);
  expect(rule('melting-uncertain', latest(null))?.saw).toContain('not on the screw at all');
  expect(rule('melting-uncertain', latest(0.149))).toBeNull();
});

test('warming up is worth a word past half an hour; it may be never', () => {
  const heaters = { curves: [], heaters: [], energy: 0, ready: 60, tooWeak: [] };
  const warmUp = (change: object) => ({ warmUp: { ...heaters, ...change } as unknown as Prediction['warmUp'] });
  expect(rule('warms-slowly', warmUp({ mayTurn: 1801 }))?.limit).toBe(1800);
  expect(rule('warms-slowly', warmUp({ mayTurn: 1799 }))).toBeNull();
  expect(rule('warms-slowly', { warmUp: null })).toBeNull();
  expect(rule('never-warm', warmUp({ mayTurn: Number.POSITIVE_INFINITY }))?.severity).toBe('stop');
});

test('a throat past softening stops while running and is warned of at a hot standstill', () => {
  const throat = (running: number, standing: number) => {
    const { coldEnd } = prediction;
    const state = (part: typeof coldEnd.running, margin: number) => ({ ...part, margin, core: softening - margin });
    return {
      coldEnd: { ...coldEnd, running: state(coldEnd.running, running), standing: state(coldEnd.standing, standing) },
    };
  };
  expect(rule('softens-in-feed', throat(-19.5, 30))?.severity).toBe('stop');
  expect(rule('softens-in-feed', throat(9, 30))?.severity).toBe('warn');
  expect(rule('softens-in-feed', throat(11, -1))?.severity).toBe('warn');
  expect(rule('softens-in-feed', throat(11, 4))?.severity).toBe('note');
  expect(rule('softens-in-feed', throat(11, 6))).toBeNull();
  const still = { ...throat(-1, 30), output: { ...prediction.output, flows: false } };
  expect(rule('softens-in-feed', still)?.saw).not.toContain('while it runs');
});

test('melting close to the output', () => {
  const { volumeFlow } = prediction.output;
  const melts = (share: number) =>
    withParts({
      capacities: prediction.capacities.map((each) =>
        each.kind === 'melting' ? { ...each, volumeFlow: share * volumeFlow } : each,
      ),
    });
  expect(said(heatRules, 'melting-limits', melts(1.24))?.severity).toBe('warn');
  expect(said(heatRules, 'melting-limits', melts(1.26))).toBeNull();
});

describe('weak heaters', () => {
  const weak = (change: Partial<HeaterLoad>, limits: Partial<FindingContext['driven']['point']['limits']> = {}) => {
    const zones = prediction.heat.zones.map((zone) =>
      zone.part === 'zone' ? { ...zone, duty: 'weak' as const, ...change } : zone,
    );
    const context = withParts({ heat: { ...prediction.heat, zones } });
    const { point } = demo.driven;
    return { ...context, driven: { ...demo.driven, point: { ...point, limits: { ...point.limits, ...limits } } } };
  };
  const cold = { reached: design.material.melting - 1, needed: 30, maxPower: 20 };
  const say = (context: FindingContext) => said(heaterRules, 'heater-too-weak', context);

  test('stop where they leave a zone below melting and nothing melts, warn else', () => {
    expect(say(weak(cold, { melting: 0 }))?.severity).toBe('stop');
    expect(say(weak(cold, { pumping: 0 }))?.severity).toBe('stop');
    expect(say(weak(cold))?.severity).toBe('warn');
    expect(say(weak({ ...cold, reached: design.material.melting + 1 }, { melting: 0 }))?.severity).toBe('warn');
  });

  test('no negative watts are missing where neighbours are what they lack', () => {
    expect(say(weak(cold))?.saw).toContain('10 W are missing');
    const enough = say(weak({ needed: 22.78, maxPower: 22.8 }))?.saw;
    expect(enough).not.toContain('missing');
    expect(enough).toContain('neighbours');
  });

  test('are named where granules are not molten', () => {
    const context = weak(cold);
    const { point } = context.driven;
    const melt = { ...point.state.melt, start: { reach: demo.machine.stations.count, share: 0 } };
    const late = { ...context, driven: { ...context.driven, point: { ...point, state: { ...point.state, melt } } } };
    expect(said(heatRules, 'not-molten', late)).toMatchObject({ severity: 'stop', limit: 0 });
    expect(said(heatRules, 'not-molten', late)?.saw).toContain('with its 20 W');
    expect(said(heatRules, 'not-molten', context)).toBeNull();
  });
});
