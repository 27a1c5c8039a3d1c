/** What the about box tells of the program. */

import { readFile } from 'node:fs/promises';
import type { AboutProgram } from '../../safekeeping.ts';

/** Where that is read. */
export interface AboutPlaces {
  /** The program's package.json. */
  readonly packagePath: string;
  /** Licence notices of everything that ships along, made by the build: one file for each bundle. */
  readonly noticesPaths: readonly string[];
  /** Folder of the log; null where none is written. */
  readonly logFolder: string | null;
}

const named: readonly (readonly [key: string, name: string])[] = [
  ['electron', 'Electron'],
  ['chrome', 'Chromium'],
  ['node', 'Node'],
  ['v8', 'V8'],
];

const missing = 'The list of licence notices is missing from this build.';

/** Versions of the program and of what it runs on, with the notices. */
export async function readAbout(places: AboutPlaces | null): Promise<AboutProgram> {
  const text = (path: string) => readFile(path, 'utf8').catch(() => null);
  const { version, license } = facts(places ? await text(places.packagePath) : null);
  const notices = await Promise.all((places?.noticesPaths ?? []).map(text));
  return {
    version,
    runtime: named.flatMap(([key, name]) => {
      const found = process.versions[key];
      return found ? [{ name, version: found }] : [];
    }),
    licence: license,
    notices: notices.filter((notice) => notice !== null).join('\n\n') || missing,
    logFolder: places?.logFolder ?? null,
  };
}

function facts(packageText: string | null): { readonly version: string; readonly license: string } {
  try {
    const { version, license } = JSON.parse(packageText ?? '') as { version?: unknown; license?: unknown };
    if (typeof version === 'string' && typeof license === 'string') return { version, license };
  } catch {
    // told below
  }
  return { version: 'unknown', license: 'unknown' };
}
