/** A number of a material in a row with name and unit. */

import { useId } from 'react';
import { IssueText } from '../../fields/IssueText.tsx';
import { explain, NumberInput } from '../../fields/NumberField.tsx';
import { type FieldSpec, unitText } from '../../fields/spec.ts';
import type { Path } from '../../store/path.ts';
import { pathBelow } from '../desk.ts';
import { useSourcedEdit } from './useSourcedEdit.ts';

/** The row. */
export function SourcedNumber({ path, spec }: { readonly path: Path; readonly spec: FieldSpec }) {
  const edit = useSourcedEdit(path, spec);
  const id = useId();
  return (
    <div className="row" onPointerEnter={() => explain(path, spec.label, spec.help, spec)}>
      <label htmlFor={id}>{spec.label}</label>
      <NumberInput {...{ path, spec, edit, id }} disabled={false} describedBy={`${id}-issue`} />
      <span className="unit">{unitText(spec.unit)}</span>
      {edit.issue && <IssueText id={`${id}-issue`} issue={edit.issue} />}
    </div>
  );
}

/** One row per spec below a root, for bare numbers that values with sources may have to wait for. */
export const SourcedNumbers = ({ root, specs }: { readonly root: Path; readonly specs: readonly FieldSpec[] }) =>
  specs.map((spec) => <SourcedNumber key={spec.key} path={pathBelow(root, spec.key)} spec={spec} />);
