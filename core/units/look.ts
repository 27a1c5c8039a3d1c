/** How numbers look to one reader: inches or millimetres, decimal point or comma. The reader's habit is handed in. */

import { displayUnits, fromSi, toSi, type UnitSystem } from './convert.ts';
import { formatNumber, noNumber, unitLabel } from './format.ts';
import type { DecimalSign } from './parse.ts';
import { allUnits, type Unit } from './table.ts';

/** A reader's habit. */
export interface NumberLook {
  readonly system: UnitSystem;
  readonly decimal: DecimalSign;
}

/** Numbers as core writes them. */
export const plainLook: NumberLook = { system: 'metric', decimal: '.' };

/**
 * Metric units that turn into inches. Only lengths, areas and small volumes of a drawing do: temperatures, pressures,
 * speeds and flows stay in the units of controllers and data sheets (own choice).
 */
const inchOf: Partial<Readonly<Record<string, Unit>>> = {
  mm: displayUnits.inch.length,
  cm: displayUnits.inch.length,
  µm: 'thou',
  'mm²': displayUnits.inch.area,
  'cm²': displayUnits.inch.area,
  'cm³': displayUnits.inch.volume,
};

/** The unit that a reader sees in place of `unit`. */
export const lookUnit = (unit: Unit, { system }: NumberLook): Unit =>
  system === 'inch' ? (inchOf[unit] ?? unit) : unit;

/** A number as core writes it, with the reader's decimal sign. */
const withSign = (text: string, { decimal }: NumberLook): string => (decimal === ',' ? text.replace('.', ',') : text);

/** As formatNumber, with the reader's decimal sign. */
export const lookNumber = (value: number, significantDigits: number, look: NumberLook): string =>
  withSign(formatNumber(value, significantDigits), look);

/** As formatQuantity, in the reader's unit and with the reader's decimal sign. */
export function lookQuantity(si: number, unit: Unit, significantDigits: number, look: NumberLook): string {
  const shown = lookUnit(unit, look);
  const number = lookNumber(fromSi(si, shown), significantDigits, look);
  if (number === noNumber) return number;
  return shown === '°' ? `${number}°` : `${number} ${unitLabel(shown)}`;
}

/** Decimals of an inch in a field: a tenth of a thousandth is finer than any lathe holds. */
const inchDecimals = 4;
/** Digits of an inch that are shown at least, where it is small. */
const inchDigits = 4;

/**
 * A stored number as a field shows it.
 * @param value in `unit`
 * @param unit the unit it is stored in
 * @returns up to nine digits; inches to four decimals, or four digits where those say more
 */
export function lookStored(value: number, unit: Unit, look: NumberLook): string {
  const shown = lookUnit(unit, look);
  if (shown === unit) return lookNumber(value, 9, look);
  const inches = fromSi(toSi(value, unit), shown);
  const before = inches === 0 ? 0 : Math.floor(Math.log10(Math.abs(inches))) + 1;
  return lookNumber(inches, Math.min(9, Math.max(inchDigits, before + inchDecimals)), look);
}

const unitNames = Object.keys(inchOf).join('|');
const oneNumber = '-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?';
/** What joins numbers that share the unit after the last of them. */
const joint = '(?:, (?:and |or )?| (?:to|and|or|by|x|×|…|–|-) |[–…×-]| …|… )';
/**
 * `12.5 mm`, `1 to 3 mm`, `2, 3 and 4 mm`, `10 × 12 mm` and the like. A unit that goes on (mm/s, mm³) is left alone, and
 * so is a number that is part of a name or of another number (M3, 1/8, 2.1.3).
 */
const lengthInText = new RegExp(
  `(?<![\\w.,/×-])(${oneNumber}(?:${joint}${oneNumber})*) (${unitNames})(?![\\w²³/·])`,
  'g',
);
/** The same list in pieces: every second one is a number. */
const betweenNumbers = new RegExp(`(${oneNumber})(${joint})?`, 'g');
/** Words that are followed by the place in a list, which is no length. */
const beforePlace = /(?:section|zone|piece|entry|segment)(s?) $|(entries) $/i;
/** A decimal point inside a number that stands alone: not in a version, a reference or a name. */
const pointInText = /(?<![\w.,])(-?\d+)\.(\d+)(?:e(-?\d+))?(?![\w.]*\d)/g;

const digitsOf = (number: string): number => number.replace(/e.*/, '').replace(/^[-0.]+|\./g, '').length;

/** A number of a text in another unit, with as many digits as it had, three at least. */
function inInches(number: string, unit: string): string {
  const from = allUnits.find((candidate) => candidate === unit) as Unit;
  const si = toSi(Number(number), from);
  return formatNumber(fromSi(si, inchOf[unit] ?? from), Math.max(3, digitsOf(number)));
}

/** How many numbers at the head of a list are places in a list, or stand for themselves. */
function countsBefore(before: string, parts: readonly RegExpMatchArray[]): number {
  const [first] = parts;
  // `3 of 4, 12 mm`: two numbers that only a comma parts are hardly two lengths
  if (parts.length === 2 && first[2] === ', ') return 1;
  const place = beforePlace.exec(before);
  if (!place || !/^\d+$/.test(first[1]) || first[2]?.includes('×')) return 0;
  return place[1] || place[2] ? parts.length - 1 : 1;
}

/** All lengths of a text in inches. */
const textInInches = (text: string): string =>
  text.replace(lengthInText, (_all, list: string, unit: string, offset: number) => {
    const parts = [...list.matchAll(betweenNumbers)];
    const counts = parts.length > 1 ? countsBefore(text.slice(0, offset), parts) : 0;
    const turned = parts.map(([, number, after = ''], i) => `${i < counts ? number : inInches(number, unit)}${after}`);
    return `${turned.join('')} ${inchOf[unit] ?? unit}`;
  });

/**
 * A sentence or a figure of core for the reader: its lengths in the reader's unit, its decimals with the reader's sign.
 * Meant for texts that state values; a text that cites sources should be left as it is.
 */
export function lookText(text: string, look: NumberLook): string {
  const turned = look.system === 'metric' ? text : textInInches(text);
  return look.decimal === '.' ? turned : turned.replace(pointInText, (number) => number.replace('.', ','));
}
