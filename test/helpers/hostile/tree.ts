/** JSON as a tree of raw texts, so that what no JSON library would write can be written: doubled keys, 1e999, NaN. */

/** A value: raw text of a leaf, a list, or an object as entries with raw keys, quotes included. */
export type Tree =
  | string
  | { readonly list: readonly Tree[] }
  | { readonly entries: readonly (readonly [string, Tree])[] };

/** Keys and indexes from the root; keys unquoted. */
export type Place = readonly (string | number)[];

/** Tree of a plain value. */
export function treeOf(value: unknown): Tree {
  if (Array.isArray(value)) return { list: value.map(treeOf) };
  if (typeof value !== 'object' || value === null) return JSON.stringify(value) ?? 'null';
  return { entries: Object.entries(value).map(([key, item]) => [JSON.stringify(key), treeOf(item)] as const) };
}

/** Text of a tree. */
export function textOf(tree: Tree): string {
  if (typeof tree === 'string') return tree;
  if ('list' in tree) return `[${tree.list.map(textOf).join(',')}]`;
  return `{${tree.entries.map(([key, item]) => `${key}:${textOf(item)}`).join(',')}}`;
}

/** Children with their keys, as they are counted in places. */
function childrenOf(tree: Tree): readonly (readonly [string | number, Tree])[] {
  if (typeof tree === 'string') return [];
  return 'list' in tree
    ? tree.list.map((item, i) => [i, item] as const)
    : tree.entries.map(([key, item]) => [keyOf(key), item] as const);
}

const keyOf = (raw: string): string => {
  try {
    return String(JSON.parse(raw));
  } catch {
    return raw;
  }
};

/** Places of all values below and including the root, the root first; at most `most`. */
export function placesOf(tree: Tree, most = 20_000): readonly Place[] {
  const found: Place[] = [[]];
  const visit = (node: Tree, path: Place): void => {
    for (const [key, item] of childrenOf(node)) {
      if (found.length >= most) return;
      const place = [...path, key];
      found.push(place);
      visit(item, place);
    }
  };
  visit(tree, []);
  return found;
}

/** The value at a place, or null where the path breaks off. */
export function treeAt(tree: Tree, place: Place): Tree | null {
  let node: Tree | undefined = tree;
  for (const key of place) node = node && childrenOf(node).find(([each]) => each === key)?.[1];
  return node ?? null;
}

/** What an edit makes of one child: what stands in its place. */
export type Edit = (raw: string, item: Tree) => readonly (readonly [string, Tree])[];

/**
 * A tree with the child at a place replaced by none, one or several; the root can only be replaced by one.
 * @param edit gets the raw key ('' in lists) and the value
 */
export function edited(tree: Tree, place: Place, edit: Edit): Tree {
  const [key, ...rest] = place;
  if (key === undefined) return edit('', tree)[0]?.[1] ?? tree;
  if (typeof tree === 'string') return tree;
  const change = (raw: string, item: Tree) =>
    rest.length === 0 ? edit(raw, item) : [[raw, edited(item, rest, edit)] as const];
  if ('list' in tree)
    return { list: tree.list.flatMap((item, i) => (i === key ? change('', item).map((e) => e[1]) : [item])) };
  return { entries: tree.entries.flatMap((e) => (keyOf(e[0]) === key ? change(e[0], e[1]) : [e])) };
}
