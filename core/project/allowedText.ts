/** What a place in a file may hold, in words with units. */

import { fieldUnit } from './fieldUnit.ts';
import { childNode, type SchemaNode } from './jsonSchema.ts';

/** A number as a person writes it. */
const plain = (value: number): string => String(value);

/** Zod marks whole numbers by the limits of safe integers; those are no limits for a maker. */
const isReal = (limit: number | undefined): limit is number =>
  limit !== undefined && Math.abs(limit) < Number.MAX_SAFE_INTEGER;

function rangeText(node: SchemaNode, unit: string): string {
  const kind = node.type === 'integer' ? 'a whole number' : 'a number';
  const tail = unit ? ` ${unit}` : '';
  if (isReal(node.minimum) && isReal(node.maximum)) {
    return `${kind} from ${plain(node.minimum)} to ${plain(node.maximum)}${tail}`;
  }
  if (isReal(node.minimum)) return `${kind} of at least ${plain(node.minimum)}${tail}`;
  if (isReal(node.maximum)) return `${kind} of at most ${plain(node.maximum)}${tail}`;
  return tail ? `${kind} in${tail}` : kind;
}

function countText(noun: string, unit: readonly [one: string, more: string], least?: number, most?: number): string {
  const counted = (count: number) => `${count} ${count === 1 ? unit[0] : unit[1]}`;
  if (least !== undefined && least === most) return `${noun}, exactly ${counted(least)}`;
  const parts = [
    least === undefined ? '' : `at least ${counted(least)}`,
    most === undefined ? '' : `at most ${counted(most)}`,
  ];
  return [noun, ...parts.filter(Boolean)].join(', ');
}

/** Constants that tell the variants of a union apart. */
function choicesText(options: readonly SchemaNode[]): string {
  const choices = options.flatMap((option) => {
    if (option.oneOf ?? option.anyOf) return [choicesText(option.oneOf ?? option.anyOf ?? [])];
    const marks = Object.entries(option.properties ?? {}).filter(([, p]) => p.const !== undefined);
    return marks.map(([key, p]) => `${key} ${JSON.stringify(p.const)}`).concat(option.type === 'null' ? ['null'] : []);
  });
  return choices.length > 0 ? `one of: ${choices.join(', ')}` : options.map((o) => describeNode(o, '')).join(' or ');
}

/**
 * Words for a schema node.
 * @param node node of the JSON Schema
 * @param unit display symbol of the field, '' for none
 */
function describeNode(node: SchemaNode, unit: string): string {
  if (node.const !== undefined) return JSON.stringify(node.const);
  if (node.enum) return `one of: ${node.enum.map((item) => JSON.stringify(item)).join(', ')}`;
  const options = node.oneOf ?? node.anyOf;
  if (options) return choicesText(options);
  if (node.type === 'number' || node.type === 'integer') return rangeText(node, unit);
  if (node.type === 'string') return countText('a text', ['character', 'characters'], node.minLength, node.maxLength);
  if (node.type === 'array') {
    return countText('a list', ['entry', 'entries'], node.minItems ?? node.prefixItems?.length, node.maxItems);
  }
  if (node.type === 'boolean') return 'true or false';
  return node.type === 'object' ? 'an object with its fields' : 'a value of the file format';
}

/**
 * What the place a path leads to may hold.
 * @param root schema of the whole document
 * @param document the document, used to tell variants apart
 * @param path keys and indexes from the root
 * @returns words with units, or undefined where the format does not know the place
 */
export function allowedAt(root: SchemaNode, document: unknown, path: readonly (string | number)[]): string | undefined {
  let node: SchemaNode | undefined = root;
  let value: unknown = document;
  let parent: SchemaNode = root;
  for (const key of path) {
    if (!node) return undefined;
    parent = node;
    node = childNode(node, value, key);
    value = valueAt(value, [key]);
  }
  // Where the mark that tells variants apart is itself wrong, the choice above it is what helps.
  const helpful = node ?? (parent.oneOf || parent.anyOf ? parent : undefined);
  return helpful && describeNode(helpful, fieldUnit(path));
}

/** Value a path leads to, or undefined where the path breaks off. */
export function valueAt(document: unknown, path: readonly (string | number)[]): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null && Object.hasOwn(value, key)
        ? (value as Record<string | number, unknown>)[key]
        : undefined,
    document,
  );
}
