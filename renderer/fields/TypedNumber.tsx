/** A number typed in a dialog that is no field of the project: bad text stays where it is, with the reason. */

import { useEffect, useId, useState } from 'react';
import { allUnits } from '../../core/index.ts';
import { useLook } from '../look.ts';
import { readNumber, showNumber } from './quantity.ts';
import { type FieldUnit, isUnit, unitText } from './spec.ts';

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
  /** told whenever the text can or cannot be read and taken */
  noteProblem?(wrong: boolean): void;
}

/** The unit of core that the symbol names; a bare number where it names none. */
const unitOf = (symbol: string): FieldUnit => allUnits.find((unit) => unit === symbol) ?? 'ratio';

/** Reads the text, or says what is wrong with it; text that is only what is shown of the value leaves it as it is. */
function read({ label, unit, value, refuse }: TypedNumberProps, text: string): number | string {
  if (text.trim() === showNumber(value, unitOf(unit))) return value;
  const found = readNumber(text, { key: '', label, unit: unitOf(unit), help: '' }, []);
  if (!found.ok) return found.issues.map((issue) => issue.message).join(' ');
  return refuse?.(found.value) ?? found.value;
}

/** What is typed, what is wrong with it, and taking it. */
function useTyped(props: TypedNumberProps) {
  const { value, unit, take, noteProblem } = props;
  const look = useLook();
  const shown = showNumber(value, unitOf(unit), look);
  const [text, setText] = useState(shown);
  const [problem, setProblem] = useState<string | null>(null);
  useEffect(() => {
    setText(shown);
    setProblem(null);
  }, [shown]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: told when the problem changes, not when the listener does
  useEffect(() => noteProblem?.(problem !== null), [problem]);
  // a reason goes as soon as the text is good: were it to go when the field is left, what is pressed next would move away
  const type = (next: string) => {
    setText(next);
    if (problem === null) return;
    const found = read(props, next);
    setProblem(typeof found === 'string' ? found : null);
  };
  const commit = () => {
    const found = read(props, text);
    if (typeof found === 'string') {
      setProblem(found);
      return;
    }
    setProblem(null);
    if (found !== value) take(found);
    else setText(shown);
  };
  return { text, type, problem, commit };
}

/** The field; it hands its number over when it is left or on Enter. */
export function TypedNumber(props: TypedNumberProps) {
  const { label, unit } = props;
  const id = useId();
  const look = useLook();
  const { text, type, problem, commit } = useTyped(props);
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
        onChange={(event) => type(event.target.value)}
        onBlur={commit}
        onKeyDown={(event) => {
          if (event.key === 'Enter') commit();
        }}
      />
      <span className="quiet">{isUnit(unitOf(unit)) ? unitText(unitOf(unit), look) : unit}</span>
      {problem && (
        <span className="issue" id={`${id}-problem`} role="alert">
          {problem}
        </span>
      )}
    </span>
  );
}
