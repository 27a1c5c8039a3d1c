import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { rateConstant } from '../../../core/age/arrhenius.ts';
import { designMaterial } from '../../../core/material/designMaterial.ts';
import { hasViscosity } from '../../../core/material/rheology.ts';
import type { Material } from '../../../core/project/materialSchema.ts';
import { parseMaterial } from '../../../core/project/parse.ts';
import { serializeMaterial } from '../../../core/project/serialize.ts';
import { issueText, pathText } from '../../../core/result.ts';
import { anyStoredMaterial, pinned } from '../../helpers/arbitraries.ts';
import { madeUp } from '../../helpers/materialArbitraries.ts';
import { codesOf, expectOk, loadExample, loadMaterial, materialNames } from '../../helpers/projects.ts';

describe('designMaterial', () => {
  it('turns degrees, millimetres and kilojoules into SI and keeps the doubt ranges', () => {
    const wood = expectOk(designMaterial(loadMaterial('pla-wood-flour')));
    expect(wood.windowLow).toBe(443.15);
    expect(wood.maxSafe).toBe(483.15);
    expect(wood.grain).toEqual({ d10: 0.0024, d50: 0.003, d90: 0.0036, aspectRatio: 1.3 });
    expect(wood.frictionOnBarrel).toEqual({ value: 0.425, low: 0.35, high: 0.5 });
    expect(wood.angleOfRepose).toBeCloseTo(0.57596, 5); // 33 degrees
    expect(wood.mechanical).toMatchObject({ young: 4.25e9, strength: 45e6, expansion: 50e-6, setTemperature: 333.15 });
    expect(wood.degradation[0]).toMatchObject({
      id: 'wood-delta-e',
      order: 0,
      rateAtReference: { value: 0.00198, low: 0.00066, high: 0.0059 },
      referenceTemperature: 473.15,
      activation: { value: 77_000, low: 60_000, high: 95_000 },
      validFrom: 433.15,
      validTo: 473.15,
    });
    expect(wood.colourAnchors[0]).toEqual({ extent: 0, lab: [80, 4, 20] });
    expect(wood.rheologyRange).toEqual({ from: 453.15, to: 503.15, shearFrom: 1, shearTo: 10_000 });
  });

  it('answers with null where something is unknown', () => {
    const {
      angleOfReposeDeg: _a,
      surfaceTensionNPerM: _s,
      mechanical: _m,
      rheologyRange: _r,
      ...bare
    } = loadMaterial('pla');
    const material = expectOk(designMaterial(bare));
    expect([material.angleOfRepose, material.surfaceTension, material.mechanical, material.rheologyRange]).toEqual([
      null,
      null,
      null,
      null,
    ]);
    expect(material.colourLaw).toBeNull();
  });

  it.each(materialNames.filter((id) => hasViscosity(loadMaterial(id))))('finds nothing wrong with %s', (id) => {
    expect(codesOf(designMaterial(loadMaterial(id)))).toEqual([]);
  });

  it.each(['pa12', 'petg', 'phb', 'tpu'])('says one thing of %s: that its viscosity is not known', (id) => {
    const result = designMaterial(loadMaterial(id), ['materials', 3]);
    expect(codesOf(result)).toEqual(['viscosity-unknown']);
    expect(result.ok ? '' : result.issues.map(issueText).join()).toMatch(
      /^materials\[3\].rheology: The viscosity of .* is not known.* fit one to measured viscosities\.$/,
    );
  });

  it('finds nothing wrong with any generated material', () => {
    fc.assert(
      fc.property(anyStoredMaterial, (material) => {
        expect(expectOk(designMaterial(material)).id).toBe('generated');
      }),
      pinned(200),
    );
  });
});

describe('degradation laws', () => {
  const lawsOf = (id: string) => expectOk(designMaterial(loadMaterial(id))).degradation;

  it('come in SI with their kind; the order-based one has none', () => {
    expect(lawsOf('pla')[0]).toEqual({
      kind: 'scission',
      id: 'pla-chain-scission',
      observed: 'chain breaks per repeat unit, which lower the molar mass',
      rateAtReference: { value: 1.4e-6, low: 7e-7, high: 2.8e-6 },
      activation: { value: 119_000, low: 74_000, high: 123_000 },
      referenceTemperature: 483.15,
      repeatUnitMass: 0.07206,
      initialMolarMass: { value: 60, low: 40, high: 100 },
      validFrom: 463.15,
      validTo: 523.15,
    });
    expect(lawsOf('pla-wood-flour')[1]).toMatchObject({
      kind: 'twoStep',
      first: { rateAtReference: { value: 0.0006401 }, activation: { value: 76_000 }, solidYield: 0.79 },
      second: { activation: { value: 151_700 }, solidYield: 0.41 },
    });
    expect(lawsOf('sucrose')[0]).not.toHaveProperty('kind');
  });

  it('of the lag kind and of the named order kind too', () => {
    const material = loadMaterial('sucrose');
    const range = { referenceC: 180, validFromC: 140, validToC: 190 };
    const rate = { rateAtReferencePerS: madeUp(1e-3), activationKJPerMol: madeUp(100) };
    material.degradation = [
      { kind: 'lag', id: 'lagged', observed: 'colour', ...rate, ...range, lagAtReferenceS: madeUp(60) },
      { kind: 'order', id: 'named', observed: 'colour', order: 2, ...rate, ...range },
    ];
    material.colourLaw = 'lagged';
    const [lag, order] = expectOk(designMaterial(material)).degradation;
    expect(lag).toMatchObject({ kind: 'lag', lagAtReference: 60, referenceTemperature: 453.15 });
    expect(order).toMatchObject({ order: 2 });
    expect(order).not.toHaveProperty('kind');
    expect(expectOk(parseMaterial(serializeMaterial(material)))).toEqual(material);
  });
});

describe('darkening of wood', () => {
  const [found] = expectOk(designMaterial(loadMaterial('pla-wood-flour'))).degradation;
  const law = found && !('kind' in found) ? found : undefined;

  // Color Res. Appl. 37 (2012) 148, abstract: cypress in air, colour difference about 3.5 after 3 h at 160 °C and about 50
  // after 7 h at 200 °C. Both points made the law, so this guards the numbers, not the law.
  it.each([
    [433.15, 3, 3.5],
    [473.15, 7, 50],
  ])('at %d K for %d h gives a colour difference of %d', (temperature, hours, expected) => {
    if (!law) throw new Error('no law');
    const rate = rateConstant(law.rateAtReference.value, law.activation.value, law.referenceTemperature, temperature);
    expect(Math.abs((rate * hours * 3600) / expected - 1)).toBeLessThan(0.01);
  });

  it('is ten times as fast in the demo, whose material says so', () => {
    const stored = loadExample('demo').materials[0]?.degradation[0];
    if (!stored || stored.kind === 'twoStep') throw new Error('no law');
    expect(stored.rateAtReferencePerS.value).toBeCloseTo(10 * (law?.rateAtReference.value ?? 0), 12);
    expect(stored.rateAtReferencePerS.status).toBe('invented');
    expect(stored.rateAtReferencePerS.source).toMatch(/ten times/);
  });

  it('has anchors whose colours lie as far from the first as their extents say', () => {
    const [first, ...rest] = loadMaterial('pla-wood-flour').colourAnchors;
    for (const { extent, lightness, a, b } of rest) {
      const distance = Math.hypot(lightness - (first?.lightness ?? 0), a - (first?.a ?? 0), b - (first?.b ?? 0));
      expect(Math.abs(distance - extent)).toBeLessThan(0.5);
    }
  });
});

/** Changes the number at a place of a material. */
const put = (place: string, value: number) => (material: Material) => {
  const keys = place.split('.');
  const last = keys.pop() ?? '';
  const holder = keys.reduce<unknown>((node, key) => (node as Record<string, unknown>)[key], material);
  (holder as Record<string, number>)[last] = value;
};

describe('physical sense', () => {
  const cases: [string, (m: Material) => unknown, string, string][] = [
    ['window upside down', (m) => (m.windowLowC.value = 230), 'windowLowC.value', 'values-out-of-order'],
    ['window above the safe limit', (m) => (m.windowHighC.value = 250), 'windowHighC.value', 'values-out-of-order'],
    ['softening above melting', (m) => (m.softeningC.value = 170), 'softeningC.value', 'values-out-of-order'],
    ['d10 above d50', (m) => (m.grain.d10Mm.value = 3.2), 'grain.d10Mm.value', 'values-out-of-order'],
    ['d50 above d90', (m) => (m.grain.d50Mm.value = 3.5), 'grain.d50Mm.value', 'values-out-of-order'],
    ['bulk as dense as solid', (m) => (m.bulkDensityKgM3.value = 1240), 'bulkDensityKgM3.value', 'values-out-of-order'],
    [
      'softening above the window',
      (m) => (m.softeningC.value = m.meltingC.value = 190),
      'softeningC.value',
      'values-out-of-order',
    ],
    ['melting above the window', (m) => (m.meltingC.value = 225), 'meltingC.value', 'values-out-of-order'],
    ['a range upside down', put('rheologyRange.fromC', 240), 'rheologyRange.fromC', 'values-out-of-order'],
    ['a law held level in the window', put('rheology.d2K.value', 460), 'rheology.d2K.value', 'values-out-of-order'],
    [
      'a melt that thickens with shear',
      (m) =>
        (m.rheology = { model: 'powerLaw', consistencyPaSn: madeUp(100), index: madeUp(1.2), shift: { kind: 'none' } }),
      'rheology',
      'viscosity-against-shear',
    ],
    [
      'a change that heat does not hasten',
      put('degradation.0.activationKJPerMol.value', 0),
      'degradation[0].activationKJPerMol.value',
      'not-positive',
    ],
    [
      'chains lighter than a link',
      put('degradation.0.repeatUnitMassKgPerMol.value', 70),
      'degradation[0].repeatUnitMassKgPerMol.value',
      'values-out-of-order',
    ],
    ['two laws of one name', (m) => m.degradation.push(...m.degradation), 'degradation[1].id', 'duplicate-id'],
    [
      'an anchor that a share never reaches',
      (m) => {
        m.degradation = loadMaterial('sucrose').degradation;
        m.colourLaw = 'sucrose-browning';
        m.colourAnchors = loadMaterial('pla-wood-flour').colourAnchors.slice(0, 2);
      },
      'colourAnchors[1].extent',
      'anchor-beyond-law',
    ],
    ['melt denser than solid', (m) => (m.meltDensityKgM3.value = 1400), 'meltDensityKgM3.value', 'melt-too-dense'],
    [
      'filler beyond its densest packing',
      (m) => (m.filler = { volumeFraction: madeUp(0.5), maxPacking: madeUp(0.5) }),
      'filler.volumeFraction.value',
      'values-out-of-order',
    ],
    [
      'a fast plateau above the one at rest',
      (m) => {
        m.rheology = {
          model: 'carreauYasuda',
          zeroShearViscosityPaS: madeUp(100),
          infiniteShearViscosityPaS: madeUp(200),
          timeConstantS: madeUp(0.1),
          transition: madeUp(2),
          index: madeUp(0.4),
          shift: { kind: 'none' },
        };
      },
      'rheology.infiniteShearViscosityPaS.value',
      'values-out-of-order',
    ],
  ];

  it.each(cases)('refuses %s', (_, change, path, code) => {
    const material = loadMaterial('pla');
    change(material);
    const result = designMaterial(material, ['materials', 0]);
    expect(result.ok ? [] : result.issues.map((i) => [pathText(i.path), i.code])).toEqual([
      [`materials[0].${path}`, code],
    ]);
  });

  it('refuses a viscosity that is no number', () => {
    const material = loadMaterial('pla');
    const level = { kind: 'arrhenius', referenceC: -50, activationKJPerMol: madeUp(400) } as const;
    material.rheology = { model: 'newtonian', viscosityPaS: madeUp(1e-4), shift: level };
    expect(designMaterial(material).ok).toBe(true);
    material.windowLowC.value = -273.15;
    material.softeningC.value = -273.15;
    expect(designMaterial(material)).toMatchObject({ ok: false, issues: [{ code: 'viscosity-against-temperature' }] });
  });
});
