/** The day on the wall, for dates of issue. */

/** A moment's day as YYYY-MM-DD in this computer's time zone, which near midnight is not the day in Greenwich. */
export function localDay(now: Date): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
