/** Shipped examples and materials, loaded and checked. */

import type { Design } from '../../core/design/types.ts';
import { validateDesign } from '../../core/design/validate.ts';
import type { Material } from '../../core/project/materialSchema.ts';
import { parseMaterial, parseProject } from '../../core/project/parse.ts';
import type { Project } from '../../core/project/schema.ts';
import { issueText, type Result } from '../../core/result.ts';
import { assetNames, assetText } from './assets.ts';

/** Names of the shipped examples, without ending. */
export const exampleNames = assetNames('examples').map((name) => name.replace('.json', ''));

/** Ids of the shipped materials. */
export const materialNames = assetNames('materials').map((name) => name.replace('.json', ''));

/** The value, or an error that lists every issue. */
export function expectOk<T>(result: Result<T>): T {
  if (result.ok) return result.value;
  throw new Error(result.issues.map(issueText).join('\n'));
}

/** Codes of the issues; empty for a good result. */
export const codesOf = (result: Result<unknown>): readonly string[] =>
  result.ok ? [] : result.issues.map((issue) => issue.code);

/** A fresh copy of a shipped example. */
export const loadExample = (name: string): Project => expectOk(parseProject(assetText(`examples/${name}.json`)));

/** A fresh copy of a shipped material. */
export const loadMaterial = (id: string): Material => expectOk(parseMaterial(assetText(`materials/${id}.json`)));

/** Design of an example's revision; its active one by default. */
export function loadDesign(name: string, revisionId?: string): Design {
  const project = loadExample(name);
  return expectOk(validateDesign(project, revisionId ?? project.activeRevision));
}

/** A copy of the demo with a change made to it. */
export function changedDemo(change: (project: Project) => void): Project {
  const project = loadExample('demo');
  change(project);
  return project;
}

/** Revision of a project at an index; fails the test where there is none. */
export function revisionAt(project: Project, index: number): Project['revisions'][number] {
  const revision = project.revisions[index];
  if (!revision) throw new Error(`no revision ${index}`);
  return revision;
}
