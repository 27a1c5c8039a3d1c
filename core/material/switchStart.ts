/** Start values of each viscosity law, taken from the law a material had at the point of agreement. */

import type { Sourced } from '../project/materialSchema.ts';
import { toSi } from '../units.ts';
import { viscosityLawOf } from './rheology.ts';
import { shiftOverWindow, wlfLike } from './switchShift.ts';
import {
  type Agreement,
  agreedRate,
  baseViscosity,
  lawLimits,
  type Rheology,
  type StoredShift,
  type Switched,
  startValue,
} from './switchTypes.ts';
import { localIndex, type ViscosityLaw, viscosityAt } from './viscosityLaw.ts';

/** Where thinning is made to set in when the old law does not say, 1/s: a decade below the agreed rate. */
const bendRate = agreedRate / 10;
/** Sharp bend of a Cross law that stands for a melt without thinning. */
const sharpIndex = 0.3;
/** Highest critical stress to start from, Pa: half the limit leaves room for moving the level afterwards. */
const highestStart = lawLimits.criticalStressPa[1] / 2;
/** Index above which a melt counts as not thinning. */
const hardlyThinning = 0.95;

/** The old law at the point of agreement. */
export interface Old {
  readonly rheology: Rheology;
  readonly softening: number;
  readonly at: Agreement;
  readonly law: ViscosityLaw;
  readonly viscosity: number;
  readonly index: number;
}

/** Reads the old law at the point of agreement. */
export function oldLaw({ rheology, softeningC }: Switched, at: Agreement): Old {
  const law = viscosityLawOf({ rheology })(at.temperature, 0);
  return {
    rheology,
    softening: toSi(softeningC.value, '°C'),
    at,
    law,
    viscosity: viscosityAt(law, agreedRate),
    index: localIndex(law, agreedRate),
  };
}

/** The stored index with its source where the new law means the same by it, else null. */
function keptIndex({ rheology }: Old, most: number): Sourced | null {
  if (rheology.model !== 'carreauYasuda' && rheology.model !== 'crossWlf') return null;
  return rheology.index.value <= most && (rheology.index.high ?? 0) <= most ? rheology.index : null;
}

/** The shift to go on with, and its factor at the point of agreement. */
function shiftFor({ rheology, at }: Old, rate: number): { shift: StoredShift; aT: number } {
  if (rheology.model === 'crossWlf') return { shift: shiftOverWindow(rheology, rate, at), aT: 1 };
  const { shift } = rheology;
  if (shift.kind === 'none') return { shift, aT: 1 };
  const level = (temperature: number) => baseViscosity(rheology, temperature, 0);
  return { shift, aT: level(at.temperature) / level(toSi(shift.referenceC, '°C')) };
}

/** Constant viscosity: the old one at the point of agreement. */
export function newtonianFrom(old: Old): Rheology {
  const { shift, aT } = shiftFor(old, agreedRate);
  const viscosityPaS = startValue('viscosityPaS', old.viscosity / aT, old.at.source);
  return { model: 'newtonian', viscosityPaS, shift };
}

/** Power law: the tangent of the old flow curve at the point of agreement. */
export function powerLawFrom(old: Old): Rheology {
  const { shift, aT } = shiftFor(old, agreedRate);
  const index = startValue('powerIndex', old.index, old.at.source);
  const consistency = (old.viscosity / aT) * agreedRate ** (1 - index.value);
  return {
    model: 'powerLaw',
    consistencyPaSn: startValue('consistencyPaSn', consistency, old.at.source),
    index,
    shift,
  };
}

/**
 * Carreau-Yasuda law. From a Cross law it is the same curve, as Cross is the case a = 1 - n; from a power law it bends
 * a decade below the agreed rate into the old index.
 */
export function carreauFrom(old: Old): Rheology {
  const { law, at } = old;
  const { shift, aT } = shiftFor(old, 0);
  const made = (name: keyof typeof lawLimits, value: number): Sourced => startValue(name, value, at.source);
  const cross = law.model === 'cross' ? law : null;
  const bend = cross ? cross.criticalStress / cross.zeroShearViscosity : bendRate;
  return {
    model: 'carreauYasuda',
    zeroShearViscosityPaS: made('zeroShearViscosityPaS', (cross?.zeroShearViscosity ?? old.viscosity) / aT),
    infiniteShearViscosityPaS: made('infiniteShearViscosityPaS', 0),
    timeConstantS: made('timeConstantS', 1 / bend / aT),
    transition: made('transition', cross ? 1 - cross.index : 2),
    index: keptIndex(old, lawLimits.carreauIndex[1]) ?? made('carreauIndex', old.index),
    shift,
  };
}

/** What a Cross law is made of at one temperature; Pa s and Pa. */
interface CrossStart {
  readonly rest: number;
  readonly stress: number;
  readonly index: Sourced;
}

/** A Carreau-Yasuda law hands on its level at rest and its index; the critical stress meets the agreed viscosity. */
function crossFromCarreau(rest: number, index: Sourced, { viscosity }: Old): CrossStart {
  const meeting = (rest * agreedRate) / (rest / viscosity - 1) ** (1 / (1 - index.value));
  return { rest, index, stress: meeting > 0 ? meeting : highestStart };
}

/**
 * A power law becomes a Cross law that bends a decade below the agreed rate and has the old slope at it:
 * s = 1 - (1 - n) r/(1 + r) with r = (rate/bend)^(1 - n), solved for n by repetition, which halves the error or better.
 */
function crossFromSlope({ index: slope, viscosity, at }: Old): CrossStart {
  const ratio = (n: number) => (agreedRate / bendRate) ** (1 - n);
  let n = slope;
  for (let turn = 0; turn < 30; turn++) n = 1 - (1 - slope) * (1 + 1 / ratio(n));
  const index = startValue('crossIndex', n, at.source);
  const rest = viscosity * (1 + ratio(index.value));
  return { rest, index, stress: rest * bendRate };
}

/** A melt that hardly thins: the bend lies at stresses that machines do not reach. */
const crossFromFlat = ({ viscosity, at }: Old): CrossStart => ({
  rest: viscosity,
  index: startValue('crossIndex', sharpIndex, at.source),
  stress: highestStart,
});

function crossStart(old: Old): CrossStart {
  const { law } = old;
  if (law.model === 'carreauYasuda' && law.index < hardlyThinning) {
    const kept = keptIndex(old, lawLimits.crossIndex[1]);
    return crossFromCarreau(law.zeroShearViscosity, kept ?? startValue('crossIndex', law.index, old.at.source), old);
  }
  return old.index < hardlyThinning ? crossFromSlope(old) : crossFromFlat(old);
}

/** Cross law with WLF temperatures; see the starts above. */
export function crossFrom(old: Old): Rheology {
  const { at } = old;
  const { rest, stress, index } = crossStart(old);
  const wlf = wlfLike(old.rheology, at, old.softening, old.index);
  const above = Math.max(0, at.temperature - wlf.d2K.value);
  return {
    model: 'crossWlf',
    d1PaS: startValue('d1PaS', rest * Math.exp((wlf.a1.value * above) / (wlf.a2K.value + above)), at.source),
    ...wlf,
    criticalStressPa: startValue('criticalStressPa', Math.min(stress, highestStart), at.source),
    index,
  };
}
