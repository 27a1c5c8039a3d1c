/** A line or a paragraph of text that is taken over on Enter or on leaving. */

import { useId, useState } from 'react';

/** What a text field shows and does. */
export interface TextProps {
  readonly label: string;
  readonly value: string;
  readonly disabled?: boolean;
  readonly lines?: number;
  readonly hideLabel?: boolean;
  readonly placeholder?: string;
  /** an empty line is not taken over */
  readonly required?: boolean;
  readonly maxLength?: number;
  onCommit(value: string): void;
}

/** One text; Escape restores what was there. */
export function TextField(props: TextProps) {
  const { label, value, disabled = false, lines = 1, hideLabel, placeholder, required, maxLength = 120 } = props;
  const [draft, setDraft] = useState<string | null>(null);
  const id = useId();
  const commit = () => {
    if (draft !== null && draft !== value && !(required && draft.trim() === '')) props.onCommit(draft);
    setDraft(null);
  };
  const shared = {
    id,
    value: draft ?? value,
    readOnly: disabled,
    placeholder,
    maxLength,
    onBlur: commit,
    onChange: (event: { target: { value: string } }) => setDraft(event.target.value),
  };
  return (
    <div className={hideLabel ? 'text-field bare' : 'text-field'}>
      <label htmlFor={id} className={hideLabel ? 'unseen' : ''}>
        {label}
      </label>
      {lines > 1 ? (
        <textarea {...shared} rows={lines} />
      ) : (
        <input
          {...shared}
          type="text"
          onKeyDown={(event) => {
            if (event.key === 'Enter') commit();
            if (event.key === 'Escape') setDraft(null);
          }}
        />
      )}
    </div>
  );
}
