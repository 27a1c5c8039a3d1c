/** Bringing materials of the shipped library into the project. */

import { type Issue, issueText, parseMaterial } from '../core/index.ts';
import { getBridge, type MaterialInfo } from './bridge.ts';
import { announce } from './files.ts';
import { addMaterial } from './store/materials.ts';
import { applyEdit } from './store/project.ts';
import { text } from './strings.ts';

const words = text.describe.granulate;

const refuse = (issues: readonly Issue[]): void => announce('bad', issues.slice(0, 3).map(issueText).join(' '));

/** The library's materials; none, with a notice, where the host cannot tell. */
export async function listLibrary(): Promise<readonly MaterialInfo[]> {
  const listed = await getBridge().listMaterials();
  if (listed.ok) return listed.value;
  refuse(listed.issues);
  return [];
}

/** Puts a copy of a library material into the project as one named step; the library itself is never written. */
export async function addFromLibrary(id: string): Promise<void> {
  const read = await getBridge().readMaterial(id);
  if (!read.ok) return refuse(read.issues);
  const material = parseMaterial(read.value.text);
  if (!material.ok) return refuse(material.issues);
  applyEdit(addMaterial(material.value), { label: words.addStep(material.value.name) });
  announce('good', words.added(material.value.name));
}
