/** What a number field shows, and its acts, for the number at one place of the project. */

import type { Issue } from '../../core/index.ts';
import { useLook } from '../look.ts';
import { draftStore, dropDrafts, useDraft } from '../store/drafts.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { type Path, pathKey, valueAt } from '../store/path.ts';
import { currentProject, useProjectState } from '../store/project.ts';
import { commitNumber, stepNumber, typeNumber } from './numberEdits.ts';
import { showNumber } from './quantity.ts';
import type { FieldSpec } from './spec.ts';

/** What a number field shows and does. */
export interface NumberEdit {
  readonly text: string;
  readonly issue: Issue | null;
  type(text: string): void;
  commit(): void;
  revert(): void;
  step(by: number): void;
}

/** What the field shows at this moment. */
function textNow(path: Path, spec: FieldSpec): string {
  const value = valueAt(currentProject(), path);
  return draftStore.getState()[pathKey(path)]?.text ?? (typeof value === 'number' ? showNumber(value, spec.unit) : '');
}

/** Editing of the number at `path`. */
export function useNumberEdit(path: Path, spec: FieldSpec): NumberEdit {
  const value = useProjectState((state) => valueAt(state.history?.present, path));
  const draft = useDraft(path);
  const look = useLook();
  const key = pathKey(path);
  const found = useEvaluation((state) => state.issues.find((issue) => pathKey(issue.path) === key) ?? null);
  const text = draft?.text ?? (typeof value === 'number' ? showNumber(value, spec.unit, look) : '');
  return {
    text,
    issue: draft ? draft.issue : found,
    type: (typed) => typeNumber(path, spec, typed),
    commit: () => {
      if (draft) commitNumber(path, spec, draft.text);
    },
    revert: () => dropDrafts(path),
    // Read anew: a held button steps more often than the field is drawn.
    step: (by) => stepNumber(path, spec, textNow(path, spec), by),
  };
}
