/** Numbers of a table, with decimal point or comma, thousands and units. */

import { type Dimension, fromSi, parseQuantity, type Unit } from '../units.ts';

/** The decimal mark of a file, and whether its numbers show it. */
export interface DecimalMark {
  readonly mark: '.' | ',';
  readonly sure: boolean;
  /** the table comes from where points mark thousands, as semicolons between cells or dates such as 30.4.2026 tell */
  readonly pointsMayGroup?: boolean;
}

/** A number, with what is doubtful about it, or why there is none. */
export type NumberReading = { readonly value: number; readonly doubt?: string } | { readonly fault: string };

const start =
  /^[+\-\u2212]?\d[\d.,'\u2019\u00a0\u202f]*(?: \d{3}(?!\d))*(?:[.,]\d+)?(?:e[+-]?\d{1,3})?|^[+\-\u2212]?[.,]\d+(?:e[+-]?\d{1,3})?/i;

/** Says by its own look which mark is the decimal one; null where it could be either. */
function markOf(text: string): '.' | ',' | null {
  const number = start.exec(text.trim())?.[0] ?? '';
  const comma = number.lastIndexOf(',');
  const point = number.lastIndexOf('.');
  if (comma >= 0 && point >= 0) return comma > point ? ',' : '.';
  const at = Math.max(comma, point);
  if (at < 0) return null;
  const decimals = /^\d*/.exec(number.slice(at + 1))?.[0].length ?? 0;
  const whole = number.slice(0, at).replace(/^[+\-\u2212]/, '');
  const couldGroup = decimals === 3 && /^[1-9]\d{0,2}$/.test(whole);
  const twice = number.indexOf(number[at]) !== at;
  if (twice) return number[at] === ',' ? '.' : ',';
  return couldGroup ? null : comma >= 0 ? ',' : '.';
}

/**
 * The decimal mark of a file from its numbers.
 * @param cells texts of the columns that hold quantities
 * @param pointsMayGroup whether something else of the table tells that points may mark thousands
 */
export function decimalMark(cells: Iterable<string>, pointsMayGroup = false): DecimalMark {
  let commas = 0;
  let points = 0;
  for (const cell of cells) {
    const mark = markOf(cell.slice(0, 60));
    if (mark === ',') commas++;
    else if (mark === '.') points++;
  }
  return { mark: commas > points ? ',' : '.', sure: commas !== points, pointsMayGroup };
}

function plainNumber(text: string, decimal: DecimalMark): NumberReading {
  const bare = text.replace(/\u2212/g, '-').replace(/['\u2019\u00a0\u202f ]/g, '');
  const own = markOf(bare);
  const marked = /[.,]/.test(bare);
  if (own === null && marked && !decimal.sure && bare.includes(',')) {
    return { fault: 'The comma could mark thousands or decimals.' };
  }
  const mark = own ?? decimal.mark;
  const group = mark === '.' ? ',' : '.';
  const grouped = bare.includes(group) && !/^[+-]?\d{1,3}([.,]\d{3})+([.,]\d*)?(e|$)/i.test(bare);
  if (grouped) return { fault: 'Thousands and decimals are mixed up.' };
  const value = Number(bare.replaceAll(group, '').replace(mark, '.'));
  if (!Number.isFinite(value)) return { fault: 'This is not a number.' };
  const doubtful = own === null && bare.includes('.') && !decimal.sure && decimal.pointsMayGroup === true;
  return doubtful ? { value, doubt: 'The point could mark thousands; it was taken for decimals.' } : { value };
}

/**
 * A number without unit.
 * @returns the number, or the fault in words
 */
export function readPlain(text: string, decimal: DecimalMark): NumberReading {
  const clean = text.trim();
  const number = start.exec(clean)?.[0] ?? '';
  return number !== '' && number.length === clean.length && clean.length <= 40
    ? plainNumber(number, decimal)
    : { fault: 'This is not a number.' };
}

/** Reads the cells of one column. */
export type QuantityReader = (text: string) => NumberReading;

/** Hides what conversion leaves in the last digits. */
const tidy = (value: number): number => Number(value.toPrecision(12));

/**
 * Reader of quantities of one column.
 * @param dimension what the column measures
 * @param columnUnit unit as written in the heading; '' = the stored unit
 * @param storedUnit unit of the answer
 * A unit in the cell itself goes before that of the heading.
 */
export function quantityReader(
  dimension: Dimension,
  columnUnit: string,
  storedUnit: Unit,
  decimal: DecimalMark,
): QuantityReader {
  const at = (value: number) => parseQuantity(`${value} ${columnUnit}`, dimension, storedUnit);
  const [zero, one] = [at(0), at(1)];
  const inUnit = columnUnit !== '' && zero.ok && one.ok;
  const toStored = (value: number) =>
    inUnit ? tidy(fromSi(zero.value + value * (one.value - zero.value), storedUnit)) : value;
  return (text) => {
    const clean = text.trim();
    const number = start.exec(clean)?.[0] ?? '';
    if (clean === '') return { fault: 'A number is missing.' };
    if (number === '' || clean.length > 60) return { fault: 'This does not begin with a number.' };
    const read = plainNumber(number, decimal);
    const unit = clean.slice(number.length).trim();
    if ('fault' in read) return read;
    if (unit === '') return { ...read, value: toStored(read.value) };
    const told = parseQuantity(`${read.value} ${unit}`, dimension);
    return told.ok ? { ...read, value: tidy(fromSi(told.value, storedUnit)) } : { fault: told.issues[0].message };
  };
}
