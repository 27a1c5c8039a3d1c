/** Judging and taking over typed numbers. A number that fits only together with others waits for them. */

import type { Issue } from '../../core/index.ts';
import { draftStore, dropDrafts, keepDraft } from '../store/drafts.ts';
import { removeValue } from '../store/edits.ts';
import { type Path, pathKey, valueAt } from '../store/path.ts';
import { applyEdit, currentProject } from '../store/project.ts';
import { type Change, checkChanges, withChanges } from './check.ts';
import { readNumber, writeNumber } from './quantity.ts';
import type { FieldSpec } from './spec.ts';

/** A typed text as a number that fits, or why not; `value` is there too where the number was read but does not fit. */
export interface Judged {
  readonly value: number | null;
  readonly issue: Issue | null;
}

const isCleared = (spec: FieldSpec, text: string): boolean => spec.optional === true && text.trim() === '';

/** Reads `text` and checks it at its place. */
export function judge(path: Path, spec: FieldSpec, text: string): Judged {
  if (isCleared(spec, text)) return { value: null, issue: null };
  const read = readNumber(text, spec, path);
  if (!read.ok) return { value: null, issue: read.issues[0] as Issue };
  const project = currentProject();
  return { value: read.value, issue: project && checkChanges(project, [{ path, value: read.value }]) };
}

/** Keeps what is being typed. */
export function typeNumber(path: Path, spec: FieldSpec, text: string): void {
  keepDraft({ path, text, ...judge(path, spec, text) });
}

/** Other numbers that were typed and read but did not fit alone. */
const waiting = (path: Path): Change[] =>
  Object.values(draftStore.getState()).flatMap((draft) =>
    draft.value === null || pathKey(draft.path) === pathKey(path) ? [] : [{ path: draft.path, value: draft.value }],
  );

function apply(changes: readonly Change[], spec: FieldSpec): void {
  const [first] = changes;
  if (!first) return;
  for (const { path } of changes) dropDrafts(path);
  if (changes.length === 1 && valueAt(currentProject(), first.path) === first.value) return;
  applyEdit((project) => withChanges(project, changes), { label: spec.label, key: pathKey(first.path) });
}

/** Takes a typed text over, with the waiting ones if they fit now, else alone if that fits, else it stays typed. */
export function commitNumber(path: Path, spec: FieldSpec, text: string): void {
  if (isCleared(spec, text)) {
    dropDrafts(path);
    applyEdit(removeValue(path), { label: spec.label });
    return;
  }
  const { value, issue } = judge(path, spec, text);
  const project = currentProject();
  keepDraft({ path, text, value, issue });
  if (value === null || !project) return;
  const alone = [{ path, value }];
  const together = [...alone, ...waiting(path)];
  if (together.length > 1 && !checkChanges(project, together)) apply(together, spec);
  else if (!issue) apply(alone, spec);
}

/** Moves a number by `by` steps; nothing happens where that would not fit. */
export function stepNumber(path: Path, spec: FieldSpec, text: string, by: number): void {
  const { value } = judge(path, spec, text);
  if (value === null) return;
  const next = Number((value + by * (spec.step ?? 0.1)).toPrecision(10));
  if (!judge(path, spec, writeNumber(next)).issue) apply([{ path, value: next }], spec);
}
