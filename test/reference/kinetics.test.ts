/** Degradation laws against published observations and independently recomputed check values. */

import { describe, expect, it } from 'vitest';
import { activationBetween, gasConstant, rateConstant } from '../../core/age/arrhenius.ts';
import { extentAlong, molarMassAfter } from '../../core/age/kinetics.ts';
import { molarMassLoss } from '../../core/age/lawOutcomes.ts';
import type { KineticLaw, ScissionLaw, Step, TwoStepLaw } from '../../core/age/laws.ts';
import data from './colour/kinetics.json';

const kelvin = (celsius: number) => celsius + 273.15;
const exact = (value: number) => ({ value, low: value, high: value });
const twoDigits = 0.05;

type LawName = keyof typeof data.laws;

function lawOf(name: LawName): KineticLaw {
  const entry = data.laws[name];
  const common = {
    id: name,
    observed: entry.source,
    rateAtReference: exact(entry.rate),
    referenceTemperature: kelvin(entry.referenceC),
    activation: exact(entry.activation * 1000),
    validFrom: kelvin(entry.validC[0]),
    validTo: kelvin(entry.validC[1]),
  };
  return 'repeatUnitMass' in entry
    ? ({ ...common, kind: 'scission', repeatUnitMass: entry.repeatUnitMass } satisfies ScissionLaw)
    : { ...common, order: entry.order };
}

const extentAfter = (name: LawName, celsius: number, seconds: number) =>
  extentAlong(lawOf(name), [{ duration: seconds, temperature: kelvin(celsius) }]).extent;

const rateAt = (name: LawName, celsius: number) => {
  const entry = data.laws[name];
  return rateConstant(entry.rate, entry.activation * 1000, kelvin(entry.referenceC), kelvin(celsius));
};

const relative = (got: number, expected: number) => Math.abs(got / expected - 1);

/** k = A exp(-Ea/RT) of the studies that state a frequency factor. */
const fromFactor = (name: keyof typeof data.factors, celsius: number) =>
  data.factors[name].factor * Math.exp((-data.factors[name].activation * 1000) / gasConstant / kelvin(celsius));

describe('rates', () => {
  it.each(data.rates)('$law at $celsius C is $expected', ({ law, celsius, expected }) => {
    expect(relative(rateAt(law as LawName, celsius), expected)).toBeLessThan(twoDigits);
  });

  it('about doubles for polylactide and grows fourfold for PHB over 10 K', () => {
    expect(rateAt('plaScission', 200) / rateAt('plaScission', 190)).toBeCloseTo(1.92, 1);
    expect(rateAt('phbScission', 190) / rateAt('phbScission', 180)).toBeCloseTo(3.85, 1);
  });

  it('sucrose loses mass 15 times slower than sucrose itself disappears, 1.7e-4 1/s at 185 C', () => {
    const massLoss = fromFactor('sucroseMassLoss', 185);
    expect(relative(massLoss, 1.7e-4)).toBeLessThan(twoDigits);
    expect(rateAt('sucrose', 185) / massLoss).toBeCloseTo(15, -1);
  });
});

describe('molar mass after random scission', () => {
  it.each(data.molarMasses)('$law, $celsius C, $seconds s', ({ law, initial, celsius, seconds, expected }) => {
    const { repeatUnitMass } = lawOf(law as LawName) as ScissionLaw;
    const extent = extentAfter(law as LawName, celsius, seconds);
    const got = molarMassAfter(initial, repeatUnitMass, extent);
    expect(Math.abs(got - expected)).toBeLessThan(expected < 100 ? 0.6 : 1);
  });

  it.each(data.observations.plaMolarMass)('extruded polylactide, $celsius C', (seen) => {
    const extent = extentAfter('plaScission', seen.celsius, seen.seconds);
    const got = molarMassAfter(seen.initial, data.laws.plaScission.repeatUnitMass, extent);
    expect(relative(got, seen.after)).toBeLessThan(seen.relativeLimit);
  });

  it.each(data.observations.plaMolarMass)('is told as a share of fresh: extruded polylactide, $celsius C', (seen) => {
    const law: ScissionLaw = { ...(lawOf('plaScission') as ScissionLaw), initialMolarMass: exact(seen.initial) };
    const loss = molarMassLoss(law, extentAfter('plaScission', seen.celsius, seen.seconds), 0);
    expect(relative(loss.shareMean as number, seen.after / seen.initial)).toBeLessThan(seen.relativeLimit);
    expect(loss.shareWorst).toBe(1);
  });

  it('gives the activation energy of both points', () => {
    const [cold, hot] = data.observations.plaMolarMass.map((seen) => ({
      rate: 1 / seen.after - 1 / seen.initial,
      temperature: kelvin(seen.celsius),
    }));
    const got = activationBetween(cold, hot) / 1000;
    expect(Math.abs(got - data.observations.plaActivationFromPoints)).toBeLessThan(0.1);
  });
});

describe('wood', () => {
  it.each(data.observations.woodColour)('dE of cypress after $seconds s at $celsius C', (seen) => {
    expect(relative(extentAfter('woodColour', seen.celsius, seen.seconds), seen.dE)).toBeLessThan(seen.relativeLimit);
  });

  it('ten minutes at 200 C give dE 1.2', () => expect(extentAfter('woodColour', 200, 600)).toBeCloseTo(1.2, 1));

  it('first step of two: rates and the half life of 1.9 h at 200 C', () => {
    for (const [celsius, expected] of [
      [200, 1.01e-4],
      [220, 2.21e-4],
      [240, 4.55e-4],
    ])
      expect(relative(fromFactor('woodFirst', celsius), expected)).toBeLessThan(0.01);
    expect(Math.LN2 / fromFactor('woodFirst', 200) / 3600).toBeCloseTo(1.9, 1);
  });

  it('loses mass by both steps: 12 to 30 % quickly, then towards the char of 41 % of the rest', () => {
    const step = (name: 'woodFirst' | 'woodSecond', solidYield: number): Step => ({
      rateAtReference: exact(fromFactor(name, 250)),
      activation: exact(data.factors[name].activation * 1000),
      solidYield,
    });
    const law: TwoStepLaw = {
      kind: 'twoStep',
      id: 'wood-mass',
      observed: 'mass',
      referenceTemperature: kelvin(250),
      validFrom: kelvin(225),
      validTo: kelvin(300),
      first: step('woodFirst', 0.8),
      second: step('woodSecond', 0.41),
    };
    const halfLife = Math.LN2 / fromFactor('woodFirst', 200);
    const lost = extentAlong(law, [{ duration: halfLife, temperature: kelvin(200) }]);
    expect(lost.extent).toBeGreaterThan(0.5 * 0.2);
    expect(lost.extent).toBeLessThan(0.5 * 0.2 + 0.04);
    expect(lost.doubt).toContain('225 °C');
    const end = extentAlong(law, [{ duration: 1e7, temperature: kelvin(300) }]).extent;
    expect(end).toBeCloseTo(1 - 0.8 * 0.41, 6);
  });
});

describe('sucrose', () => {
  it.each(data.halfLives)('half life at $celsius C is $minutes min', ({ celsius, minutes }) => {
    const half = extentAfter('sucrose', celsius, 60 * minutes);
    expect(Math.abs(half - 0.5)).toBeLessThan(0.02);
  });

  it('leaves below 1 % after 30 min at 185 C', () => {
    const { celsius, seconds, remainingBelow } = data.observations.sucroseGone;
    expect(1 - extentAfter('sucrose', celsius, seconds)).toBeLessThan(remainingBelow);
  });
});
