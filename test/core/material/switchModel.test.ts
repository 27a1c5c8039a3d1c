import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { hasViscosity, viscosityLawOf } from '../../../core/material/rheology.ts';
import { switchModel, switchShift } from '../../../core/material/switchModel.ts';
import { lawLimits } from '../../../core/material/switchTypes.ts';
import { localIndex, viscosityAt } from '../../../core/material/viscosityLaw.ts';
import { type Material, materialSchema } from '../../../core/project/materialSchema.ts';
import { withRheologyModel, withShiftKind } from '../../../core/project/switchRheology.ts';
import { toSi } from '../../../core/units.ts';
import { pinned } from '../../helpers/arbitraries.ts';
import { anyMaterial, madeUp } from '../../helpers/materialArbitraries.ts';
import { loadMaterial, materialNames } from '../../helpers/projects.ts';

const models = ['newtonian', 'powerLaw', 'carreauYasuda', 'crossWlf'] as const;
const kinds = ['none', 'arrhenius', 'exponential'] as const;

const middle = (m: Material) => toSi((m.windowLowC.value + m.windowHighC.value) / 2, '°C');
/** Viscosity with filler, Pa s. */
const viscosity = (m: Material, rate = 100, temperature = middle(m)) =>
  viscosityAt(viscosityLawOf(m)(temperature, 0), rate);
const ratio = (a: Material, b: Material, rate?: number, temperature?: number) =>
  viscosity(a, rate, temperature) / viscosity(b, rate, temperature);

const known = materialNames.filter((id) => hasViscosity(loadMaterial(id)));

/** Melts whose viscosity changes so much over the window that no other law follows it to its ends. */
const steep = ['isomalt', 'pcl'];

describe.each(known)('%s', (id) => {
  const material = loadMaterial(id);

  test.each(models)('as %s: same viscosity at the window’s middle and 100 1/s, a good material, marked', (model) => {
    const switched = withRheologyModel(material, model);
    expect(switched.rheology.model).toBe(model);
    expect(ratio(switched, material)).toBeCloseTo(1, 4);
    expect(materialSchema.safeParse(switched).error).toBeUndefined();
    if (model === material.rheology.model) return expect(switched.rheology).toBe(material.rheology);
    const made = JSON.stringify(switched.rheology);
    expect(made).toMatch(/"status":"estimated"/);
    expect(made).toMatch(/used before at [\d.]+ °C and 100 1\/s/);
  });

  // A shift is kept with its source although Carreau-Yasuda reads it by superposition: a fifth at the window's ends.
  test('viscosities at the window’s ends stay within 20 % from law to law, or, of steep melts, within a factor of 3', () => {
    const most = steep.includes(id) ? Math.log(3) : Math.log(1.25);
    const [low, high] = [material.windowLowC, material.windowHighC].map(({ value }) => toSi(value, '°C'));
    const off = models.flatMap((model) => {
      const switched = withRheologyModel(material, model);
      return [low, high].map((at) => Math.abs(Math.log(ratio(switched, material, 100, at))));
    });
    expect(Math.max(...off)).toBeLessThan(most);
    if (steep.includes(id)) expect(Math.max(...off)).toBeGreaterThan(Math.log(1.2));
  });
});

describe('a law that is not known', () => {
  const petg = loadMaterial('petg');

  test.each(models)('starts as %s from a middling melt that says so', (model) => {
    const started = withRheologyModel(petg, model);
    expect(materialSchema.safeParse(started).error).toBeUndefined();
    expect(viscosity(started)).toBeCloseTo(500, 0);
    expect(JSON.stringify(started.rheology)).toMatch(/middling melt of 500 Pa·s at 240 °C/);
    expect(viscosity(started, 100, middle(petg) + 20)).toBeLessThan(viscosity(started));
  });

  test('keeps a move with temperature that is known', () => {
    const phb = loadMaterial('phb');
    const started = withRheologyModel(phb, 'newtonian');
    expect(started.rheology).toMatchObject({ shift: 'shift' in phb.rheology ? phb.rheology.shift : null });
    expect(viscosity(started)).toBeCloseTo(500, 0);
  });

  test('can be returned to, and its shift changed', () => {
    const none = withRheologyModel(loadMaterial('ldpe'), 'unknown');
    expect(none.rheology).toMatchObject({ model: 'unknown', shift: { kind: 'exponential' } });
    expect(materialSchema.safeParse(withShiftKind(petg, 'exponential')).error).toBeUndefined();
    expect(withShiftKind(petg, 'arrhenius').rheology).toMatchObject({ model: 'unknown', shift: { kind: 'arrhenius' } });
  });
});

test('any law to any other: agreement and a good file, unless a constant meets its limit', () => {
  fc.assert(
    fc.property(anyMaterial, fc.constantFrom(...models), (material, model) => {
      const switched = withRheologyModel(material, model);
      expect(materialSchema.safeParse(switched).error).toBeUndefined();
      const level = viscosity({ ...material, filler: undefined });
      fc.pre(level > 10 * lawLimits.viscosityPaS[0] && level < 1e4);
      expect(ratio(switched, material)).toBeCloseTo(1, 4);
    }),
    pinned(300),
  );
});

test('any shift to any other', () => {
  fc.assert(
    fc.property(anyMaterial, fc.constantFrom(...kinds), (material, kind) => {
      const switched = withShiftKind(material, kind);
      expect(materialSchema.safeParse(switched).error).toBeUndefined();
      expect(ratio(switched, material)).toBeCloseTo(1, 4);
      if (switched.rheology.model !== 'crossWlf') expect(switched.rheology.shift.kind).toBe(kind);
      else expect(switched).toEqual(material);
    }),
    pinned(300),
  );
});

describe('what carries over', () => {
  const pla = loadMaterial('pla');

  test('Cross to Carreau-Yasuda is the same flow curve, and keeps the index with its source', () => {
    const carreau = withRheologyModel(pla, 'carreauYasuda');
    for (const rate of [0.01, 1, 30, 1000, 1e5]) expect(ratio(carreau, pla, rate)).toBeCloseTo(1, 4);
    expect(carreau.rheology).toMatchObject({
      index: 'index' in pla.rheology ? pla.rheology.index : null,
      shift: { kind: 'arrhenius', referenceC: 200 },
    });
    const back = withRheologyModel(carreau, 'crossWlf');
    for (const rate of [0.01, 1, 30, 1000, 1e5]) expect(ratio(back, pla, rate)).toBeCloseTo(1, 3);
  });

  test('the power law is the tangent of the flow curve', () => {
    const power = withRheologyModel(pla, 'powerLaw');
    const slope = (m: Material) => localIndex(viscosityLawOf(m)(middle(m), 0), 100);
    expect(slope(power)).toBeCloseTo(slope(pla), 4);
  });

  test('a Newtonian melt becomes a Cross melt that hardly thins', () => {
    const wax = loadMaterial('wax');
    const cross = withRheologyModel(wax, 'crossWlf');
    expect(ratio(cross, wax, 1000)).toBeGreaterThan(0.98);
  });

  test('a shift that is kept keeps its source and reference', () => {
    const ldpe = loadMaterial('ldpe');
    const carreau = switchModel(ldpe, 'carreauYasuda');
    expect(carreau).toMatchObject({ shift: 'shift' in ldpe.rheology ? ldpe.rheology.shift : null });
    const level = ldpe.rheology.model === 'powerLaw' ? ldpe.rheology.consistencyPaSn : null;
    expect(switchShift(ldpe, 'arrhenius')).toMatchObject({ consistencyPaSn: level, shift: { kind: 'arrhenius' } });
  });
});

test('the same activation comes back through an exponential shift', () => {
  const rheology = {
    model: 'newtonian' as const,
    viscosityPaS: madeUp(100),
    shift: { kind: 'arrhenius' as const, referenceC: 190, activationKJPerMol: madeUp(40) },
  };
  const there = switchShift({ ...loadMaterial('pla'), rheology }, 'exponential');
  const back = switchShift({ ...loadMaterial('pla'), rheology: there }, 'arrhenius');
  const value =
    back.model === 'newtonian' && back.shift.kind === 'arrhenius' ? back.shift.activationKJPerMol.value : Number.NaN;
  expect(value).toBeCloseTo(40, 3);
});
