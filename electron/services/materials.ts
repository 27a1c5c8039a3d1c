/** The library of materials that ships with the program. */

import { ok, type Result } from '../../core/index.ts';
import type { ImportedText, MaterialInfo } from '../contract.ts';
import { allShipped, readShipped, titleOf } from './shippedFiles.ts';

/** Reads a material by id; the id is a bare name, checked against the folder's own listing. */
export async function readMaterial(folder: string, id: string): Promise<Result<ImportedText>> {
  const read = await readShipped(folder, id, 'material');
  return read.ok ? ok({ name: read.value.name, text: read.value.text }) : read;
}

/** Every material with its name, sorted by id. */
export async function listMaterials(folder: string): Promise<Result<readonly MaterialInfo[]>> {
  const all = await allShipped(folder);
  return all.ok ? ok(all.value.map((file) => ({ id: file.id, ...titleOf(file) }))) : all;
}
