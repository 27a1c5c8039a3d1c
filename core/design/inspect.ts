/** Everything that is wrong with a file that cannot be opened, so that it can be mended in one go. */

import { designMaterial } from '../material/designMaterial.ts';
import { asList, asObject } from '../project/looseView.ts';
import { materialSchema } from '../project/materialSchema.ts';
import { checkProject, readDocument } from '../project/parse.ts';
import { type Issue, pathText } from '../result.ts';
import { geometryIssues } from './checkGeometry.ts';
import { printIssues } from './checkPrint.ts';

function materialIssues(material: unknown, index: number): readonly Issue[] {
  const shape = materialSchema.safeParse(material);
  if (!shape.success) return [];
  const made = designMaterial(shape.data, ['materials', index]);
  return made.ok ? [] : made.issues;
}

/** The first of several issues that say the same of the same place. */
function withoutRepeats(issues: readonly Issue[]): readonly Issue[] {
  const seen = new Set<string>();
  return issues.filter(({ path, code }) => {
    const key = `${pathText(path)} ${code}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

/**
 * Issues of a project file that is refused: those of parseProject, and those that its parts would have later.
 * @param text file content
 * @returns every issue, none where the file can be opened (its revisions may still have faults, see validateDesign)
 */
export function faultyFileIssues(text: string): readonly Issue[] {
  const document = readDocument(text);
  if (!document.ok) return document.issues;
  const project = checkProject(document.value);
  if (project.ok) return [];
  const { revisions, materials, print } = asObject(document.value);
  return withoutRepeats([
    ...project.issues,
    ...asList(revisions).flatMap((revision, i) => geometryIssues(revision, ['revisions', i])),
    ...asList(materials).flatMap(materialIssues),
    ...printIssues(print),
  ]);
}
