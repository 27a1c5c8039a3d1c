/** Numbers of a search as this window shows them. */

import {
  allUnits,
  figureOf,
  fromSi,
  lookNumber,
  lookQuantity,
  lookUnit,
  type NumberLook,
  plainLook,
  type SearchInput,
  toSi,
  type Unit,
} from '../../core/index.ts';
import { currentLook, formatNumber, formatQuantity } from '../look.ts';
import { searchText } from '../strings/search.ts';

/** The unit of core that a symbol names. */
const unitOf = (symbol: string): Unit | null => allUnits.find((unit) => unit === symbol) ?? null;

function valueText(value: number, symbol: string, digits: number, look: NumberLook): string {
  if (!Number.isFinite(value)) return '–';
  const unit = unitOf(symbol);
  if (unit !== null) return lookQuantity(toSi(value, unit), unit, digits, look);
  return `${lookNumber(value, digits, look)}${symbol === '' ? '' : ` ${symbol}`}`;
}

function figureText(value: number | null | undefined, unit: Unit | '', look: NumberLook): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return '–';
  return unit === '' ? lookNumber(value, 3, look) : lookQuantity(value, unit, 3, look);
}

/** A value in the unit of the file, as this window shows it. */
export const shownValue = (value: number, symbol: string, digits = 5): string =>
  valueText(value, symbol, digits, currentLook());

/** A figure, SI, as this window shows it. */
export const shownFigure = (value: number | null | undefined, unit: Unit | ''): string =>
  figureText(value, unit, currentLook());

/** A value in the unit of the file as files hold it: metric, with a point. */
export const plainValue = (value: number, symbol: string): string => valueText(value, symbol, 5, plainLook);

/** A figure, SI, as files hold it: metric, with a point. */
export const plainFigure = (value: number | null | undefined, unit: Unit | ''): string =>
  figureText(value, unit, plainLook);

/** The unit that this window shows in place of a symbol. */
export function seenUnit(symbol: string): string {
  const unit = unitOf(symbol);
  return unit === null ? symbol : lookUnit(unit, currentLook());
}

/** A value in the unit of the file as a number of the unit that this window shows. */
export function seenValue(value: number, symbol: string): number {
  const unit = unitOf(symbol);
  const seen = unit && lookUnit(unit, currentLook());
  return unit === null || seen === null || seen === unit ? value : fromSi(toSi(value, unit), seen);
}

/** A figure in the unit it is shown in; null where there is no number. */
export const figureNumber = (value: number | null | undefined, unit: Unit | ''): number | null =>
  value === null || value === undefined || !Number.isFinite(value)
    ? null
    : unit === ''
      ? value
      : fromSi(value, lookUnit(unit, currentLook()));

/** Name and unit of a figure, for axes and heads. */
export function figureTitle(id: string): string {
  const { label, unit } = figureOf(id);
  return unit === '' ? label : `${label}, ${seenUnit(unit)}`;
}

/** Name and unit of an input. */
export const inputTitle = ({ label, unit }: Pick<SearchInput, 'label' | 'unit'>): string =>
  unit === '' ? label : `${label}, ${seenUnit(unit)}`;

/** A relative change with its sign. */
export function shownChange(change: number | null): string {
  if (change === null) return '–';
  const text = formatQuantity(change, '%', 2);
  return change > 0 ? `+${text}` : text;
}

/** A stretch of time, rounded as one says it. */
export function shownTime(seconds: number): string {
  if (seconds < 90) return searchText.seconds(formatNumber(Math.max(1, Math.round(seconds)), 2));
  return searchText.minutes(formatNumber(Math.round(seconds / 30) / 2, 2));
}

/** Within a sentence: a capital that only begins a name made small. */
export const inSentence = (label: string): string =>
  /^[A-Z][a-z]/.test(label) ? label.charAt(0).toLowerCase() + label.slice(1) : label;
