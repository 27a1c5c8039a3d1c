/** Numbers of a search as this window shows them. */

import { allUnits, figureOf, fromSi, type SearchInput, toSi, type Unit } from '../../core/index.ts';
import { formatNumber, formatQuantity } from '../look.ts';
import { searchText } from '../strings/search.ts';

/** The unit of core that a symbol names. */
export const unitOf = (symbol: string): Unit | null => allUnits.find((unit) => unit === symbol) ?? null;

/** A value in the unit of the file. */
export function shownValue(value: number, symbol: string, digits = 5): string {
  if (!Number.isFinite(value)) return '–';
  const unit = unitOf(symbol);
  if (unit !== null) return formatQuantity(toSi(value, unit), unit, digits);
  return `${formatNumber(value, digits)}${symbol === '' ? '' : ` ${symbol}`}`;
}

/** A figure, SI. */
export function shownFigure(value: number | null | undefined, unit: Unit | ''): string {
  if (value === null || value === undefined || !Number.isFinite(value)) return '–';
  return unit === '' ? formatNumber(value, 3) : formatQuantity(value, unit, 3);
}

/** A figure in the unit it is shown in; null where there is no number. */
export const figureNumber = (value: number | null | undefined, unit: Unit | ''): number | null =>
  value === null || value === undefined || !Number.isFinite(value) ? null : unit === '' ? value : fromSi(value, unit);

/** Name and unit of a figure, for axes and heads. */
export function figureTitle(id: string): string {
  const { label, unit } = figureOf(id);
  return unit === '' ? label : `${label}, ${unit}`;
}

/** Name and unit of an input. */
export const inputTitle = ({ label, unit }: Pick<SearchInput, 'label' | 'unit'>): string =>
  unit === '' ? label : `${label}, ${unit}`;

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
