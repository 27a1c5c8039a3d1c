/** Fingerprints of files, and of the data in them. */

import { createHash } from 'node:crypto';
import { findJsonFault } from '../../../core/index.ts';

/** SHA-256 of bytes, or of a text as UTF-8: 64 hex digits. */
export const versionOf = (data: string | Uint8Array): string => createHash('sha256').update(data).digest('hex');

/** No project is nested as deep as this. */
const deepest = 100;

const sorted = (_key: string, value: unknown): unknown => {
  if (typeof value !== 'object' || value === null || Array.isArray(value)) return value;
  return Object.fromEntries(Object.entries(value).sort(([a], [b]) => (a < b ? -1 : 1)));
};

/**
 * Fingerprint of what a JSON text says, whatever its spaces and the order of its keys: 64 hex digits. A window keeps
 * its work in fewer letters than its file has. A text that is no JSON, or nested as no project is, is taken by its letters.
 */
export function contentOf(text: string): string {
  if (findJsonFault(text, deepest) !== null) return versionOf(text);
  try {
    return versionOf(JSON.stringify(JSON.parse(text), sorted));
  } catch {
    return versionOf(text);
  }
}
