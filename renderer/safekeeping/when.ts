/** Times as this person's computer writes them. */

/** A time of the host, ISO 8601, as day and minute in the person's own zone and language. */
export function whenText(iso: string): string {
  const at = new Date(iso);
  if (Number.isNaN(at.getTime())) return iso;
  return new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' }).format(at);
}
