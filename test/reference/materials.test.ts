/** Figures of the material library recomputed from the publications they rest on. */

import { describe, expect, it } from 'vitest';
import { rateConstant } from '../../core/age/arrhenius.ts';
import { extentAlong, molarMassAfter } from '../../core/age/kinetics.ts';
import { designMaterial } from '../../core/material/designMaterial.ts';
import { kineticLawOf } from '../../core/material/kineticLaw.ts';
import { viscosityLawOf } from '../../core/material/rheology.ts';
import { viscosityAt } from '../../core/material/viscosityLaw.ts';
import { expectOk, loadMaterial } from '../helpers/projects.ts';
import tait from './materials/tait.json';

const kelvin = (celsius: number) => celsius + 273.15;
const off = (got: number, expected: number) => Math.abs(got / expected - 1);
const viscosity = (id: string, celsius: number, rate: number) =>
  viscosityAt(viscosityLawOf(loadMaterial(id))(kelvin(celsius), 0), rate);

type TaitId = keyof typeof tait.sets;

/** Specific volume, m³/kg, at °C and Pa. */
function volume(id: TaitId, celsius: number, pressure: number): number {
  const { volume: a, b0, b1 } = tait.sets[id];
  const free = (a[0] ?? 0) + (a[1] ?? 0) * celsius + (a[2] ?? 0) * celsius ** 2;
  return free * (1 - 0.0894 * Math.log1p(pressure / (b0 * Math.exp(-b1 * celsius))));
}

/** Temperature at which the file states the melt density, °C. */
const statedAt: Readonly<Record<TaitId, number>> = { ps: 200, hdpe: 200, ldpe: 180, pp: 220, pc: 280 };

describe('densities of melts (Tait equation)', () => {
  it.each(tait.densities)('$id at $celsius °C: $expected kg/m³', ({ id, celsius, expected }) => {
    expect(off(1 / volume(id as TaitId, celsius, 0), expected)).toBeLessThan(1e-3);
  });

  it.each(Object.keys(tait.sets) as TaitId[])('%s: density and compressibility of the file', (id) => {
    const { meltDensityKgM3, meltCompressibilityPerGPa } = loadMaterial(id);
    const [free, pressed] = [volume(id, statedAt[id], 0), volume(id, statedAt[id], 1e5)];
    expect(off(1 / free, meltDensityKgM3.value)).toBeLessThan(5e-3);
    expect(off((1e9 * (free - pressed)) / free / 1e5, meltCompressibilityPerGPa?.value ?? 0)).toBeLessThan(2e-3);
  });

  it('pla: two-domain set of Oliaei et al. 2016', () => {
    // b1m 8.27e-4, b2m 8.5e-7, b3m 163 MPa, b4m 0.006196, b5 361.26 K.
    const { meltDensityKgM3, meltCompressibilityPerGPa } = loadMaterial('pla');
    const above = kelvin(200) - 361.26;
    expect(off(1 / (8.27e-4 + 8.5e-7 * above), meltDensityKgM3.value)).toBeLessThan(1e-3);
    const stiffness = 163e6 * Math.exp(-0.006196 * above);
    expect(off((0.0894 / stiffness) * 1e9, meltCompressibilityPerGPa?.value ?? 0)).toBeLessThan(1e-3);
  });
});

describe('viscosities', () => {
  it.each([
    [260, 2329],
    [280, 963],
    [300, 460],
  ])('pc at rest and %d °C: %d Pa s by the published constants', (celsius, expected) => {
    // Osswald and Rudolph 2015: D1 462 Pa s, D2 573 K, A1 8.4, A2 246.8 K; the file refers them to 423 K.
    expect(off(viscosity('pc', celsius, 0), expected)).toBeLessThan(2e-3);
  });

  it.each([
    [120, 590],
    [140, 32],
    [150, 10],
    [160, 3.8],
    [170, 1.6],
    [180, 0.74],
    [186, 0.48],
  ])('sucrose at %d °C: %d Pa s by the universal constants', (celsius, expected) => {
    // log10(eta/1e12) = -17.44 (T - Tg)/(51.6 + T - Tg), Tg 62 °C (Berk, eq. 1.15).
    expect(off(viscosity('sucrose', celsius, 10), expected)).toBeLessThan(0.04);
  });

  it.each([
    [225, 2620, 0.63],
    [230, 1950, 0.66],
    [235, 1810, 0.66],
  ])('pa6 at %d °C follows the remembered table', (celsius, consistency, index) => {
    // Tadmor and Gogos, Appendix A, from memory.
    for (const rate of [200, 500, 1500]) {
      expect(off(viscosity('pa6', celsius, rate), consistency * rate ** (index - 1))).toBeLessThan(0.06);
    }
  });

  it('pcl lies within a factor of 2 of the stresses of needle printing', () => {
    // Rheologica Acta 59 (2020) 83, abstract: 2.5 to 20 kPa at 2 to 25 1/s.
    expect(off(viscosity('pcl', 100, 2) * 2, 2500)).toBeLessThan(1);
    expect(viscosity('pcl', 100, 25) * 25).toBeGreaterThan(10_000);
    expect(viscosity('pcl', 100, 25) * 25).toBeLessThan(40_000);
  });

  it('pet: flow activation energy 65 kJ/mol', () => {
    // Polym. Degrad. Stab. 120 (2015) 70, abstract. By hand: exp[65000/8.314 (1/543.15 - 1/553.15)] = 1.297.
    expect(off(viscosity('pet', 270, 1) / viscosity('pet', 280, 1), 1.297)).toBeLessThan(1e-3);
  });
});

describe('molar masses after 5 minutes', () => {
  const after = (id: string, celsius: number) => {
    const law = loadMaterial(id).degradation.map(kineticLawOf)[0];
    if (!law || !('kind' in law) || law.kind !== 'scission') throw new Error('no scission law');
    const { extent } = extentAlong(law, [{ duration: 300, temperature: kelvin(celsius) }]);
    return molarMassAfter(law.initialMolarMass?.value ?? Number.NaN, law.repeatUnitMass, extent);
  };

  // Recomputed elsewhere from the same constants: 1/Mn = 1/Mn0 + k t/M0.
  it.each([
    ['pla', 190, 54.7],
    ['pla', 210, 44.5],
    ['pla', 230, 28.1],
    ['phb', 170, 164],
    ['phb', 180, 128],
    ['phb', 190, 70],
    ['phb', 200, 27],
  ])('%s at %d °C: %d kg/mol', (id, celsius, expected) => {
    expect(off(after(id, celsius), expected)).toBeLessThan(0.01);
  });

  it('pet scission at 285 °C halves the chains within half an hour to some hours', () => {
    // By hand: 1/26 + 1.7e-6 t/0.19217 = 2/26 at t = 4348 s.
    const law = loadMaterial('pet').degradation.map(kineticLawOf)[0];
    if (!law || !('kind' in law) || law.kind !== 'scission') throw new Error('no scission law');
    const { extent } = extentAlong(law, [{ duration: 4348, temperature: kelvin(285) }]);
    expect(off(molarMassAfter(law.initialMolarMass?.value ?? 0, law.repeatUnitMass, extent), 13)).toBeLessThan(1e-3);
  });
});

describe('rates', () => {
  it.each([
    [150, 43],
    [160, 22],
    [170, 11],
    [180, 6],
    [190, 3.3],
  ])('sucrose at %d °C is half browned in about %d min', (celsius, minutes) => {
    const law = loadMaterial('sucrose').degradation.map(kineticLawOf)[0];
    if (!law) throw new Error('no law');
    const { extent } = extentAlong(law, [{ duration: minutes * 60, temperature: kelvin(celsius) }]);
    expect(Math.abs(extent - 0.5)).toBeLessThan(0.03);
  });

  it.each([
    [180, 8.3e-4],
    [210, 3.0e-3],
    [220, 4.4e-3],
  ])('wood darkens at %d °C by %d dE*ab per second', (celsius, expected) => {
    // Reduced from Color Res. Appl. 37 (2012) 148, abstract.
    const law = loadMaterial('pla-wood-flour').degradation[0];
    if (!law || law.kind === 'twoStep') throw new Error('no colour law');
    const { rateAtReferencePerS: rate, activationKJPerMol: energy, referenceC } = law;
    const got = rateConstant(rate.value, energy.value * 1000, kelvin(referenceC), kelvin(celsius));
    expect(off(got, expected)).toBeLessThan(0.03);
  });

  it.each([
    [200, 1.01e-4],
    [220, 2.21e-4],
    [240, 4.55e-4],
  ])('the first step of wood at %d °C runs at %d 1/s', (celsius, expected) => {
    // Prins, Ptasinski and Janssen 2006: A 2.48e4 1/s, Ea 76.0 kJ/mol.
    const law = loadMaterial('pla-wood-flour').degradation.find(({ kind }) => kind === 'twoStep');
    if (law?.kind !== 'twoStep') throw new Error('no two-step law');
    const { rateAtReferencePerS: rate, activationKJPerMol: energy } = law.first;
    const got = rateConstant(rate.value, energy.value * 1000, kelvin(law.referenceC), kelvin(celsius));
    expect(off(got, expected)).toBeLessThan(0.01);
  });

  it('wood ends as the share of solid that both steps leave', () => {
    // 0.79 x 0.41 = 0.3239 of the mass stays.
    const law = loadMaterial('pla-wood-flour').degradation.map(kineticLawOf)[1];
    if (!law) throw new Error('no law');
    const { extent } = extentAlong(law, [{ duration: 1e7, temperature: kelvin(290) }]);
    expect(extent).toBeCloseTo(1 - 0.3239, 4);
  });
});

describe('stress of a print held fast while it cools to 25 °C', () => {
  // sigma = E alpha (Tset - 25 °C)/(1 - nu), an upper bound; worked out when the values were collected.
  it.each([
    ['ps', 23],
    ['pc', 30],
    ['abs', 24],
    ['pla', 13],
    ['petg', 14],
    ['sucrose', 53],
  ])('%s: about %d MPa', (id, expected) => {
    const { mechanical } = loadMaterial(id);
    if (!mechanical) throw new Error('no mechanical values');
    const { youngGPa, expansionPerMK, poisson, setC } = mechanical;
    const stress = (youngGPa.value * 1e3 * expansionPerMK.value * 1e-6 * (setC.value - 25)) / (1 - poisson.value);
    expect(off(stress, expected)).toBeLessThan(0.1);
  });

  it('says that sugar glass cracks and PC does not', () => {
    const strength = (id: string) => expectOk(designMaterial(loadMaterial(id))).mechanical?.strength ?? 0;
    expect(strength('sucrose')).toBeLessThan(53e6);
    expect(strength('pc')).toBeGreaterThan(30e6);
  });
});

describe('surface tension of polyethylene melt', () => {
  /** J. Polym. Sci. A 3 (1965) 569: 28.5 mN/m at 125 °C and 23.3 at 193 °C, slope -0.076 mN/m per kelvin. */
  it.each(['ldpe', 'hdpe'])('%s carries the value of that line at 180 °C', (id) => {
    const slope = (23.3 - 28.5) / (193 - 125);
    expect(slope).toBeCloseTo(-0.0765, 4);
    const material = expectOk(designMaterial(loadMaterial(id)));
    expect((material.surfaceTension ?? 0) * 1e3).toBeCloseTo(28.5 + slope * (180 - 125), 1);
  });
});
