/** From a project file on disk to validated designs. */

import {
  type Design,
  fail,
  faultyFileIssues,
  type Issue,
  issueText,
  ok,
  type Project,
  parseProject,
  type Result,
  validateDesign,
} from '../../core/index.ts';
import { readTextFile } from '../services/textFile.ts';

/** Reads and parses a project file; of one that is refused the faults of its machines come along. */
export async function readProject(path: string): Promise<Result<Project>> {
  const text = await readTextFile(path);
  if (!text.ok) return text;
  const project = parseProject(text.value);
  return project.ok ? project : fail(...faultyFileIssues(text.value));
}

/** Validates the named revisions; the issues of all of them come back together. */
export function readDesigns(project: Project, revisionIds: readonly string[]): Result<readonly Design[]> {
  const known = project.revisions.map((revision) => revision.id);
  const designs: Design[] = [];
  const issues: Issue[] = [];
  for (const id of revisionIds) {
    const design = known.includes(id) ? validateDesign(project, id) : fail(unknownRevision(id, known));
    if (design.ok) designs.push(design.value);
    else issues.push(...design.issues.filter((issue) => !isKnown(issues, issue)));
  }
  return issues.length > 0 ? fail(...issues) : ok(designs);
}

/** Faults of process, print and material belong to every revision that shares them. */
const isKnown = (issues: readonly Issue[], issue: Issue): boolean =>
  issues.some((each) => issueText(each) === issueText(issue));

const unknownRevision = (id: string, known: readonly string[]): Issue => ({
  path: ['revision'],
  code: 'revision-unknown',
  message: 'The project has no such revision.',
  value: id,
  allowed: known.join(', '),
  remedy: 'Name one of them.',
});
