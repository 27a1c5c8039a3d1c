import { describe, expect, test } from 'vitest';
import { cautionRules } from '../../../core/findings/cautionRules.ts';
import type { FindingContext } from '../../../core/findings/context.ts';
import { feedDistance, roundDistance, slotDistance } from '../../../core/findings/openingReach.ts';
import { contextOf, said, withDesign, withResult } from './machineContext.ts';

const demo = contextOf('demo', 'C');
const { material } = demo.design;
const rule = (code: string, context: FindingContext) => said(cautionRules, code, context);
const of = (change: Partial<typeof material>) => withDesign(demo, { material: { ...material, ...change } });

describe('every caution', () => {
  const all = cautionRules.flatMap((each) => {
    const caution = each.check(demo);
    return caution ? [{ code: each.code, ...caution }] : [];
  });

  test('stands whatever the machine is: burns, fumes, pressure, release, cold start, rotation, mains, food', () => {
    expect(all.map(({ code }) => code)).toEqual([
      'caution-hot-melt',
      'caution-fumes',
      'caution-fire',
      'caution-material',
      'caution-blocked-nozzle',
      'caution-hot-release',
      'caution-cold-start',
      'caution-turning-screw',
      'caution-mains-heaters',
      'caution-food',
    ]);
  });

  test.each(all)(
    '$code: explained in two sentences, left to rules and people who may decide',
    ({ severity, why, change }) => {
      expect(severity).toBe('caution');
      expect(why.match(/[.!](\s|$)/g)?.length).toBe(2);
      expect(change).toMatch(/local|licensed|competent|qualified/);
    },
  );
});

describe('material', () => {
  test('fumes name the material’s own products, or say that they are not told', () => {
    const styrene = of({ name: 'Made-up', cautions: ['Fume holds styrene: ventilate.', 'Wear gloves.'] });
    expect(rule('caution-fumes', styrene)?.saw).toBe('Made-up: Fume holds styrene: ventilate.');
    expect(rule('caution-fumes', of({ name: 'Made-up', cautions: [] }))?.saw).toContain('not told');
    expect(rule('caution-material', styrene)?.saw).toContain('Wear gloves.');
  });

  test('no caution of the material is lost between them', () => {
    const cautions = [
      'Flammable: no flames.',
      'Gives off vapours.',
      'Keep dry.',
      'Charring gives smoke: an ember risk.',
    ];
    const context = of({ cautions });
    const told = ['caution-fumes', 'caution-fire', 'caution-material'].map((code) => rule(code, context)?.saw ?? '');
    for (const caution of cautions) expect(told.join(' ')).toContain(caution);
  });

  test('fire: for what says so, and for dust; not for coarse grains that say nothing', () => {
    const coarse = { cautions: [], form: 'pellet', grain: { ...material.grain, d10: 2e-3 } };
    expect(rule('caution-fire', of(coarse))).toBeNull();
    expect(rule('caution-fire', of({ ...coarse, cautions: ['Remembered: keep dry.'] }))).toBeNull();
    expect(rule('caution-fire', of({ ...coarse, grain: { ...material.grain, d10: 0.4e-3 } }))).toMatchObject({
      limit: 0.5e-3,
    });
    expect(rule('caution-fire', of({ ...coarse, form: 'powder' }))).not.toBeNull();
    expect(rule('caution-fire', contextOf('wax-head'))?.saw).toContain('Flammable');
  });
});

describe('feed opening', () => {
  /** ISO 13857, people of 14 and older, as reprinted in a consultancy's table; mm. */
  test.each([
    [4, 2],
    [6, 10],
    [8, 20],
    [10, 80],
    [12, 100],
    [20, 120],
    [100, 850],
  ])('a long slot of %s mm asks for %s mm', (width, distance) => {
    expect(slotDistance(1, width / 1000) * 1000).toBeCloseTo(distance, 9);
  });

  test.each([
    [8, 5],
    [10, 20],
    [12, 80],
    [40, 120],
    [120, 850],
  ])('a hole of %s mm asks for %s mm', (diameter, distance) => {
    expect(roundDistance(diameter / 1000) * 1000).toBeCloseTo(distance, 9);
  });

  test('a throat of 18 to 30 mm asks for 120 mm; past 120 mm no distance does', () => {
    for (const diameter of [0.018, 0.03]) expect(roundDistance(diameter)).toBe(0.12);
    expect(roundDistance(0.121)).toBe(Number.POSITIVE_INFINITY);
    expect(slotDistance(0.025, 0.025)).toBe(0.12);
  });

  test('the narrower of hopper outlet and feed opening rules, and the words say it', () => {
    const { barrel, hopper } = demo.design;
    const wide = { ...barrel, feedOpening: { ...barrel.feedOpening, length: 0.2, width: 0.2 } };
    expect(feedDistance(wide, { ...hopper, outletDiameter: 0.03 })).toBe(0.12);
    const open = withDesign(demo, { barrel: wide, hopper: { ...hopper, outletDiameter: 0.2 } });
    expect(rule('caution-turning-screw', open)).toMatchObject({ value: null, limit: null });
    expect(rule('caution-turning-screw', open)?.saw).toContain('lets an arm through');
  });
});

describe('pressure and start', () => {
  test('energy held by blocked melt grows with the square of the pressure; next to none is not put in numbers', () => {
    const at = (mostPressure: number) => rule('caution-hot-release', withResult(demo, 'drive', { mostPressure }));
    expect((at(20e6)?.value ?? 0) / (at(10e6)?.value ?? 1)).toBeCloseTo(4, 9);
    expect(at(100)?.saw).toContain('hardly any energy');
    expect(at(20e6)?.saw).toMatch(/[\d.]+ J/);
  });

  test('a cold start names full torque and the margin of the weakest place', () => {
    const caution = rule('caution-cold-start', demo);
    expect(caution?.value).toBeGreaterThan(demo.prediction.drive.torqueUsable);
    expect(caution?.saw).toContain('before it yields');
  });

  test('a cold start that would overload the weakest place says so', () => {
    const { prediction } = demo;
    const worstRoot = { ...prediction.drive.worstRoot, margin: 0.9 };
    const weak = { ...demo, prediction: { ...prediction, drive: { ...prediction.drive, worstRoot } } };
    expect(rule('caution-cold-start', weak)?.saw).toMatch(/yields at 0\.9 times this\.$/);
  });
});
