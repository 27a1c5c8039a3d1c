/** The projects that ship with the program. */

import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { fail, ok, type Result } from '../../core/index.ts';
import type { ExampleInfo, OpenedProject } from '../contract.ts';
import { fileIssue } from './fileIssues.ts';
import { readTextFile } from './textFile.ts';

/** Id of the example shown first. */
export const demoId = 'demo';

/** Reads an example by id; the id is a bare name, checked against the folder's own listing. */
export async function readExample(folder: string, id: string): Promise<Result<OpenedProject>> {
  const ids = await exampleIds(folder);
  if (!ids.ok) return ids;
  if (!ids.value.includes(id)) return fail(noSuchExample(id, ids.value));
  const text = await readTextFile(join(folder, `${id}.json`));
  return text.ok ? ok({ handle: null, path: null, name: `${id}.json`, text: text.value }) : text;
}

/** Every example with its title, the demo first, then by id. */
export async function listExamples(folder: string): Promise<Result<readonly ExampleInfo[]>> {
  const ids = await exampleIds(folder);
  if (!ids.ok) return ids;
  const found: ExampleInfo[] = [];
  for (const id of ids.value) {
    const text = await readTextFile(join(folder, `${id}.json`));
    if (text.ok) found.push(describe(id, text.value));
  }
  return ok(found);
}

async function exampleIds(folder: string): Promise<Result<readonly string[]>> {
  try {
    const ids = (await readdir(folder)).filter((name) => name.endsWith('.json')).map((name) => name.slice(0, -5));
    return ok(ids.sort((a, b) => Number(b === demoId) - Number(a === demoId) || a.localeCompare(b)));
  } catch (error) {
    return fail(fileIssue(folder, error));
  }
}

/** Title and note without a full parse, so that a damaged example is still listed and its issues shown on opening. */
function describe(id: string, text: string): ExampleInfo {
  try {
    const { name, note } = JSON.parse(text) as { name?: unknown; note?: unknown };
    return { id, title: typeof name === 'string' ? name : id, note: typeof note === 'string' ? note : '' };
  } catch {
    return { id, title: id, note: '' };
  }
}

const noSuchExample = (id: string, ids: readonly string[]) => ({
  path: [],
  code: 'example-unknown',
  message: 'There is no such example.',
  value: id,
  allowed: ids.join(', '),
  remedy: 'Choose one of the list.',
});
