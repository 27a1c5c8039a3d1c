/** The project format as JSON Schema: published for other programs, and walked here to find ranges and key order. */

import { z } from 'zod';
import { projectFormat, projectSchema, projectVersion } from './schema.ts';

/** The parts of a JSON Schema node that this program reads. */
export interface SchemaNode {
  readonly type?: string;
  readonly properties?: Readonly<Record<string, SchemaNode>>;
  readonly items?: SchemaNode;
  readonly required?: readonly string[];
  readonly prefixItems?: readonly SchemaNode[];
  readonly anyOf?: readonly SchemaNode[];
  readonly oneOf?: readonly SchemaNode[];
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minLength?: number;
  readonly maxLength?: number;
  readonly minItems?: number;
  readonly maxItems?: number;
}

const cache = new Map<z.ZodType, SchemaNode>();

/** JSON Schema (draft 2020-12) of any schema of the file format; generated once. */
export function schemaNode(schema: z.ZodType): SchemaNode {
  const known = cache.get(schema);
  if (known) return known;
  const made = z.toJSONSchema(schema) as SchemaNode;
  cache.set(schema, made);
  return made;
}

/**
 * JSON Schema (draft 2020-12) of the project file, as published in assets/project.schema.json; for tests, which hold that
 * file to it.
 * @returns a plain JSON object
 */
export function projectJsonSchema(): Record<string, unknown> {
  const { $schema, ...rest } = z.toJSONSchema(projectSchema);
  return {
    $schema,
    $id: `urn:${projectFormat}:${projectVersion}`,
    title: 'Augerwright project',
    description: 'Units stand in the field names. Unknown fields are kept.',
    ...rest,
  };
}

const isRecord = (value: unknown): value is Record<string, unknown> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Whether every constant the variant demands (its `kind` or `model`) stands in the value, or may be left out of it. */
function fitsVariant(node: SchemaNode, value: unknown): boolean {
  if (node.type === 'null') return value === null;
  if (!isRecord(value)) return false;
  const mayLack = (key: string) => !Object.hasOwn(value, key) && !(node.required ?? []).includes(key);
  return Object.entries(node.properties ?? {}).every(
    ([key, p]) => p.const === undefined || p.const === value[key] || mayLack(key),
  );
}

/** The variant of a union that a value belongs to; the node itself where there is no choice. */
export function variantOf(node: SchemaNode, value: unknown): SchemaNode {
  const options = node.oneOf ?? node.anyOf;
  if (!options) return node;
  const objects = options.flatMap((option) => option.oneOf ?? option.anyOf ?? [option]);
  return objects.find((option) => fitsVariant(option, value)) ?? node;
}

/** Schema of one key or index of a value, or undefined where the format does not know it. */
export function childNode(node: SchemaNode, value: unknown, key: string | number): SchemaNode | undefined {
  const variant = variantOf(node, value);
  if (typeof key === 'number') return variant.prefixItems?.[key] ?? variant.items;
  return Object.hasOwn(variant.properties ?? {}, key) ? variant.properties?.[key] : undefined;
}
