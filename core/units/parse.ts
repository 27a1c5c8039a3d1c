/** Reads typed quantities such as `3 mm`, `1 1/2"`, `190 °C` or `3,5`. */

import { fail, type Issue, ok, type Result } from '../result.ts';
import { dimensionOf, displayUnits, toSi, unitsOf } from './convert.ts';
import { unitLabel } from './format.ts';
import { allUnits, type Dimension, type Unit, unitTable } from './table.ts';

/** Longest text that is looked at. */
const longestText = 80;

const vulgarFractions: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
  '⅓': '1/3',
  '⅔': '2/3',
  '⅙': '1/6',
  '⅚': '5/6',
  '⅕': '1/5',
  '⅖': '2/5',
  '⅗': '3/5',
  '⅘': '4/5',
};

/** One spelling for spaces, minus signs, multiplication dots, powers and vulgar fractions. */
function tidy(text: string): string {
  return (
    text
      .replace(/[½¼¾⅛⅜⅝⅞⅓⅔⅙⅚⅕⅖⅗⅘]/g, (c) => ` ${vulgarFractions[c] ?? c}`)
      .replace(/\u2044/g, '/')
      .replace(/[\u2212\u2013]/g, '-')
      .replace(/[\s\u202f]+/g, ' ')
      .trim()
      // A diameter sign says nothing that the field does not; `1-1/2` is how drawings in inches write a mixed fraction.
      .replace(/^[Ø⌀ø] ?/, '')
      .replace(/^([+-]?\d+) ?- ?(\d+ ?\/ ?\d+)/, '$1 $2')
  );
}

const unitKey = (text: string): string =>
  text
    .replace(/\s+/g, '')
    .replace(/[*×⋅∙]/g, '·')
    .replace(/(?<=[A-Za-z])[.-](?=[A-Za-z])/g, '·')
    .replace(/(?<=[A-Za-z])\.$/, '')
    .replace(/^degrees?(?=[CF]$)/i, 'deg')
    .replace(/μ/g, 'µ')
    .replace(/\^?2(?![0-9])/g, '²')
    .replace(/\^?3(?![0-9])/g, '³')
    .replace(/\^-1|-1$/g, '⁻¹');

const spellingsOf = (unit: Unit): readonly string[] => [unit, ...unitTable[unit].spellings].map(unitKey);

/** Exact spelling first; then without regard to case where only one unit fits (MPa and mPa stay apart). */
function findUnit(text: string, units: readonly Unit[]): Unit | undefined {
  const key = unitKey(text);
  const exact = units.find((unit) => spellingsOf(unit).includes(key));
  if (exact) return exact;
  const lower = key.toLowerCase();
  const loose = units.filter((unit) => spellingsOf(unit).some((s) => s.toLowerCase() === lower));
  return loose.length === 1 ? loose[0] : undefined;
}

/** `a`, `a/b` or `a b/c` with optional sign; NaN where the text is none of them. */
function readNumber(text: string): number {
  const mixed = /^([+-]?)(?:(\d+) )?(\d+) ?\/ ?(\d+)$/.exec(text);
  if (mixed) {
    const size = Number(mixed[2] ?? 0) + Number(mixed[3]) / Number(mixed[4]);
    return mixed[1] === '-' ? -size : size;
  }
  const plain = /^[+-]? ?(?:\d+[.,]?\d*|[.,]\d+)(?:e[+-]?\d+)?$/i;
  return plain.test(text) ? Number(text.replace(',', '.').replace(' ', '')) : Number.NaN;
}

const numberStart = /^[+-]? ?(?:\d+ \d+ ?\/ ?\d+|\d+ ?\/ ?\d+|(?:\d+[.,]?\d*|[.,]\d+)(?:e[+-]?\d+)?)/i;
/** Which sign parts whole numbers from decimals where the text is shown. */
export type DecimalSign = '.' | ',';

/** One group of three after the sign that is not the decimal one: `1,000` could be one or a thousand. */
const ambiguousGroup: Readonly<Record<DecimalSign, RegExp>> = {
  '.': /^[+-]? ?[1-9]\d{0,2},\d{3}$/,
  ',': /^[+-]? ?[1-9]\d{0,2}\.\d{3}$/,
};
/** Groups of three parted by signs or gaps, more than one or with decimals behind: thousands beyond doubt. */
const grouped =
  /^[+-]? ?\d{1,3}(?:(?:[ '’]\d{3})+(?:[.,]\d+)?|(?:,\d{3})+\.\d+|(?:\.\d{3})+,\d+|(?:[.,]\d{3}){2,})(?![\d/])/;
const signNames: Readonly<Record<DecimalSign, string>> = { '.': 'point', ',': 'comma' };

/** Why a number cannot be read for the signs in it, and what to do; null where it can. */
function signFault(clean: string, numberText: string, decimal: DecimalSign): readonly [string, string] | null {
  if (grouped.test(clean)) {
    return [
      'Thousands separators are not read, because signs and gaps mean different things in different countries.',
      'Leave out the thousands separators.',
    ];
  }
  if (!ambiguousGroup[decimal].test(numberText)) return null;
  const other = decimal === '.' ? ',' : '.';
  const remedy = `Leave out the thousands separator, or write the decimals with a ${signNames[decimal]}.`;
  return [`The ${signNames[other]} could mark thousands or decimals.`, remedy];
}

const allowedText = (dimension: Dimension): string =>
  `a number with one of these units: ${unitsOf(dimension).map(unitLabel).join(', ')}`;

function refuse(code: string, message: string, text: string, dimension: Dimension, remedy?: string): Result<never> {
  const fallback = `Write for example "${dimension === 'temperature' ? 190 : 3} ${unitLabel(displayUnits.metric[dimension])}".`;
  const value = text.length > longestText ? `${text.slice(0, longestText)}…` : text;
  const issue: Issue = { path: [], code, message, value, allowed: allowedText(dimension), remedy: remedy ?? fallback };
  return fail(issue);
}

function refuseUnit(unitText: string, text: string, dimension: Dimension): Result<never> {
  const other = findUnit(unitText, allUnits);
  if (other) {
    const message = `"${unitText}" is a unit of ${wordsOf(dimensionOf(other))}, but ${wordsOf(dimension)} is asked for.`;
    return refuse('wrong-unit', message, text, dimension);
  }
  return refuse('unknown-unit', `"${unitText}" is not a known unit of ${wordsOf(dimension)}.`, text, dimension);
}

/** `massFlow` as `mass flow`. */
const wordsOf = (dimension: Dimension): string => dimension.replace(/[A-Z]/g, (c) => ` ${c.toLowerCase()}`);

/**
 * Reads a typed quantity.
 * @param text number with decimal point or comma, fraction or mixed fraction, then an optional unit
 * @param dimension what is asked for
 * @param defaultUnit unit of a bare number; the metric display unit when absent
 * @param decimal the reader's decimal sign: both signs are read, but `1,000` only where the comma is theirs
 * @returns the value in SI (rev/s for rotation), or one issue naming the allowed units
 */
export function parseQuantity(
  text: string,
  dimension: Dimension,
  defaultUnit: Unit = displayUnits.metric[dimension],
  decimal: DecimalSign = '.',
): Result<number> {
  if (text.length > longestText) return refuse('bad-quantity', 'The text is too long.', text, dimension);
  const clean = tidy(text);
  const numberText = numberStart.exec(clean)?.[0] ?? '';
  const shown = readNumber(numberText);
  if (numberText === '' || Number.isNaN(shown)) {
    const message = clean === '' ? 'A number is missing.' : 'This does not begin with a number.';
    return refuse('bad-quantity', message, text, dimension);
  }
  const fault = signFault(clean, numberText, decimal);
  if (fault) return refuse('ambiguous-number', fault[0], text, dimension, fault[1]);
  const unitText = clean.slice(numberText.length).trim();
  const unit = unitText === '' ? defaultUnit : findUnit(unitText, unitsOf(dimension));
  if (unit === undefined) return refuseUnit(unitText, text, dimension);
  const si = toSi(shown, unit);
  if (!Number.isFinite(si)) return refuse('bad-quantity', 'The number is not finite.', text, dimension);
  if (dimension === 'temperature' && si < 0) {
    return refuse('bad-quantity', 'This is below absolute zero.', text, dimension);
  }
  return ok(si);
}
