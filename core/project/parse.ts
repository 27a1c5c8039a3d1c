/** Text of a project file to a project: never throws, and names every fault at once. */

import { fail, type Issue, ok, type Result } from '../result.ts';
import { withoutConsequences } from './consequences.ts';
import { colourIssues, crossIssues, rangeIssues } from './crossChecks.ts';
import { fewEnough, infinityIssues, withoutExcess } from './excess.ts';
import { findJsonFault, type JsonFault, lineAndColumn } from './jsonScan.ts';
import { schemaNode } from './jsonSchema.ts';
import { asObject, isObject, type JsonObject } from './looseView.ts';
import { type Material, materialSchema } from './materialSchema.ts';
import { migrate } from './migrate.ts';
import { type Project, projectFormat, projectSchema, projectVersion } from './schema.ts';
import { checkSchema, shortValue } from './schemaIssues.ts';

/** Longest text that is read, in UTF-16 units: what the host and the window hand over, 16 MB. */
export const longestProjectText = 16 * 1024 * 1024;
/** Deepest nesting of objects and lists that is read. */
const deepestNesting = 64;

const whole = (code: string, message: string, remedy: string, more: Partial<Issue> = {}): Result<never> =>
  fail({ path: [], code, message, remedy, ...more });

const faultCodes: Readonly<Record<JsonFault['code'], string>> = {
  syntax: 'bad-json',
  'too-deep': 'too-deep',
  'too-much': 'too-much',
  'forbidden-key': 'forbidden-key',
  'duplicate-key': 'duplicate-key',
};

function refuseFault(text: string, fault: JsonFault): Result<never> {
  const { line, column } = lineAndColumn(text, fault.offset);
  const found = text.slice(fault.offset, fault.offset + 20).split(/[\r\n]/)[0] ?? '';
  const message = `${fault.message} Line ${line}, column ${column}.`;
  // a page, a picture or a table taken for a project fails at its very first sign
  const remedy =
    text.slice(0, fault.offset).trim() === ''
      ? 'Choose a file that this program wrote: it begins with {.'
      : 'Mend the text at this place, or restore a saved copy.';
  return whole(faultCodes[fault.code], message, remedy, found === '' ? {} : { value: found });
}

/**
 * JSON text to data, guarded.
 * @param text file content; a byte order mark is forgiven
 * @returns plain data, or one issue with line and column
 */
export function parseJson(text: string): Result<unknown> {
  if (text.length > longestProjectText) {
    const value = `${(text.length / 1e6).toFixed(1)} million characters`;
    return whole('too-large', 'The file is too large to be a project.', 'Choose another file.', {
      value,
      allowed: `at most ${(longestProjectText / 1e6).toFixed(1)} million characters`,
    });
  }
  const body = text.startsWith('\uFEFF') ? text.slice(1) : text;
  // letters of 16 bits read as bytes have a zero beside each
  if (body.slice(0, 4).includes('\0')) {
    const allowed = 'text in UTF-8';
    return whole('not-text', 'The file is not UTF-8 text.', 'Save it as UTF-8, then open it again.', { allowed });
  }
  if (body.trim() === '')
    return whole('bad-json', 'The file is empty.', 'Choose another file, or restore a saved copy.');
  const fault = findJsonFault(body, deepestNesting);
  return fault ? refuseFault(body, fault) : ok(JSON.parse(body));
}

/** The document's own statement of what it is, before its content is looked at. */
function checkHeader(document: unknown): Result<JsonObject> {
  if (!isObject(document) || document.format !== projectFormat) {
    const value = shortValue(isObject(document) ? document.format : document);
    return whole('not-a-project', 'This file does not say that it is a project.', 'Choose a project file.', {
      path: isObject(document) ? ['format'] : [],
      ...(value === undefined ? {} : { value }),
      allowed: `"format": "${projectFormat}"`,
    });
  }
  const { version } = document;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0) {
    const value = shortValue(version);
    const message =
      version === undefined ? 'The file does not state a version.' : 'The version of the file is no whole number.';
    return whole('bad-version', message, 'State the version the file was written with.', {
      path: ['version'],
      ...(value === undefined ? {} : { value }),
      allowed: `a whole number from 0 to ${projectVersion}`,
    });
  }
  if (version > projectVersion) {
    const remedy = 'Open it with the newer program; the file is left untouched.';
    return whole('newer-version', 'The file was written by a newer version of this program.', remedy, {
      path: ['version'],
      value: String(version),
      allowed: `0 to ${projectVersion}`,
    });
  }
  return ok(document);
}

/**
 * Text of a project file as data of today's shape, not yet checked against the schema.
 * @returns the data, or why they are no project this program can read
 */
export function readDocument(text: string): Result<JsonObject> {
  const data = parseJson(text);
  return data.ok ? currentDocument(data.value) : data;
}

function currentDocument(document: unknown): Result<JsonObject> {
  const header = checkHeader(document);
  return header.ok ? ok(asObject(withoutExcess(schemaNode(projectSchema), migrate(header.value)))) : header;
}

/**
 * Checks data that claim to be a project, older versions included.
 * @param document plain JSON data
 * @returns the project in today's shape, unknown fields kept, or every issue found
 */
export function checkProject(document: unknown): Result<Project> {
  const current = currentDocument(document);
  if (!current.ok) return current;
  const shape = checkSchema(projectSchema, current.value);
  const faults = shape.ok ? [] : shape.issues;
  const between = [...crossIssues(current.value), ...(shape.ok ? infinityIssues(current.value) : [])];
  const issues = [...faults, ...withoutConsequences(between, faults)];
  return shape.ok && issues.length === 0 ? shape : { ok: false, issues: fewEnough(issues) };
}

/**
 * Reads the text of a project file.
 * @param text file content, at most 16.8 million characters, nested at most 64 deep
 * @returns the project, or every issue found: syntax faults by line and column, else path, value, allowed range, remedy
 */
export function parseProject(text: string): Result<Project> {
  const data = parseJson(text);
  return data.ok ? checkProject(data.value) : data;
}

/**
 * Checks data that claim to be a material: shape, doubt ranges, colour law, order of the anchors.
 * @param body plain data
 * @param path path of the material in its document
 */
export function checkStoredMaterial(body: unknown, path: readonly (string | number)[]): Result<Material> {
  const few = withoutExcess(schemaNode(materialSchema), body);
  const shape = checkSchema(materialSchema, few, path);
  const faults = shape.ok ? [] : shape.issues;
  const infinite = shape.ok ? infinityIssues(few).map((issue) => ({ ...issue, path: [...path, ...issue.path] })) : [];
  const between = [...rangeIssues(few, path), ...colourIssues(few, path), ...infinite];
  const issues = [...faults, ...withoutConsequences(between, faults)];
  return shape.ok && issues.length === 0 ? shape : { ok: false, issues: fewEnough(issues) };
}

/**
 * Reads the text of a material file of the library.
 * @param text file content
 * @returns the material, or every issue found
 */
export function parseMaterial(text: string): Result<Material> {
  const data = parseJson(text);
  return data.ok ? checkStoredMaterial(data.value, []) : data;
}
