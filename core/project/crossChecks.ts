/** What a schema cannot say: names that must be unique, names that must exist, ranges that must be in order. */

import type { Issue } from '../result.ts';
import { entriesOf, mostIssues } from './excess.ts';
import { asList, asNumber, asObject, asText, isObject } from './looseView.ts';
import { zoneIssues } from './zoneChecks.ts';

type Path = readonly (string | number)[];

const textsOf = (list: unknown, key: string): readonly (string | undefined)[] =>
  asList(list).map((item) => asText(asObject(item)[key]));

/** Ids of a list; null where one cannot be read, so that nothing can be said about names that are not among them. */
function idsOf(list: unknown): readonly string[] | null {
  const ids = Array.isArray(list) ? textsOf(list, 'id') : [undefined];
  return ids.every((id) => id !== undefined) ? ids : null;
}

/** As idsOf for a list that may not be empty: where it is, that is the fault. */
function idsOfSome(list: unknown): readonly string[] | null {
  const ids = idsOf(list);
  return ids !== null && ids.length > 0 ? ids : null;
}

/** An id as shown: an empty one would leave a hole in the sentence, one of a megabyte would be no sentence. */
const shownId = (id: string): string => (id === '' ? '""' : id.length > 60 ? `${id.slice(0, 57)}…` : id);

/** The first ids of a long list. */
const someOf = (ids: readonly string[]): string =>
  ids.slice(0, 20).map(shownId).join(', ') + (ids.length > 20 ? ', …' : '');

function duplicateIssues(list: unknown, listName: string, what: string): readonly Issue[] {
  const seen = new Set<string>();
  return textsOf(list, 'id').flatMap((id, index): readonly Issue[] => {
    if (id === undefined || !seen.has(id)) {
      if (id !== undefined) seen.add(id);
      return [];
    }
    return [
      {
        path: [listName, index, 'id'],
        code: 'duplicate-id',
        message: `Another ${what} has the same id.`,
        value: shownId(id),
        allowed: `an id that no other ${what} has; taken: ${someOf([...seen])}`,
        remedy: 'Choose another id.',
      },
    ];
  });
}

/** One issue where a name is given but stands for nothing; none where the known names cannot be read. */
function missingTarget(name: unknown, known: readonly string[] | null, what: string, path: Path): readonly Issue[] {
  const text = asText(name);
  if (text === undefined || known === null || known.includes(text)) return [];
  return [
    {
      path,
      code: 'unknown-id',
      message: `No ${what} has this id.`,
      value: shownId(text),
      allowed: known.length > 0 ? `one of: ${someOf(known)}` : `none, as there is no ${what}`,
      remedy: `Name a ${what} of this file.`,
    },
  ];
}

/** Revisions that descend from themselves could never be shown as a tree. */
function circleIssues(revisions: unknown): readonly Issue[] {
  // Reversed, so that of two revisions with one id the first counts.
  const pairs = asList(revisions).map((r) => [asText(asObject(r).id), asText(asObject(r).parent)] as const);
  const parents = new Map([...pairs].reverse());
  return textsOf(revisions, 'id').flatMap((id, index): readonly Issue[] => {
    let ancestor = parents.get(id);
    for (let step = 0; step < parents.size && ancestor !== undefined && ancestor !== id; step++) {
      ancestor = parents.get(ancestor);
    }
    if (id === undefined || ancestor !== id) return [];
    const path = ['revisions', index, 'parent'];
    const message = `Revision "${shownId(id)}" descends from itself.`;
    return [
      {
        path,
        code: 'circular-parent',
        message,
        value: shownId(asText(parents.get(id)) ?? ''),
        allowed: 'a revision that does not descend from this one, or null',
        remedy: 'Choose another parent, or null.',
      },
    ];
  });
}

function referenceIssues(project: Readonly<Record<string, unknown>>): readonly Issue[] {
  const revisions = idsOfSome(project.revisions);
  const materials = idsOfSome(project.materials);
  const trials = asList(project.benchLog).map(asObject);
  return [
    ...missingTarget(project.activeRevision, revisions, 'revision', ['activeRevision']),
    ...asList(project.revisions).flatMap((item, i) => {
      const revision = asObject(item);
      return [
        ...missingTarget(revision.parent, revisions, 'revision', ['revisions', i, 'parent']),
        ...missingTarget(revision.materialId, materials, 'material', ['revisions', i, 'materialId']),
      ];
    }),
    ...trials.flatMap((trial, i) => [
      ...missingTarget(trial.revisionId, revisions, 'revision', ['benchLog', i, 'revisionId']),
      ...missingTarget(trial.materialId, materials, 'material', ['benchLog', i, 'materialId']),
    ]),
  ];
}

/** Every sourced value in a material keeps low <= value <= high. */
export function rangeIssues(node: unknown, path: Path): readonly Issue[] {
  const found: Issue[] = [];
  gatherRanges(node, [...path], found);
  return found;
}

/** As rangeIssues, into a list that ends one past what is told: fields unknown to the format may hold any number. */
function gatherRanges(node: unknown, path: (string | number)[], found: Issue[]): void {
  for (const [key, item] of entriesOf(node)) {
    if (typeof item !== 'object' || item === null) continue;
    path.push(key);
    gatherRanges(item, path, found);
    path.pop();
  }
  if (!isObject(node) || found.length > mostIssues) return;
  const [value, low, high] = [asNumber(node.value), asNumber(node.low), asNumber(node.high)];
  const order = (key: 'low' | 'high', allowed: string): Issue => ({
    path: [...path, key],
    code: 'range-order',
    message: 'The doubt range must enclose the value.',
    value: String(node[key]),
    allowed,
    remedy: 'Put low, value and high in order.',
  });
  if (low > value) found.push(order('low', `at most ${value}`));
  if (high < value) found.push(order('high', `at least ${value}`));
}

/** A colour law that is named exists, and anchors come with rising extents. */
export function colourIssues(material: unknown, path: Path): readonly Issue[] {
  const m = asObject(material);
  const laws = idsOf(m.degradation);
  const extents = asList(m.colourAnchors).map((anchor) => asNumber(asObject(anchor).extent));
  const falling = extents.findIndex((extent, i) => i > 0 && extent <= (extents[i - 1] ?? Number.NaN));
  const issues = [...missingTarget(m.colourLaw, laws, 'degradation law', [...path, 'colourLaw'])];
  if (falling > 0) {
    issues.push({
      path: [...path, 'colourAnchors', falling, 'extent'],
      code: 'extent-order',
      message: 'Extents of colour anchors must rise.',
      value: String(extents[falling]),
      allowed: `more than ${extents[falling - 1]}`,
      remedy: 'Sort the anchors by extent and give each its own.',
    });
  }
  return issues;
}

/**
 * Checks between the fields of a project whose shape may still be wrong; faults of shape are left to the schema.
 * @param document parsed JSON of a project file
 * @returns one issue per fault
 */
export function crossIssues(document: unknown): readonly Issue[] {
  const project = asObject(document);
  const materials = asList(project.materials);
  return [
    ...duplicateIssues(project.revisions, 'revisions', 'revision'),
    ...duplicateIssues(project.materials, 'materials', 'material'),
    ...duplicateIssues(project.benchLog, 'benchLog', 'trial'),
    ...referenceIssues(project),
    ...circleIssues(project.revisions),
    ...asList(project.revisions).flatMap((r, i) => zoneIssues(asObject(r).barrel, ['revisions', i, 'barrel'])),
    ...materials.flatMap((m, i) => rangeIssues(m, ['materials', i])),
    ...materials.flatMap((m, i) => colourIssues(m, ['materials', i])),
  ];
}
