/** Folders of JSON files that ship with the program, read by bare names only. */

import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { fail, ok, type Result } from '../../core/index.ts';
import type { ImportedText } from '../contract.ts';
import { fileIssue } from './fileIssues.ts';
import { readTextFile } from './textFile.ts';

/** A shipped file by its id: the name without its ending. */
export interface ShippedFile extends ImportedText {
  readonly id: string;
}

/** Ids of a folder's files, sorted. */
async function shippedIds(folder: string): Promise<Result<readonly string[]>> {
  try {
    const ids = (await readdir(folder)).filter((name) => name.endsWith('.json')).map((name) => name.slice(0, -5));
    return ok(ids.sort((a, b) => a.localeCompare(b)));
  } catch (error) {
    return fail(fileIssue(folder, error));
  }
}

/** Reads one file; the id is checked against the folder's own listing. `kind` names what is missing in the issue. */
export async function readShipped(
  folder: string,
  id: string,
  kind: 'example' | 'material',
): Promise<Result<ShippedFile>> {
  const ids = await shippedIds(folder);
  if (!ids.ok) return ids;
  if (!ids.value.includes(id)) return fail(noSuch(kind, id, ids.value));
  const text = await readTextFile(join(folder, `${id}.json`));
  return text.ok ? ok({ id, name: `${id}.json`, text: text.value }) : text;
}

/** Every readable file of a folder; those that cannot be read are left out. */
export async function allShipped(folder: string): Promise<Result<readonly ShippedFile[]>> {
  const ids = await shippedIds(folder);
  if (!ids.ok) return ids;
  const found: ShippedFile[] = [];
  for (const id of ids.value) {
    const text = await readTextFile(join(folder, `${id}.json`));
    if (text.ok) found.push({ id, name: `${id}.json`, text: text.value });
  }
  return ok(found);
}

/** Name and note without a full parse, so that a damaged file is still listed and its issues shown on reading. */
export function titleOf({ id, text }: ShippedFile): { readonly title: string; readonly note: string } {
  try {
    const { name, note } = JSON.parse(text) as { name?: unknown; note?: unknown };
    return { title: typeof name === 'string' ? name : id, note: typeof note === 'string' ? note : '' };
  } catch {
    return { title: id, note: '' };
  }
}

const noSuch = (kind: string, id: string, ids: readonly string[]) => ({
  path: [],
  code: `${kind}-unknown`,
  message: `There is no such ${kind}.`,
  value: id,
  allowed: ids.join(', '),
  remedy: 'Choose one of the list.',
});
