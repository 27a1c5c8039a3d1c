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
export const withSign = (text: string, { decimal }: NumberLook): string =>
  decimal === ',' ? text.replace('.', ',') : text;

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
/** `12.5 mm`, `1 to 3 mm` and the like; a unit that goes on (mm/s, mm³) is left alone. */
const lengthInText = new RegExp(
  `(-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?)( (?:to|and|…|–|or) | ?[–…] ?)?(?:(-?\\d+(?:\\.\\d+)?(?:e-?\\d+)?))? (${unitNames})(?![\\w²³/·])`,
  'g',
);
/** A decimal point inside a number that stands alone: not in a version, a reference or a name. */
const pointInText = /(?<![\w.,])(-?\d+)\.(\d+)(?:e(-?\d+))?(?![\w.]*\d)/g;

const digitsOf = (number: string): number => number.replace(/e.*/, '').replace(/^[-0.]+|\./g, '').length;

/** A number of a text in another unit, with as many digits as it had, three at least. */
function inInches(number: string, unit: string): string {
  const from = allUnits.find((candidate) => candidate === unit) as Unit;
  const si = toSi(Number(number), from);
  return formatNumber(fromSi(si, inchOf[unit] ?? from), Math.max(3, digitsOf(number)));
}

/**
 * A sentence or a figure of core for the reader: its lengths in the reader's unit, its decimals with the reader's sign.
 * Meant for texts that state values; a text that cites sources should be left as it is.
 */
export function lookText(text: string, look: NumberLook): string {
  const metric = look.system === 'metric';
  const turned = metric
    ? text
    : text.replace(
        lengthInText,
        (_all, first: string, between: string | undefined, second: string | undefined, unit: string) => {
          const numbers =
            second === undefined
              ? inInches(first, unit)
              : `${inInches(first, unit)}${between ?? ' '}${inInches(second, unit)}`;
          return `${numbers} ${inchOf[unit] ?? unit}`;
        },
      );
  return look.decimal === '.' ? turned : turned.replace(pointInText, (number) => number.replace('.', ','));
}
