import { describe, expect, test } from 'vitest';
import type { Design } from '../../../core/design/types.ts';
import { cohesiveArch } from '../../../core/feed/arching.ts';
import type { FindingContext } from '../../../core/findings/context.ts';
import { feedRules } from '../../../core/findings/feedRules.ts';
import { changedFriction, changedGrain, changedHopper, changedMaterial, changedOpening, demo } from '../feed/made.ts';
import { check, contextOf, soundContext } from './feedContext.ts';

const seen = (code: string, design: Design, base?: FindingContext) => check(feedRules, code, contextOf(design, base));

/** The demo with an output that is a share of what its feed carries, limited by something else. */
function withOutput(share: number, design = demo): FindingContext {
  const context = contextOf(design);
  const { prediction, driven } = context;
  const massFlow = share * driven.point.feed.massFlow;
  const output = { ...prediction.output, massFlow, flows: true };
  return { ...context, prediction: { ...prediction, output, limit: 'pumping' } };
}

describe('speaks when the limit is passed and is silent just before', () => {
  const steepest = (25.9 * Math.PI) / 180;
  const strong = (share: number) =>
    changedMaterial({
      unconfinedStrength: (share * demo.hopper.outletDiameter * demo.material.bulkDensity * 9.81) / 5,
    });
  const cases: readonly (readonly [code: string, design: Design, sound: Design])[] = [
    ['hopper-arching', changedHopper({ outletDiameter: 0.0151 }), changedHopper({ outletDiameter: 0.0152 })],
    ['opening-small', changedOpening({ width: 0.0075 }), changedOpening({ width: 0.0077 })],
    ['hopper-cohesive-arch', strong(4), strong(0.5)],
    ['hopper-funnel-flow', changedHopper({ wallHalfAngle: 0.53 }), changedHopper({ wallHalfAngle: steepest })],
    ['fines-sift', changedGrain({ d10: 2.35e-3 / 6.47 }), changedGrain({ d10: 2.35e-3 / 6.46 })],
    ['flows-badly', changedMaterial({ angleOfRepose: 0.8 }), changedMaterial({ angleOfRepose: 0.78 })],
    ['granules-trickle', changedHopper({ gap: 2.06e-3 }), changedHopper({ gap: 2.04e-3 })],
    [
      'granules-trickle',
      changedHopper({ gap: 1.1e-3, agitation: 'vibration' }),
      changedHopper({ gap: 1.1e-3, agitation: 'stirrer' }),
    ],
    [
      'shaking-packs',
      changedGrain({ d10: 4e-4 }, changedHopper({ agitation: 'vibration' })),
      changedHopper({ agitation: 'vibration' }),
    ],
    ['feed-pulses', changedGrain({ d50: 3.3e-3 }), changedGrain({ d50: 2.9e-3 })],
    ['flight-gap-narrow', changedGrain({ d90: 6.2e-3 }), changedGrain({ d90: 5.5e-3 })],
  ];

  test.each(cases)('%s', (code, design, sound) => {
    const found = seen(code, design);
    expect(found).not.toBeNull();
    expect(seen(code, sound)).toBeNull();
    for (const words of [found?.saw, found?.why, found?.change]) expect(words).toMatch(/^[A-Z].*\.$/);
  });
});

describe('a hopper that lets nothing out stops', () => {
  const { d50 } = demo.material.grain;
  test('by its outlet', () => {
    const shut = changedHopper({ outletDiameter: d50 });
    expect(seen('hopper-slow', shut)?.severity).toBe('stop');
    expect(seen('hopper-arching', shut)?.severity).toBe('stop');
  });

  test('by cohesion, from half of the outlet that it asks for down', () => {
    const sticky = (share: number) => {
      const { outlet } = cohesiveArch(changedMaterial({ unconfinedStrength: 200 }));
      const open = changedOpening({ width: 1, length: 1 });
      return seen(
        'hopper-cohesive-arch',
        changedHopper({ outletDiameter: share * outlet }, changedMaterial({ unconfinedStrength: 200 }, open)),
      );
    };
    expect(sticky(0.49)?.severity).toBe('stop');
    expect(sticky(0.51)?.severity).toBe('warn');
    expect(sticky(1.01)).toBeNull();
  });
});

test('what a plug alone carries and what loose granules do are told apart', () => {
  const context = withOutput(0.9);
  const { solids } = context.prediction;
  const low = { ...solids.low, freeFlow: 0 };
  const nothing = { ...context, prediction: { ...context.prediction, solids: { ...solids, low } } };
  expect(check(feedRules, 'feed-uncertain', nothing)?.saw).toMatch(/plug alone would carry nothing.*trough/);
});

describe('arches', () => {
  test('are a risk by degrees, and differ when the hopper is shaken', () => {
    expect(seen('hopper-arching', changedHopper({ outletDiameter: 0.015 }))?.severity).toBe('note');
    expect(seen('hopper-arching', changedHopper({ outletDiameter: 0.01 }))?.severity).toBe('warn');
    const shaken = seen('hopper-arching', changedHopper({ outletDiameter: 0.007, agitation: 'vibration' }));
    expect(shaken).toMatchObject({ severity: 'note', change: 'Widen the outlet.' });
    expect(shaken?.why).toContain('bursts');
  });

  test('of cohesive granulate name the narrower of outlet and opening', () => {
    const sticky = changedMaterial({ unconfinedStrength: 200 });
    expect(seen('hopper-cohesive-arch', changedHopper({ outletDiameter: 0.012 }, sticky))?.where).toBe('hopper outlet');
    expect(seen('hopper-cohesive-arch', changedOpening({ width: 0.004, length: 0.01 }, sticky))?.where).toBe(
      'feed opening',
    );
    expect(seen('hopper-cohesive-arch', changedMaterial({ unconfinedStrength: null }))).toBeNull();
  });

  test('by cohesion that nobody measured are said not to be reckoned', () => {
    const unknown = changedMaterial({ angleOfRepose: 1, unconfinedStrength: null });
    expect(seen('flows-badly', unknown)).toMatchObject({ severity: 'warn' });
    expect(seen('flows-badly', unknown)?.saw).toContain('not reckoned');
    expect(seen('flows-badly', changedMaterial({ angleOfRepose: 1, unconfinedStrength: 50 }))?.saw).not.toContain(
      'not reckoned',
    );
  });
});

test('where the internal friction comes from is said, and what helps where no slope is steep enough', () => {
  const rough = changedMaterial({ internalFriction: null, angleOfRepose: 0.5 }, changedHopper({ wallFriction: 0.9 }));
  const found = seen('hopper-funnel-flow', rough);
  expect(found?.saw).toContain('angle of repose');
  expect(found?.change).toContain('no slope is steep enough');
  const given = seen(
    'hopper-funnel-flow',
    changedMaterial({ internalFriction: 0.5 }, changedHopper({ wallHalfAngle: 1 })),
  );
  expect(given?.saw).not.toContain('repose');
});

describe('conveying against the output', () => {
  const uncertain = (share: number, design?: Design) => check(feedRules, 'feed-uncertain', withOutput(share, design));

  test('surging is feared where the low end of the friction range carries less', () => {
    const { massFlow, massFlowLow } = contextOf(demo).driven.point.feed;
    const edge = massFlowLow / massFlow;
    expect(uncertain(edge * 0.999)).toBeNull();
    expect(uncertain(edge * 1.001)?.severity).toBe('note');
    expect(uncertain(0.9)?.severity).toBe('warn');
    expect(uncertain(0.9, changedFriction(0.4, 0.2))).toBeNull();
  });

  test('a feed that limits is told as starved, with what every turn could take, and what to widen', () => {
    const starved = (design: Design): FindingContext => {
      const context = withOutput(1, design);
      return { ...context, prediction: { ...context.prediction, limit: 'feed' } };
    };
    const plain = check(feedRules, 'runs-starved', starved(demo));
    expect(plain?.saw).toContain('at every turn');
    expect(plain?.change).toContain('Deepen');
    expect(check(feedRules, 'feed-uncertain', starved(demo))).toBeNull();
    const slow = starved(changedHopper({ outletDiameter: 0.0044 }));
    expect(check(feedRules, 'runs-starved', slow)?.change).toContain('outlet');
    expect(check(feedRules, 'hopper-slow', slow)?.where).toBe('hopper outlet');
    const narrow = starved(changedOpening({ width: 0.0034 }));
    expect(check(feedRules, 'runs-starved', narrow)?.change).toContain('feed opening');
    expect(check(feedRules, 'hopper-slow', narrow)?.where).toBe('feed opening');
  });
});

test('nothing is said of a sound hopper', () => {
  for (const code of [
    'hopper-arching',
    'opening-small',
    'hopper-slow',
    'hopper-funnel-flow',
    'fines-sift',
    'flows-badly',
  ]) {
    expect(check(feedRules, code, soundContext), code).toBeNull();
  }
});
