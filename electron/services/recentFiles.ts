/** The files opened or saved last, kept in a small file of the program's own. */

import { mkdir } from 'node:fs/promises';
import { basename, dirname } from 'node:path';
import { z } from 'zod';
import type { RecentFile } from '../contract.ts';
import type { FileTable } from './fileTable.ts';
import { readTextFile, writeTextFile } from './textFile.ts';

const longest = 12;
const stored = z.array(z.string().min(1).max(4096)).max(100);

/** Remembers and lists recent files. */
export interface RecentFiles {
  /** Newest first. Empty when nothing was remembered or the list cannot be read. */
  list(): Promise<readonly RecentFile[]>;
  /** Puts a path first; a list that cannot be written is given up silently, since no work is lost by it. */
  remember(path: string): Promise<void>;
}

/** Recent files kept at `listPath`; null keeps nothing between starts. */
export function createRecentFiles(listPath: string | null, table: FileTable): RecentFiles {
  let paths: readonly string[] | null = null;
  const load = async () => {
    paths ??= listPath === null ? [] : await readPaths(listPath);
    return paths;
  };
  return {
    async list() {
      return (await load()).map((path) => ({ handle: table.admit(path), path, name: basename(path) }));
    },
    async remember(path) {
      paths = [path, ...(await load()).filter((known) => known !== path)].slice(0, longest);
      if (listPath === null) return;
      await mkdir(dirname(listPath), { recursive: true, mode: 0o700 }).catch(() => undefined);
      await writeTextFile(listPath, JSON.stringify(paths, null, 2), 0o600);
    },
  };
}

async function readPaths(listPath: string): Promise<readonly string[]> {
  const text = await readTextFile(listPath);
  if (!text.ok) return [];
  try {
    return stored.parse(JSON.parse(text.value)).slice(0, longest);
  } catch {
    return [];
  }
}
