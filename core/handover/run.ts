/** Makes what a hand-over module writes from, and runs it: the one way in for the window and the headless command. */

import type { Design } from '../design/types.ts';
import { validateDesign } from '../design/validate.ts';
import type { Prediction } from '../prediction/types.ts';
import { present } from '../present/present.ts';
import type { Project } from '../project/schema.ts';
import { fail, type Issue, issueText, ok, type Result } from '../result.ts';
import { checkValues } from './check.ts';
import type {
  HandoverFile,
  HandoverModule,
  HandoverProgress,
  HandoverSource,
  HandoverSubject,
  HandoverTools,
} from './types.ts';

/** Predicts one design for a module; the host decides where and with which cache. */
export type HandoverPredict = (
  design: Design,
  fields: Prediction['options']['fields'],
  tell: HandoverProgress,
) => Promise<Prediction> | Prediction;

const unknownRevision = (project: Project, id: string): Issue => ({
  path: ['revision'],
  code: 'revision-unknown',
  message: 'The project has no such revision.',
  value: id,
  allowed: project.revisions.map((revision) => revision.id).join(', '),
  remedy: 'Name one of them.',
});

const wrongCount = (module: HandoverModule, count: number): Issue => ({
  path: [module.id],
  code: 'handover-subjects',
  message: count === 0 ? 'No revision is chosen.' : `${module.label} is written of one revision at a time.`,
  value: String(count),
  allowed: module.several ? '1 or more' : '1',
  remedy: 'Choose the revision to hand over.',
});

/** Faults that revisions share (process, material) are told once. */
const distinct = (issues: readonly Issue[]): Issue[] =>
  issues.filter((issue, i) => issues.findIndex((other) => issueText(other) === issueText(issue)) === i);

/** The revisions' designs, or why some cannot be handed over. */
function designsOf(project: Project, revisionIds: readonly string[]): Result<readonly Design[]> {
  const results = revisionIds.map((id) =>
    project.revisions.some((revision) => revision.id === id)
      ? validateDesign(project, id)
      : fail(unknownRevision(project, id)),
  );
  const issues = results.flatMap((result) => (result.ok ? [] : result.issues));
  if (issues.length > 0) return fail(...distinct(issues));
  return ok(results.flatMap((result) => (result.ok ? [result.value] : [])));
}

/**
 * Everything a module writes from.
 * @param revisionIds the first is the one asked for
 * @param date day of writing, YYYY-MM-DD
 * @param predict called once for each revision where the module needs a prediction
 * @returns issues of the design where a revision is unknown or refused
 */
export async function handoverSource(
  module: HandoverModule,
  project: Project,
  revisionIds: readonly string[],
  date: string,
  predict: HandoverPredict,
  tell: HandoverProgress = () => undefined,
): Promise<Result<HandoverSource>> {
  if (revisionIds.length === 0 || (revisionIds.length > 1 && !module.several)) {
    return fail(wrongCount(module, revisionIds.length));
  }
  const designs = designsOf(project, revisionIds);
  if (!designs.ok) return designs;
  const subjects: HandoverSubject[] = [];
  for (const [i, design] of designs.value.entries()) {
    const revision = project.revisions.find(({ id }) => id === design.revisionId);
    if (!revision) continue;
    const of = designs.value.length;
    const told: HandoverProgress = (done, stage) => tell((i + done) / of, stage);
    const fields = module.needs === 'solved' ? 'solved' : 'formula';
    const prediction = module.needs === 'design' ? null : await predict(design, fields, told);
    subjects.push({ revision, design, prediction, presentation: prediction && present(prediction, design) });
  }
  return ok({ project, subjects, date });
}

const faulty = (module: HandoverModule, fault: unknown): Issue => ({
  path: [module.id],
  code: 'handover-fault',
  message: `${module.label} could not be written: ${fault instanceof Error ? fault.message : String(fault)}`.slice(
    0,
    400,
  ),
  remedy: 'Change the options or the design; if it stays, it is a fault of the program.',
});

const nothingWritten = (module: HandoverModule): Issue => ({
  path: [module.id],
  code: 'handover-empty',
  message: `${module.label} came out empty.`,
  remedy: 'Change the options; if it stays, it is a fault of the program.',
});

/** Whether a subject has what the module needs. */
const isReady = (module: HandoverModule, { prediction }: HandoverSubject): boolean =>
  module.needs === 'design' ||
  (prediction !== null && (module.needs !== 'solved' || prediction.options.fields === 'solved'));

/** Two files of one name get a number before the ending. */
function numbered(files: readonly HandoverFile[]): readonly HandoverFile[] {
  const seen = new Map<string, number>();
  return files.map((file) => {
    const count = (seen.get(file.name) ?? 0) + 1;
    seen.set(file.name, count);
    return count === 1 ? file : { ...file, name: file.name.replace(/(\.[^.]*)?$/, `-${count}$1`) };
  });
}

/**
 * Checks the options and runs the module. Never throws: a fault of the module becomes an issue that names it.
 * @param given option values by id; what is missing starts as the option says
 * @returns at least one file that is not empty, each with a name of its own
 */
export async function runHandover(
  module: HandoverModule,
  source: HandoverSource,
  given: Readonly<Record<string, unknown>>,
  tools: HandoverTools,
  tell: HandoverProgress = () => undefined,
): Promise<Result<readonly HandoverFile[]>> {
  const count = source.subjects.length;
  if (count === 0 || (count > 1 && !module.several)) return fail(wrongCount(module, count));
  const values = checkValues(module, given);
  if (!values.ok) return values;
  try {
    if (!source.subjects.every((subject) => isReady(module, subject)))
      throw new Error('the prediction it needs is missing');
    const files = await module.write(source, values.value, tools, tell);
    if (!files.ok) return files;
    if (files.value.length === 0 || files.value.some(({ bytes }) => bytes.length === 0))
      return fail(nothingWritten(module));
    return ok(numbered(files.value));
  } catch (fault) {
    return fail(faulty(module, fault));
  }
}
