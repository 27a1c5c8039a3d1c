/** Least and greatest number that a place of a project may hold, read off the file's schema. */

import { childNode, type SchemaNode, schemaNode, variantOf } from './jsonSchema.ts';
import { projectSchema } from './schema.ts';

/** Limits in the stored unit; null where the format sets none. */
export interface FieldRange {
  readonly least: number | null;
  readonly most: number | null;
  /** only whole numbers are allowed */
  readonly whole: boolean;
}

/** Zod marks whole numbers by the limits of safe integers; those are no limits for a maker. */
const real = (limit: number | undefined): number | null =>
  limit === undefined || Math.abs(limit) >= Number.MAX_SAFE_INTEGER ? null : limit;

/**
 * What the file format allows at a place; checks between fields may allow less.
 * @param document the project, used to tell variants apart
 * @param path keys and indexes from the root
 * @returns null where no number stands at that place of the format
 */
export function fieldRange(document: unknown, path: readonly (string | number)[]): FieldRange | null {
  let node: SchemaNode | undefined = schemaNode(projectSchema);
  let value: unknown = document;
  for (const key of path) {
    if (!node) return null;
    node = childNode(node, value, key);
    value = typeof value === 'object' && value !== null ? Reflect.get(value, key) : undefined;
  }
  const found = node && variantOf(node, value);
  if (found?.type !== 'number' && found?.type !== 'integer') return null;
  return { least: real(found.minimum), most: real(found.maximum), whole: found.type === 'integer' };
}
