/** A project as JSON text, quickly: parts that an edit did not touch are the same objects, and keep their text. */

/** Texts of the entries of lists, such as revisions, as long as the undo history holds them. */
const entries = new WeakMap<object, string>();

/** The latest text of each part of a project, such as the bench log; one each, so that old ones take no room. */
const parts = new Map<string, { readonly value: unknown; readonly text: string }>();

function entryText(entry: unknown): string {
  if (typeof entry !== 'object' || entry === null) return JSON.stringify(entry) ?? 'null';
  const known = entries.get(entry);
  if (known !== undefined) return known;
  const text = JSON.stringify(entry);
  entries.set(entry, text);
  return text;
}

function partText(key: string, value: unknown): string {
  const known = parts.get(key);
  if (known?.value === value && known !== undefined) return known.text;
  const text = Array.isArray(value) ? `[${value.map(entryText).join(',')}]` : JSON.stringify(value);
  parts.set(key, { value, text });
  return text;
}

/** The same data as the project's file, without its spaces and order of keys. Treats what it is given as unchangeable. */
export function journalText(project: object): string {
  const written = Object.entries(project).filter(([, value]) => value !== undefined);
  return `{${written.map(([key, value]) => `${JSON.stringify(key)}:${partText(key, value)}`).join(',')}}`;
}
