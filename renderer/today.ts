/** The day, as the person's clock shows it. */

/** Today as YYYY-MM-DD, by this computer's clock and zone. */
export function today(now = new Date()): string {
  const two = (n: number) => String(n).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
