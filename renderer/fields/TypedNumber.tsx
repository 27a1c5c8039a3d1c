/** A number typed in a dialog that is no field of the project: bad text stays where it is, with the reason. */

import { useEffect, useId, useState } from 'react';
import { allUnits, formatNumber } from '../../core/index.ts';
import { readNumber, writeNumber } from './quantity.ts';
import type { FieldUnit } from './spec.ts';

/** What it shows and whom it tells. */
export interface TypedNumberProps {
  readonly label: string;
  /** in `unit` */
  readonly value: number;
  /** a unit of core, or any other symbol, which is then only written beside */
  readonly unit: string;
  /** why a number cannot be taken, or null */
  refuse?(value: number): string | null;
  take(value: number): void;
}

const unitOf = (symbol: string): FieldUnit => allUnits.find((unit) => unit === symbol) ?? 'ratio';

/** Reads the text, or says what is wrong with it. */
function read({ label, unit, refuse }: TypedNumberProps, text: string): number | string {
  const found = readNumber(text, { key: '', label, unit: unitOf(unit), help: '' }, []);
  if (!found.ok) return found.issues.map((issue) => issue.message).join(' ');
  return refuse?.(found.value) ?? found.value;
}

/** The field; it hands its number over when it is left or on Enter. */
export function TypedNumber(props: TypedNumberProps) {
  const { label, value, unit, take } = props;
  const id = useId();
  const [text, setText] = useState(() => writeNumber(value));
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    setText(writeNumber(value));
    setProblem(null);
  }, [value]);
  const commit = () => {
    const found = read(props, text);
    if (typeof found === 'string') {
      setProblem(found);
      return;
    }
    setProblem(null);
    if (found !== value) take(found);
    else setText(formatNumber(value, 9));
  };
  return (
    <span className="typed-number">
      <label htmlFor={id}>{label}</label>
      <input
        id={id}
        type="text"
        inputMode="decimal"
        value={text}
        aria-invalid={problem !== null}
        aria-describedby={problem ? `${id}-problem` : undefined}
        onChange={(event) => setText(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') commit();
        }}
      />
      <span className="quiet">{unit}</span>
      {problem && (
        <span className="issue" id={`${id}-problem`} role="alert">
          {problem}
        </span>
      )}
    </span>
  );
}
