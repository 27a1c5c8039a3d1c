/** The program's own sources as a cheap scan sees them: what each file exports, what it takes from which other. */

import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';

/** A name that leaves its file. */
export interface Exported {
  readonly name: string;
  readonly isType: boolean;
  /** place of the declaration in the text */
  readonly at: number;
}

/** One file. */
export interface SourceText {
  readonly file: string;
  /** as it stands */
  readonly text: string;
  /** without comments */
  readonly code: string;
  readonly exports: readonly Exported[];
  /** names taken from other files of the project; `*` where all may be taken */
  readonly taken: readonly { readonly from: string; readonly name: string }[];
  /** names handed on from other files: own name, file, name there; `*` for all */
  readonly handedOn: readonly { readonly name: string; readonly from: string; readonly there: string }[];
}

/** Paths of all files of the folders with one of the endings, from the project's folder. */
export const filesOf = (folders: readonly string[], ending: RegExp): string[] =>
  folders.flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => ending.test(name) && !name.startsWith('.out'))
      .map((name) => join(folder, name))
      .sort(),
  );

/** A text without its comments; what looks like one in a string may go as well. */
export const withoutComments = (text: string): string => text.replace(/\/\*[\s\S]*?\*\/|(?<![:'"`\\])\/\/.*/g, '');

const declared = /^export (?:declare |async |abstract )*(const|let|function\*?|class|interface|type|enum) (\w+)/gm;
const fromOther = /^(import|export)\s+(?:type\s+)?([^'";]*?)\s*from\s*['"](\.[^'"]+)['"]/gm;
const lazily = /(?:\bimport\(\s*|new URL\(\s*|^import )['"](\.[^'"?]+)['"]/gm;

const namesIn = (clause: string): (readonly [name: string, as: string])[] => {
  const braces = /\{([^}]*)\}/.exec(clause)?.[1];
  if (braces === undefined || !/^[\s]*\{/.test(clause)) return [['*', '*'], ...(braces ? namesIn(`{${braces}}`) : [])];
  return braces
    .split(',')
    .map((part) => part.trim().replace(/^type\s+/, ''))
    .filter((part) => part !== '')
    .map((part) => part.split(/\s+as\s+/))
    .map(([name, as = name]) => [name, as] as const);
};

/** Reads one file. */
export function readSource(file: string): SourceText {
  const text = readFileSync(file, 'utf8');
  let code: string | undefined;
  const to = (path: string) => join(dirname(file), path.replace(/\?.*/, ''));
  const taken: { from: string; name: string }[] = [];
  const handedOn: { name: string; from: string; there: string }[] = [];
  for (const [, word, clause, path] of text.matchAll(fromOther)) {
    for (const [name, as] of namesIn(clause)) {
      if (word === 'import') taken.push({ from: to(path), name });
      else handedOn.push({ name: as, from: to(path), there: name });
    }
  }
  for (const [, path] of text.matchAll(lazily)) taken.push({ from: to(path), name: '*' });
  const exports = [...text.matchAll(declared)].map((found) => ({
    name: found[2],
    isType: found[1] === 'interface' || found[1] === 'type',
    at: found.index,
  }));
  return {
    ...{ file, text, exports, taken, handedOn },
    // few are asked for it
    get code() {
      code ??= withoutComments(text);
      return code;
    },
  };
}

/** Where a name that a file is asked for is declared, and every file that hands it on. */
export function wayOf(
  files: ReadonlyMap<string, SourceText>,
  file: string,
  name: string,
): readonly (readonly [string, string])[] {
  const source = files.get(file);
  if (!source) return [];
  if (source.exports.some((one) => one.name === name)) return [[file, name]];
  const named = source.handedOn.find((one) => one.name === name);
  if (named) return [[file, name], ...wayOf(files, named.from, named.there)];
  for (const { from, there } of source.handedOn) {
    const way = there === '*' ? wayOf(files, from, name) : [];
    if (way.length > 0) return way;
  }
  return [];
}
