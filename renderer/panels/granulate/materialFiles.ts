/** Single materials as files: into the project, and out of it. */

import {
  type Issue,
  issueText,
  type Material,
  materialCompleteness,
  materialFileText,
  parseMaterialText,
} from '../../../core/index.ts';
import { getBridge } from '../../bridge.ts';
import { announce } from '../../files.ts';
import { addMaterial } from '../../store/materials.ts';
import { activeRevision, applyEdit, currentProject } from '../../store/project.ts';
import { text } from '../../strings.ts';
import { topicNames } from './topicNames.ts';

const words = text.describe.granulate;

function refuse(issues: readonly Issue[], file?: string): void {
  const more = issues.length > 3 ? ` (+${issues.length - 3})` : '';
  const told = `${issues.slice(0, 3).map(issueText).join(' ')}${more}`;
  announce('bad', file === undefined ? told : `${words.importRefused(file)} ${told}`);
}

/** What is said of a material just imported: where nothing that flows can be predicted, that comes first. */
function welcome(material: Material): void {
  const missing = materialCompleteness(material).flatMap(({ state, topic }) => (state === 'missing' ? [topic] : []));
  if (material.rheology.model !== 'unknown') announce('good', words.added(material.name));
  else announce('bad', words.importedUnknown(material.name, topicNames(missing)));
}

/** Lets the person choose a material file and puts its material into the project as one named step. */
export async function importMaterial(): Promise<void> {
  const picked = await getBridge().importText('json');
  if (!picked.ok) return refuse(picked.issues);
  if (picked.value) takeMaterialText(picked.value);
}

/** Puts the material of a file's text into the project as one named step; a faulty one is told with the file's name. */
export function takeMaterialText({ name, text: written }: { readonly name: string; readonly text: string }): void {
  const read = parseMaterialText(written);
  if (!read.ok) {
    refuse(read.issues, name);
    return;
  }
  applyEdit(addMaterial(read.value), { label: words.importStep(read.value.name) });
  welcome(read.value);
}

/** Saves a material of the project as a file of its own. */
export async function exportMaterial(id: string): Promise<void> {
  const material = currentProject()?.materials.find((one) => one.id === id);
  if (!material) return;
  const saved = await getBridge().exportFile(`${id}.material.json`, materialFileText(material));
  if (!saved.ok) refuse(saved.issues);
  else if (saved.value) announce('good', words.exported(material.name, saved.value.name));
}

/** Id of the material that the open revision runs; null where it names none of the project's. */
export function runMaterialId(): string | null {
  const project = currentProject();
  if (!project) return null;
  const { materialId } = activeRevision(project);
  return project.materials.some(({ id }) => id === materialId) ? materialId : null;
}
