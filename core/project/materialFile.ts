/** A single material as a file of its own, for exchange between projects. */

import { fail, type Issue, ok, type Result } from '../result.ts';
import { isObject } from './looseView.ts';
import type { Material } from './materialSchema.ts';
import { checkStoredMaterial, parseJson } from './parse.ts';
import { shortValue } from './schemaIssues.ts';
import { serializeMaterial } from './serialize.ts';

/** What a material file says it is. */
export const materialFormat = 'augerwright-material';
/** Version that this program writes; older ones are read. */
const materialVersion = 1;

const wrong = (path: readonly string[], code: string, words: Omit<Issue, 'path' | 'code'>): Result<never> =>
  fail({ path, code, ...words });

/** The stored value as an issue shows it. */
const shown = (value: unknown): { readonly value?: string } => {
  const text = shortValue(value);
  return text === undefined ? {} : { value: text };
};

/** The material inside a file: under `material` where the file has a header, else the whole document. */
function bodyOf(document: unknown): Result<{ readonly body: unknown; readonly path: readonly string[] }> {
  if (!isObject(document) || !Object.hasOwn(document, 'format')) return ok({ body: document, path: [] });
  const { format, version } = document;
  if (format !== materialFormat) {
    return wrong(['format'], 'not-a-material', {
      message: 'This file does not say that it is a material.',
      ...shown(format),
      allowed: `"format": "${materialFormat}"`,
      remedy: 'Choose a material file; a project is opened, not imported.',
    });
  }
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return wrong(['version'], 'bad-version', {
      message: 'The version of the file is no whole number from 1 up.',
      ...shown(version),
      allowed: `a whole number from 1 to ${materialVersion}`,
      remedy: 'State the version the file was written with.',
    });
  }
  if (version > materialVersion) {
    return wrong(['version'], 'newer-version', {
      message: 'The file was written by a newer version of this program.',
      value: String(version),
      allowed: `1 to ${materialVersion}`,
      remedy: 'Import it with the newer program.',
    });
  }
  return ok({ body: document.material, path: ['material'] });
}

/**
 * Reads the text of a material file: one with a header, or a bare material as the library keeps it.
 * @param text file content, at most 16.8 million characters, nested at most 64 deep
 * @returns the material, unknown fields kept, or every issue found: syntax faults by line and column, else path, value,
 *   allowed range, remedy. Physical sense is checked by `designMaterial`, so that a doubtful material can be imported
 *   and mended
 */
export function parseMaterialText(text: string): Result<Material> {
  const data = parseJson(text);
  if (!data.ok) return data;
  const found = bodyOf(data.value);
  if (!found.ok) return found;
  return checkStoredMaterial(found.value.body, found.value.path);
}

/**
 * The text of a material file with its header: the same material always gives the same bytes.
 * @param material a valid material
 */
export function materialFileText(material: Material): string {
  const body = serializeMaterial(material).trimEnd().replaceAll('\n', '\n  ');
  return `{\n  "format": "${materialFormat}",\n  "version": ${materialVersion},\n  "material": ${body}\n}\n`;
}
