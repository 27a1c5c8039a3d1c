/** Judging and taking over typed numbers. A number that fits only together with others waits for them. */

import { fieldRange, type Issue } from '../../core/index.ts';
import { currentLook } from '../look.ts';
import { draftStore, dropDrafts, keepDraft } from '../store/drafts.ts';
import { removeValue } from '../store/edits.ts';
import { type Path, pathKey, valueAt } from '../store/path.ts';
import { applyEdit, currentProject } from '../store/project.ts';
import { type Change, checkChanges, withChanges } from './check.ts';
import { rangeText, readNumber, showNumber, stepped } from './quantity.ts';
import { type FieldSpec, unitText } from './spec.ts';
import { stepLabel } from './stepLabel.ts';

/** A typed text as a number that fits, or why not; `value` is there too where the number was read but does not fit. */
interface Judged {
  readonly value: number | null;
  readonly issue: Issue | null;
}

const isCleared = (spec: FieldSpec, text: string): boolean => spec.optional === true && text.trim() === '';

/** The stored number where the text is exactly what is shown of it: showing rounds, and reading back must not. */
function untouched(path: Path, spec: FieldSpec, text: string): number | null {
  const stored = valueAt(currentProject(), path);
  return typeof stored === 'number' && showNumber(stored, spec.unit) === text.trim() ? stored : null;
}

/** A number outside what the format allows, told in the unit that is shown. */
function inShownUnit(issue: Issue | null, path: Path, spec: FieldSpec): Issue | null {
  if (issue?.code !== 'out-of-range') return issue;
  const allowed = rangeText(fieldRange(currentProject(), path), spec);
  return allowed === '' ? issue : { ...issue, allowed };
}

/** Reads `text` and checks it at its place. */
function judge(path: Path, spec: FieldSpec, text: string): Judged {
  if (isCleared(spec, text)) return { value: null, issue: null };
  const same = untouched(path, spec, text);
  const read = same === null ? readNumber(text, spec, path) : { ok: true as const, value: same };
  if (!read.ok) return { value: null, issue: read.issues[0] as Issue };
  const project = currentProject();
  const issue = project && checkChanges(project, [{ path, value: read.value }]);
  return { value: read.value, issue: inShownUnit(issue, path, spec) };
}

/** Keeps what is being typed. */
export function typeNumber(path: Path, spec: FieldSpec, text: string): void {
  keepDraft({ path, text, ...judge(path, spec, text), unit: unitText(spec.unit) });
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
  const label = stepLabel(first.path, spec);
  applyEdit((project) => withChanges(project, changes), { label, key: pathKey(first.path) });
}

/** Takes a typed text over, with the waiting ones if they fit now, else alone if that fits, else it stays typed. */
export function commitNumber(path: Path, spec: FieldSpec, text: string): void {
  if (isCleared(spec, text)) {
    dropDrafts(path);
    applyEdit(removeValue(path), { label: stepLabel(path, spec) });
    return;
  }
  const { value, issue } = judge(path, spec, text);
  const project = currentProject();
  keepDraft({ path, text, value, issue, unit: unitText(spec.unit) });
  if (value === null || !project) return;
  const alone = [{ path, value }];
  const together = [...alone, ...waiting(path)];
  if (together.length > 1 && !checkChanges(project, together)) apply(together, spec);
  else if (!issue) apply(alone, spec);
}

/** Moves a number by `by` steps, to the end of its range at most; nothing happens where that would not fit. */
export function stepNumber(path: Path, spec: FieldSpec, text: string, by: number): void {
  const { value } = judge(path, spec, text);
  const project = currentProject();
  if (value === null || !project) return;
  const change = { path, value: stepped(value, by, spec, fieldRange(project, path), currentLook()) };
  if (!checkChanges(project, [change])) apply([change], spec);
}
