/** Reads what the source files import, types included. */

import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** One import or re-export. */
export interface Import {
  /** Importing file, from the project's folder. */
  readonly file: string;
  /** Imported file from the project's folder, or the package's name. */
  readonly target: string;
  readonly isPackage: boolean;
  /** True when nothing of it is left after the types are taken off. */
  readonly typeOnly: boolean;
  /** Names taken as values; `*` for a whole module. */
  readonly names: readonly string[];
}

const statement = /\b(import|export)\s+(type\s+)?([^'";]*?)\s*from\s*['"]([^'"]+)['"]/g;
const bare = /\bimport\s*(?:\(\s*)?['"]([^'"]+)['"]/g;
const workerUrl = /new URL\(\s*['"](\.[^'"]+\.tsx?)['"]/g;

/** Paths of a folder's TypeScript files, from the project's folder. */
export const sourceFiles = (folder: string): readonly string[] =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.tsx?$/.test(name))
    .map((name) => join(folder, name))
    .sort();

/** Every import of a folder's files. */
export const importsOf = (folder: string): readonly Import[] =>
  sourceFiles(folder).flatMap((file) => readImports(file, readFileSync(file, 'utf8')));

/** The imports in a file's text. */
export function readImports(file: string, text: string): readonly Import[] {
  const found: Import[] = [];
  for (const [, , typeWord, clause, from] of text.matchAll(statement)) {
    const names = typeWord ? [] : valueNames(clause);
    found.push({ file, ...targetOf(file, from), typeOnly: names.length === 0, names });
  }
  for (const [, from] of [...text.matchAll(bare), ...text.matchAll(workerUrl)]) {
    found.push({ file, ...targetOf(file, from), typeOnly: false, names: ['*'] });
  }
  return found;
}

function valueNames(clause: string): readonly string[] {
  const braces = /\{([^}]*)\}/.exec(clause);
  const outside = clause
    .replace(/\{[^}]*\}/, '')
    .replaceAll(',', ' ')
    .trim();
  const inside = (braces?.[1] ?? '')
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '' && !name.startsWith('type '))
    .map((name) => name.split(/\s+as\s+/)[0]);
  return outside === '' ? inside : ['*', ...inside];
}

function targetOf(file: string, from: string): { target: string; isPackage: boolean } {
  if (from.startsWith('.')) return { target: join(dirname(file), from), isPackage: false };
  const parts = from.split('/');
  return { target: from.startsWith('@') ? parts.slice(0, 2).join('/') : parts[0], isPackage: true };
}
