/** A choice between a few named things. */

import { useId } from 'react';
import type { Path } from '../store/path.ts';
import { explain } from './NumberField.tsx';

/** What a choice shows and does. */
export interface ChoiceProps<T extends string> {
  readonly path: Path;
  readonly label: string;
  readonly help: string;
  readonly value: T;
  readonly options: Readonly<Record<T, string>>;
  readonly disabled: boolean;
  onChoose(value: T): void;
}

/** One row: name and a drop-down. */
export function ChoiceField<T extends string>(props: ChoiceProps<T>) {
  const { path, label, help, value, options, disabled, onChoose } = props;
  const id = useId();
  const names = Object.entries(options) as [T, string][];
  return (
    <div className="row choice" onPointerEnter={() => explain(path, label, help)}>
      <label htmlFor={id}>{label}</label>
      <select
        id={id}
        value={value}
        disabled={disabled}
        onFocus={() => explain(path, label, help)}
        onChange={(event) => onChoose(event.target.value as T)}
      >
        {names.map(([key, name]) => (
          <option key={key} value={key}>
            {name}
          </option>
        ))}
      </select>
    </div>
  );
}
