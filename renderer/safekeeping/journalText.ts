/** A project as JSON text, quickly: parts that an edit did not touch are the same objects, and keep their text. */

const texts = new WeakMap<object, string>();

/** How far down the parts are told apart: project, list of revisions, revision, its screw. */
const depth = 3;

function written(value: unknown, below: number): string {
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  if (below === 0) {
    const known = texts.get(value);
    if (known !== undefined) return known;
    const fresh = JSON.stringify(value);
    texts.set(value, fresh);
    return fresh;
  }
  if (Array.isArray(value)) return `[${value.map((item) => written(item, below - 1)).join(',')}]`;
  const entries = Object.entries(value).filter(([, child]) => child !== undefined);
  return `{${entries.map(([key, child]) => `${JSON.stringify(key)}:${written(child, below - 1)}`).join(',')}}`;
}

/** The same data as the project's file, without its spaces and order of keys. Treats what it is given as unchangeable. */
export const journalText = (project: object): string => written(project, depth);
