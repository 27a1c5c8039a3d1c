/** The projects that ship with the program. */

import { ok, type Result } from '../../core/index.ts';
import type { ExampleInfo, OpenedProject } from '../contract.ts';
import { allShipped, readShipped, titleOf } from './shippedFiles.ts';

/** Id of the example shown first. */
export const demoId = 'demo';

/** Reads an example by id; the id is a bare name, checked against the folder's own listing. */
export async function readExample(folder: string, id: string): Promise<Result<OpenedProject>> {
  const read = await readShipped(folder, id, 'example');
  if (!read.ok) return read;
  return ok({ handle: null, path: null, name: read.value.name, text: read.value.text, version: null, holder: null });
}

/** Every example with its title, the demo first, then by id. */
export async function listExamples(folder: string): Promise<Result<readonly ExampleInfo[]>> {
  const all = await allShipped(folder);
  if (!all.ok) return all;
  const found = all.value.map((file) => ({ id: file.id, ...titleOf(file) }));
  return ok(found.sort((a, b) => Number(b.id === demoId) - Number(a.id === demoId)));
}
