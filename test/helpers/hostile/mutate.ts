/** Small changes for the worse to a JSON tree or to any text, each told by three whole numbers. */

import { type Edit, edited, type Place, placesOf, type Tree, textOf, treeAt } from './tree.ts';
import { dearValues, hostileKeys, hostilePieces, hostileValues } from './values.ts';

/** Kind of the change, where, and what; any whole numbers from 0 up. */
export type Step = readonly [kind: number, where: number, what: number];

/** How a case is made: a base and what is done to it. */
export interface Recipe {
  readonly pick: number;
  readonly steps: readonly Step[];
}

/** The entry of a list that a number points at. */
export const pickOf = <T>(list: readonly T[], number: number): T => {
  if (list.length === 0) throw new Error('nothing to pick from');
  return list[number % list.length] as T;
};

/** A value of the list, or once in some hundred times one of a megabyte. */
export const hostileValue = (what: number): string =>
  what % 256 === 255 ? pickOf(dearValues, what >>> 8)() : pickOf(hostileValues, what);

const one =
  (edit: (item: Tree) => Tree): Edit =>
  (raw, item) => [[raw, edit(item)]];

const times = (what: number): number => pickOf([2, 2, 3, 31, 41, 61, 201, 1001, 5001], what);

/** The digits of a number longer, its exponent larger, or another sign. */
function stretched(leaf: string, what: number): string {
  if (!/^-?\d/.test(leaf)) return hostileValue(what);
  const turns = [
    `${leaf}0`,
    `${leaf}e3`,
    `${leaf}e-3`,
    `-${leaf}`,
    `${leaf}e300`,
    `1${leaf}`,
    `${leaf}${'1'.repeat(40)}`,
  ];
  return pickOf(turns, what);
}

function longer(leaf: string, what: number): string {
  if (!leaf.startsWith('"')) return stretched(leaf, what);
  const inner = leaf.slice(1, -1) || 'x';
  const count = Math.min(pickOf([2, 10, 130, 700, 5000], what), Math.ceil(2e6 / inner.length));
  return `"${inner.repeat(count)}"`;
}

const wrapped = (item: Tree, what: number): Tree => {
  const depth = pickOf([1, 2, 10, 60, 63, 64, 65, 100, 1000], what);
  let tree = item;
  for (let i = 0; i < depth; i++) tree = what & 16 ? { list: [tree] } : { entries: [['"a"', tree]] };
  return tree;
};

/** Changes of a tree; `other` is spliced in. */
type Change = (tree: Tree, place: Place, what: number, other: Tree) => Tree;

const changes: readonly Change[] = [
  (tree, place, what) =>
    edited(
      tree,
      place,
      one(() => hostileValue(what)),
    ),
  (tree, place, what) =>
    edited(
      tree,
      place,
      one((item) => (typeof item === 'string' ? stretched(item, what) : item)),
    ),
  (tree, place, what) =>
    edited(
      tree,
      place,
      one((item) => (typeof item === 'string' ? longer(item, what) : item)),
    ),
  (tree, place, what) => edited(tree, place, (raw, item) => [[raw === '' ? '' : pickOf(hostileKeys, what), item]]),
  (tree, place, what) =>
    edited(tree, place, (raw, item) => [
      [raw, item],
      [raw === '' ? '' : pickOf(hostileKeys, what), hostileValue(what >>> 5)],
    ]),
  (tree, place, what) =>
    edited(
      tree,
      place,
      one((item) =>
        typeof item === 'string' || 'list' in item
          ? item
          : { entries: [...item.entries, [pickOf(hostileKeys, what), hostileValue(what >>> 5)]] },
      ),
    ),
  (tree, place) =>
    edited(tree, place, (raw, item) => [
      [raw, item],
      [raw, item],
    ]),
  (tree, place) => edited(tree, place, () => []),
  (tree, place, what) =>
    edited(
      tree,
      place,
      one((item) => wrapped(item, what)),
    ),
  (tree, place, what, other) =>
    edited(
      tree,
      place,
      one(() => treeAt(other, pickOf(placesOf(other), what)) ?? 'null'),
    ),
  (tree, place, what) =>
    edited(
      tree,
      place,
      one(() => treeAt(tree, pickOf(placesOf(tree), what)) ?? 'null'),
    ),
  (tree, place, what) =>
    edited(
      tree,
      place,
      one((item) => (typeof item !== 'string' && 'list' in item ? repeated(item.list, what) : item)),
    ),
];

/** A list said many times, never more than some megabytes. */
function repeated(list: readonly Tree[], what: number): Tree {
  const size = textOf({ list }).length;
  const count = Math.min(times(what), Math.ceil(3e6 / (size + 1)));
  return { list: Array.from({ length: count }, () => list).flat() };
}

/** A JSON tree after the steps whose kind is meant for trees. */
export function mutatedTree(tree: Tree, steps: readonly Step[], other: Tree): Tree {
  return steps.reduce(
    (now, [kind, where, what]) => pickOf(changes, kind)(now, pickOf(placesOf(now), where), what, other),
    tree,
  );
}

type TextChange = (text: string, at: number, what: number, other: string) => string;

const textChanges: readonly TextChange[] = [
  (text, at) => text.slice(0, at),
  (text, at) => text.slice(at),
  (text, at, what) => text.slice(0, at) + pickOf(hostilePieces, what) + text.slice(at),
  (text, at, what) =>
    text.slice(0, at) + String.fromCharCode(text.charCodeAt(at) ^ (1 << (what % 16))) + text.slice(at + 1),
  (text, at, what) => text.slice(0, at) + text.slice(at + (what % 40) + 1),
  (text, at, what) =>
    text.slice(0, at) + text.slice(at, at + (what % 400)).repeat(pickOf([2, 3, 50], what)) + text.slice(at),
  (text, at, what, other) => text.slice(0, at) + other.slice(what % (other.length + 1)),
  (text, _, what) => text.replaceAll('\n', pickOf(['\r\n', '\r', '\n\n', '\u2028', ''], what)),
  (text) => `\uFEFF${text}`,
  (text) => text.replace(/[ -~]/g, '$&\0'),
  (text, at, what) => text.slice(0, at) + hostileValue(what) + text.slice(at),
];

/** A text after all steps. */
export function mutatedText(text: string, steps: readonly Step[], other = ''): string {
  return steps.reduce((now, [kind, where, what]) => {
    const at = now.length === 0 ? 0 : where % (now.length + 1);
    return pickOf(textChanges, kind)(now, at, what, other).slice(0, 4_000_000);
  }, text);
}
