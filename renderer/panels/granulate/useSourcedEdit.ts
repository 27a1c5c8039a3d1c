/** Editing of a material's number: where its source spoke of the old number, that is told in the same step. */

import type { FieldSpec } from '../../fields/spec.ts';
import { type NumberEdit, useNumberEdit } from '../../fields/useNumberEdit.ts';
import { withRetoldOrigins } from '../../store/origins.ts';
import { type Path, pathKey } from '../../store/path.ts';
import { applyEdit, currentProject } from '../../store/project.ts';

/** As `useNumberEdit`, for a number of a material. */
export function useSourcedEdit(path: Path, spec: FieldSpec): NumberEdit {
  const edit = useNumberEdit(path, spec);
  const retelling = (act: () => void) => {
    const before = currentProject();
    act();
    const after = currentProject();
    if (!before || !after || before === after) return;
    // The key of the number's own step: both become one.
    applyEdit((project) => withRetoldOrigins(before, project), { label: spec.label, key: pathKey(path) });
  };
  return {
    ...edit,
    commit: () => retelling(edit.commit),
    step: (by) => retelling(() => edit.step(by)),
  };
}
