/** Numbers as typed and as shown: read in the shown unit, kept in the unit that the file stores. */

import {
  dimensionOf,
  type FieldRange,
  fail,
  fromSi,
  type Issue,
  lookNumber,
  lookStored,
  type NumberLook,
  ok,
  parseQuantity,
  plainLook,
  type Result,
  toSi,
} from '../../core/index.ts';
import { currentLook } from '../look.ts';
import type { Path } from '../store/path.ts';
import { editText } from '../strings/editing.ts';
import { type FieldSpec, type FieldUnit, isUnit, shownStep, shownUnit, unitText } from './spec.ts';

/** Removes the last digits of rounding that a conversion to SI and back leaves. */
const cleaned = (value: number): number => Number(value.toPrecision(12));

/** A ratio: bare numbers are shares of one; a percentage and `5:1`, as gears are sold, are understood too. */
function readBare(text: string, look: NumberLook): Result<number> {
  const marked = /[%‰]|ppm/.test(text);
  const plain = text.replace(/\s*:\s*1\s*$/, '');
  const bare = parseQuantity(marked ? plain : `${plain}%`, 'share', '%', look.decimal);
  if (!bare.ok) return fail(...bare.issues.map((issue) => bareIssue(issue, text)));
  return ok(marked ? bare.value : bare.value * 100);
}

/** What is wrong with a number that takes no unit: the units of shares, which reading borrows, are not named. */
function bareIssue(issue: Issue, text: string): Issue {
  const ofUnit = issue.code === 'unknown-unit' || issue.code === 'wrong-unit';
  const said = ofUnit ? { message: editText.bareOnly, remedy: editText.bareRemedy } : {};
  // the example of the reader of shares, with its per cent sign, would contradict the line above it
  const example = issue.remedy.startsWith('Write for example') ? { remedy: editText.bareExample } : {};
  return { ...issue, ...example, ...said, value: text, allowed: 'a number without a unit' };
}

/** Reads typed text as a number in the field's stored unit; a bare number is in the shown one. Issues carry the path. */
export function readNumber(
  text: string,
  spec: FieldSpec,
  path: Path,
  look: NumberLook = currentLook(),
): Result<number> {
  const shown = shownUnit(spec.unit, look);
  const read = isUnit(shown) ? parseQuantity(text, dimensionOf(shown), shown, look.decimal) : readBare(text, look);
  if (!read.ok) return fail(...read.issues.map((issue) => ({ ...issue, path })));
  return ok(cleaned(isUnit(spec.unit) ? fromSi(read.value, spec.unit) : read.value));
}

/** A number that needs no other unit, as this window shows it: up to nine digits, no padding. */
export const writeNumber = (value: number): string => lookNumber(value, 9, currentLook());

/** A stored number as its field shows it. */
export const showNumber = (value: number, unit: FieldUnit, look: NumberLook = currentLook()): string =>
  isUnit(unit) ? lookStored(value, unit, look) : lookNumber(value, 9, look);

/** A stored number moved by `by` steps of what is shown, and kept within the range. */
export function stepped(
  value: number,
  by: number,
  spec: FieldSpec,
  range: FieldRange | null,
  look: NumberLook,
): number {
  const shown = shownUnit(spec.unit, look);
  const step = shownStep(spec, look);
  const converted = shown !== spec.unit && isUnit(shown) && isUnit(spec.unit);
  const from = converted ? Number(showNumber(value, spec.unit, { ...look, decimal: plainLook.decimal })) : value;
  const next = Number((from + by * step).toPrecision(10));
  const stored = converted ? cleaned(fromSi(toSi(next, shown), spec.unit)) : next;
  const least = range?.least ?? Number.NEGATIVE_INFINITY;
  const most = range?.most ?? Number.POSITIVE_INFINITY;
  return Math.min(most, Math.max(least, stored));
}

/** The allowed range in words, in the shown unit; empty where the format sets no limits. */
export function rangeText(range: FieldRange | null, spec: FieldSpec, look: NumberLook = currentLook()): string {
  if (!range) return '';
  const unit = unitText(spec.unit, look);
  const tail = unit ? ` ${unit}` : '';
  const [least, most] = [range.least, range.most].map((limit) =>
    limit === null ? null : showNumber(limit, spec.unit, look),
  );
  const { ranges } = editText;
  if (least != null && most != null) return ranges.both(least, most, tail);
  if (least != null) return ranges.least(least, tail);
  return most != null ? ranges.most(most, tail) : '';
}
