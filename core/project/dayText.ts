/** Days as files state them. */

/** A moment's day as YYYY-MM-DD in this computer's time zone, which near midnight is not the day in Greenwich. */
export function dayText(moment: Date): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
}
