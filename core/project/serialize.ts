/** A project as text: the same data always give the same bytes. */

import { childNode, type SchemaNode, schemaNode, variantOf } from './jsonSchema.ts';
import { isObject } from './looseView.ts';
import { type Material, materialSchema } from './materialSchema.ts';
import { type Project, projectSchema } from './schema.ts';

/** Keys in the schema's order, then unknown ones by name. */
function orderedKeys(value: object, node: SchemaNode | undefined): readonly string[] {
  const known = Object.keys((node && variantOf(node, value).properties) ?? {});
  const unknown = Object.keys(value).filter((key) => !known.includes(key));
  return [...known.filter((key) => Object.hasOwn(value, key)), ...unknown.sort()];
}

function ordered(value: unknown, node: SchemaNode | undefined): unknown {
  if (Array.isArray(value)) return value.map((item, i) => ordered(item, node && childNode(node, value, i)));
  if (!isObject(value)) return value;
  const keys = orderedKeys(value, node);
  return Object.fromEntries(keys.map((key) => [key, ordered(value[key], node && childNode(node, value, key))]));
}

const text = (value: unknown, node: SchemaNode): string => `${JSON.stringify(ordered(value, node), null, 2)}\n`;

/**
 * The text of a project file: keys in the schema's order, unknown ones after them by name, two spaces, newline at the end.
 * @param project a valid project
 */
export const serializeProject = (project: Project): string => text(project, schemaNode(projectSchema));

/**
 * The text of a material file of the library, in the same manner.
 * @param material a valid material
 */
export const serializeMaterial = (material: Material): string => text(material, schemaNode(materialSchema));
