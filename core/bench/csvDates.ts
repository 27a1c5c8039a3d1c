/** Dates of a table. */

/** How day and month follow each other where a date is written with slashes. */
export type DateOrder = 'dmy' | 'mdy';

/** A date, or why there is none. */
export type DateReading = { readonly date: string; readonly doubt: string | null } | { readonly fault: string };

const iso = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ].*)?$/;
const dotted = /^(\d{1,2})\.\s?(\d{1,2})\.\s?(\d{4}|\d{2})(?:[ ,T].*)?$/;
const slashed = /^(\d{1,2})[/-](\d{1,2})[/-](\d{4}|\d{2})(?:[ ,T].*)?$/;

/** Whether a text begins as a date with points does, day first. */
export const isDotted = (text: string): boolean => dotted.test(text.trim().slice(0, 40));

const two = (value: number): string => String(value).padStart(2, '0');

/** Days of a month of the Gregorian calendar. */
function daysIn(year: number, month: number): number {
  if (month !== 2) return [4, 6, 9, 11].includes(month) ? 30 : 31;
  return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
}

function dateOf(year: number, month: number, day: number, doubt: string | null): DateReading {
  const full = year < 100 ? year + (year < 70 ? 2000 : 1900) : year;
  const exists = month >= 1 && month <= 12 && day >= 1 && day <= daysIn(full, month) && full >= 1900 && full <= 2999;
  return exists
    ? { date: `${full}-${two(month)}-${two(day)}`, doubt }
    : { fault: 'There is no such day in the calendar.' };
}

/**
 * The order that slashed dates of a file must have.
 * @returns null where there is none, or where each could be read either way or some contradict others
 */
export function slashOrder(cells: Iterable<string>): DateOrder | null {
  let dayFirst = false;
  let monthFirst = false;
  for (const cell of cells) {
    const found = slashed.exec(cell.trim().slice(0, 40));
    if (!found) continue;
    dayFirst ||= Number(found[1]) > 12;
    monthFirst ||= Number(found[2]) > 12;
  }
  return dayFirst === monthFirst ? null : dayFirst ? 'dmy' : 'mdy';
}

/**
 * Reads a date; a time after it is left out.
 * @param text `2026-04-30`, `30.4.2026`, `30/04/2026`, `4/30/2026`; years of two digits are 1970 to 2069
 * @param order of slashed dates; null = not known: then day before month where both are possible, with a doubt
 */
export function readDate(text: string, order: DateOrder | null): DateReading {
  const clean = text.trim();
  if (clean.length > 40) return { fault: 'This is not a date.' };
  const year = iso.exec(clean);
  if (year) return dateOf(Number(year[1]), Number(year[2]), Number(year[3]), null);
  const point = dotted.exec(clean);
  if (point) return dateOf(Number(point[3]), Number(point[2]), Number(point[1]), null);
  const slash = slashed.exec(clean);
  if (!slash) return { fault: 'This is not a date.' };
  const [first, second, last] = [Number(slash[1]), Number(slash[2]), Number(slash[3])];
  if (order === 'mdy') return dateOf(last, first, second, null);
  if (order === 'dmy' || first === second) return dateOf(last, second, first, null);
  if (second > 12) return dateOf(last, first, second, null);
  const open = first <= 12;
  return dateOf(
    last,
    second,
    first,
    open ? 'Day and month could be the other way round; the day was taken first.' : null,
  );
}
