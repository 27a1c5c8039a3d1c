/** Differences between two projects as rows: named as the panels name their fields, numbers as this window shows them. */

import { type Difference, projectDifference } from '../../core/index.ts';
import { showNumber, writeNumber } from '../fields/quantity.ts';
import { safeText } from '../strings/safekeeping.ts';
import { placeOf, specAt, valueName } from './fieldNames.ts';

/** One row. */
export interface DifferenceRow {
  readonly key: string;
  /** such as `Revision B`; empty for the project as a whole */
  readonly place: string;
  readonly label: string;
  readonly before: string;
  readonly after: string;
}

const words = safeText.difference;

/** Longest text shown of one value. */
const longestShown = 120;

const short = (value: string): string => (value.length > longestShown ? `${value.slice(0, longestShown)} …` : value);

function leafCount(value: unknown): number {
  if (typeof value !== 'object' || value === null) return 1;
  return Object.values(value).reduce<number>((sum, child) => sum + leafCount(child), 0);
}

const isPlain = (value: unknown): boolean => typeof value !== 'object' || value === null;

function shown(value: unknown, path: Difference['path']): string {
  if (value === undefined || value === null) return words.none;
  if (typeof value === 'number') {
    const spec = specAt(path);
    return spec ? showNumber(value, spec.unit) : writeNumber(value);
  }
  if (typeof value === 'boolean') return value ? words.yes : words.no;
  if (typeof value === 'string') return short(value);
  if (Array.isArray(value) && value.every(isPlain)) return short(value.map((item) => shown(item, path)).join('; '));
  const name: unknown = Reflect.get(Object(value), 'name');
  return typeof name === 'string' ? short(name) : words.values(leafCount(value));
}

function rowOf(difference: Difference, before: unknown, after: unknown): DifferenceRow {
  const { path, kind } = difference;
  const name = valueName(path);
  const whole = kind === 'removed' ? before : after;
  return {
    key: `${path.join('/')} ${kind}`,
    place: placeOf(path, whole),
    label: kind === 'order' ? `${name} ${words.order}`.trim() : name,
    before: shown(difference.before, path),
    after: shown(difference.after, path),
  };
}

/**
 * Rows of what differs.
 * @param before a project, such as the file as it is
 * @param after a project, such as the work in the window
 */
export const differenceRows = (before: unknown, after: unknown): readonly DifferenceRow[] =>
  projectDifference(before, after).map((difference) => rowOf(difference, before, after));
