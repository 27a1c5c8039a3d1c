/** Numbers as typed and as shown, in the unit that a field stores. */

import {
  allUnits,
  dimensionOf,
  fail,
  formatNumber,
  fromSi,
  ok,
  parseQuantity,
  type Result,
  type Unit,
} from '../../core/index.ts';
import type { Path } from '../store/path.ts';
import type { FieldSpec, FieldUnit } from './spec.ts';

const isUnit = (unit: FieldUnit): unit is Unit => (allUnits as readonly string[]).includes(unit);

/** Removes the last digits of rounding that a conversion to SI and back leaves. */
const cleaned = (value: number): number => Number(value.toPrecision(12));

/** A ratio: bare numbers are shares of one, and a percentage is understood too. */
function readBare(text: string): Result<number> {
  const bare = /[%‰]|ppm/.test(text) ? parseQuantity(text, 'share') : parseQuantity(`${text}%`, 'share');
  if (!bare.ok)
    return fail(...bare.issues.map((issue) => ({ ...issue, value: text, allowed: 'a number without a unit' })));
  return ok(/[%‰]|ppm/.test(text) ? bare.value : bare.value * 100);
}

/** Reads typed text as a number in the field's unit; issues carry the field's path. */
export function readNumber(text: string, spec: FieldSpec, path: Path): Result<number> {
  const { unit } = spec;
  const read = isUnit(unit) ? parseQuantity(text, dimensionOf(unit), unit) : readBare(text);
  if (!read.ok) return fail(...read.issues.map((issue) => ({ ...issue, path })));
  return ok(cleaned(isUnit(unit) ? fromSi(read.value, unit) : read.value));
}

/** A stored number as the field shows it: up to nine digits, no padding. */
export const writeNumber = (value: number): string => formatNumber(value, 9);
