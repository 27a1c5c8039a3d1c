/** Temperature shifts started from the dependence that a material had. */

import { activationBetween } from '../age/arrhenius.ts';
import type { Sourced } from '../project/materialSchema.ts';
import { toSi } from '../units.ts';
import {
  type Agreement,
  agreedRate,
  baseViscosity,
  type Rheology,
  type ShiftKind,
  type StoredShift,
  startValue,
} from './switchTypes.ts';

/** Start values where the old law did not move with temperature: a middling melt (common practice). */
const middling = { activationKJPerMol: 30, coefficientPerK: 0.02 } as const;

/** A shift of a middling melt about the point of agreement. */
export function middlingShift(at: Agreement, kind: Exclude<ShiftKind, 'none'> = 'arrhenius'): StoredShift {
  const made = (name: keyof typeof middling): Sourced => startValue(name, middling[name], at.source);
  return kind === 'arrhenius'
    ? { kind, referenceC: at.celsius, activationKJPerMol: made('activationKJPerMol') }
    : { kind, referenceC: at.celsius, coefficientPerK: made('coefficientPerK') };
}

/** Highest A1 that is proposed: twice that of steep melts, so that D1 stays a number a file may hold. */
const steepestA1 = 60;

/** Two viscosities of one melt and their temperatures, K. */
interface Pair {
  readonly warm: { readonly viscosity: number; readonly temperature: number };
  readonly reference: { readonly viscosity: number; readonly temperature: number };
}

/** The shift of a kind through two viscosities. */
function shiftThrough(kind: Exclude<ShiftKind, 'none'>, referenceC: number, pair: Pair, source: string): StoredShift {
  const { warm, reference } = pair;
  const flat = Math.abs(Math.log(warm.viscosity / reference.viscosity)) < 1e-12;
  if (kind === 'arrhenius') {
    // Viscosity is the inverse of a rate, so the rates stand the other way round.
    const activation = activationBetween(
      { rate: 1 / reference.viscosity, temperature: reference.temperature },
      { rate: 1 / warm.viscosity, temperature: warm.temperature },
    );
    const shown = flat ? middling.activationKJPerMol : activation / 1000;
    return { kind, referenceC, activationKJPerMol: startValue('activationKJPerMol', shown, source) };
  }
  const slope = Math.log(reference.viscosity / warm.viscosity) / (warm.temperature - reference.temperature);
  const shown = flat ? middling.coefficientPerK : slope;
  return { kind, referenceC, coefficientPerK: startValue('coefficientPerK', shown, source) };
}

/**
 * A shift of another kind in place of a shift. From one kind to another the reference temperature stays and the
 * constant is the one with the old shift factor at the point of agreement; a melt that did not move with temperature
 * gets a middling constant about that point.
 * @param rheology law with the old shift
 * @param kind the new kind
 * @param at point of agreement
 */
export function otherShift(
  rheology: Extract<Rheology, { shift: StoredShift }>,
  kind: ShiftKind,
  at: Agreement,
): StoredShift {
  if (kind === 'none') return { kind };
  const { shift } = rheology;
  const referenceC = shift.kind === 'none' ? at.celsius : shift.referenceC;
  const reference = toSi(referenceC, '°C');
  // At the reference itself every shift factor is 1 and only the slope can agree.
  const warm = Math.abs(at.temperature - reference) < 0.01 ? reference + 0.01 : at.temperature;
  const point = (temperature: number) => ({ viscosity: baseViscosity(rheology, temperature, 0), temperature });
  return shiftThrough(kind, referenceC, { warm: point(warm), reference: point(reference) }, at.source);
}

/**
 * An Arrhenius shift about the point of agreement that falls over the window as the old law did.
 * @param rheology the old law
 * @param rate shear rate at which the fall is taken, 1/s; 0 for laws that obey superposition
 * @param at point of agreement
 */
export function shiftOverWindow(rheology: Rheology, rate: number, at: Agreement): StoredShift {
  const point = (temperature: number) => ({ viscosity: baseViscosity(rheology, temperature, rate), temperature });
  return shiftThrough('arrhenius', at.celsius, { warm: point(at.high), reference: point(at.low) }, at.source);
}

/**
 * Cross-WLF constants of the temperature dependence: A2 universal, T* at the softening temperature or 50 K below the
 * window, whichever is lower, and A1 from the fall of the old law over the window.
 * @param rheology the old law
 * @param at point of agreement
 * @param softening K
 * @param localIndex local power-law index at the point of agreement
 * Source of A2 = 51.6 K: Williams, Landel and Ferry 1955.
 */
export function wlfLike(rheology: Rheology, at: Agreement, softening: number, localIndex: number) {
  const universalA2 = 51.6;
  const made = (name: 'd2K' | 'a1', value: number): Sourced => startValue(name, value, at.source);
  const d2K = made('d2K', Math.min(softening, at.low - 50));
  // A power law's fall is stated at equal shear rate, where a Cross melt shows only the index's share of it.
  const share = rheology.model === 'powerLaw' ? Math.min(1, localIndex) : 1;
  const rate = rheology.model === 'carreauYasuda' ? 0 : agreedRate;
  const fall = Math.log(baseViscosity(rheology, at.low, rate) / baseViscosity(rheology, at.high, rate)) / share;
  const reach = (temperature: number) => (temperature - d2K.value) / (universalA2 + temperature - d2K.value);
  return {
    d2K,
    d3KPerPa: { value: 0, source: at.source, status: 'estimated' } satisfies Sourced,
    a1: made('a1', Math.min(steepestA1, fall / (reach(at.high) - reach(at.low)))),
    a2K: { value: universalA2, source: at.source, status: 'estimated' } satisfies Sourced,
  };
}
