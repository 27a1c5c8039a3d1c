/** A number with its unit, its help and, where refused, the reason at the field. */

import { type FocusEvent, type KeyboardEvent, memo, useId } from 'react';
import { useLook } from '../look.ts';
import type { Path } from '../store/path.ts';
import { pathKey } from '../store/path.ts';
import { setView } from '../store/view.ts';
import { text } from '../strings.ts';
import { IssueText } from './IssueText.tsx';
import { Stepper } from './Stepper.tsx';
import { type FieldSpec, unitText } from './spec.ts';
import { type NumberEdit, useNumberEdit } from './useNumberEdit.ts';

/** Handles the keys of a number field: Enter takes over, Escape restores, arrows step (Shift: ten steps). */
function onNumberKey(event: KeyboardEvent<HTMLInputElement>, edit: NumberEdit): void {
  if (event.altKey || event.ctrlKey || event.metaKey) return;
  if (event.key === 'Enter') edit.commit();
  else if (event.key === 'Escape') edit.revert();
  else if (event.key === 'ArrowUp') edit.step(event.shiftKey ? 10 : 1);
  else if (event.key === 'ArrowDown') edit.step(event.shiftKey ? -10 : -1);
  else return;
  if (event.key !== 'Escape') event.preventDefault();
  else event.stopPropagation();
}

/** Shows a field's help in the help line; with its spec also its range, its step and a drawing. */
export const explain = (path: Path, label: string, help: string, spec?: FieldSpec): void =>
  setView({ helpFor: { key: pathKey(path), label, help, ...(spec && { path, spec }) } });

/** The bare input with its stepper, for rows and table cells alike. */
export function NumberInput(props: {
  readonly path: Path;
  readonly spec: FieldSpec;
  readonly edit: NumberEdit;
  readonly disabled: boolean;
  readonly id?: string;
  readonly label?: string;
  readonly describedBy?: string | undefined;
}) {
  const { path, spec, edit, disabled, id, label, describedBy } = props;
  return (
    <span className="number-box">
      <input
        id={id}
        className="number"
        type="text"
        inputMode="decimal"
        autoComplete="off"
        spellCheck={false}
        value={edit.text}
        placeholder={spec.optional ? text.describe.notKnown : undefined}
        readOnly={disabled}
        aria-label={label}
        aria-description={spec.help}
        aria-invalid={edit.issue !== null}
        aria-describedby={edit.issue ? describedBy : undefined}
        data-path={pathKey(path)}
        onChange={(event) => edit.type(event.target.value)}
        onKeyDown={(event) => {
          if (!disabled) onNumberKey(event, edit);
        }}
        onFocus={(event: FocusEvent<HTMLInputElement>) => {
          event.target.select();
          explain(path, spec.label, spec.help, spec);
        }}
        onBlur={edit.commit}
      />
      {!disabled && <Stepper step={edit.step} />}
    </span>
  );
}

interface RowProps {
  readonly path: Path;
  readonly spec: FieldSpec;
  readonly disabled: boolean;
}

const sameRow = (a: RowProps, b: RowProps): boolean =>
  a.spec === b.spec && a.disabled === b.disabled && pathKey(a.path) === pathKey(b.path);

/** One row: name, number, unit. It follows its own number, so an edit of another one need not draw it anew. */
export const NumberField = memo(function NumberRow({ path, spec, disabled }: RowProps) {
  const edit = useNumberEdit(path, spec);
  const look = useLook();
  const id = useId();
  return (
    <div className="row" onPointerEnter={() => explain(path, spec.label, spec.help, spec)}>
      <label htmlFor={id}>{spec.label}</label>
      <NumberInput {...{ path, spec, edit, disabled, id }} describedBy={`${id}-issue`} />
      <span className="unit">{unitText(spec.unit, look)}</span>
      {edit.issue && <IssueText id={`${id}-issue`} issue={edit.issue} />}
    </div>
  );
}, sameRow);
