/** What a number field shows, and its acts, for the number at one place of the project. */

import type { Issue } from '../../core/index.ts';
import { dropDrafts, useDraft } from '../store/drafts.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { type Path, pathKey, valueAt } from '../store/path.ts';
import { useProjectState } from '../store/project.ts';
import { commitNumber, stepNumber, typeNumber } from './numberEdits.ts';
import { writeNumber } from './quantity.ts';
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

/** Editing of the number at `path`. */
export function useNumberEdit(path: Path, spec: FieldSpec): NumberEdit {
  const value = useProjectState((state) => valueAt(state.history?.present, path));
  const draft = useDraft(path);
  const key = pathKey(path);
  const found = useEvaluation((state) => state.issues.find((issue) => pathKey(issue.path) === key) ?? null);
  const text = draft?.text ?? (typeof value === 'number' ? writeNumber(value) : '');
  return {
    text,
    issue: draft ? draft.issue : found,
    type: (typed) => typeNumber(path, spec, typed),
    commit: () => {
      if (draft) commitNumber(path, spec, draft.text);
    },
    revert: () => dropDrafts(path),
    step: (by) => stepNumber(path, spec, text, by),
  };
}
