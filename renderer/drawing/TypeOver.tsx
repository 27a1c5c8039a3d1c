/** A dimension's number being typed where it stands. */

import { type KeyboardEvent, useEffect, useRef, useState } from 'react';
import type { NumberLook } from '../../core/index.ts';
import { readNumber, showNumber } from '../fields/quantity.ts';
import { unitText } from '../fields/spec.ts';
import { useLook } from '../look.ts';
import { drawingText } from '../strings/drawing.ts';
import { reasonText, setDimension, stepName } from './pulling.ts';
import { setDrawing } from './store.ts';
import type { Dimension } from './types.ts';

/** Takes the typed text over; answers why not, or null. */
function take(dimension: Dimension, text: string): string | null {
  const read = readNumber(text, dimension.spec, dimension.path);
  if (!read.ok) return read.issues.map((issue) => reasonText(issue, dimension.path)).join(' ');
  return setDimension(dimension, read.value);
}

/** Brings the cursor back to the handle, for those who work by keys. */
function backToGrip(id: string): void {
  requestAnimationFrame(() => document.querySelector<SVGElement>(`[data-grip="${id}"]`)?.focus());
}

/** Typing a dimension's number: the text, why it is refused, and the keys. */
function useTyping(dimension: Dimension, look: NumberLook) {
  const [first] = useState(() => showNumber(dimension.value, dimension.spec.unit, look));
  const [text, setText] = useState(first);
  const [problem, setProblem] = useState<string | null>(null);
  const commit = (): boolean => {
    // what is shown may be rounded: left as it was, it is no edit
    const why = text === first ? null : take(dimension, text);
    setProblem(why);
    if (why === null) setDrawing({ typing: null });
    return why === null;
  };
  const onKey = (event: KeyboardEvent) => {
    event.stopPropagation();
    if (event.key === 'Escape') setDrawing({ typing: null });
    if (event.key === 'Escape' || (event.key === 'Enter' && commit())) backToGrip(dimension.id);
  };
  return { text, setText, problem, commit, onKey };
}

interface TypeOverProps {
  readonly dimension: Dimension;
  readonly x: number;
  readonly y: number;
}

/** The field over a dimension's number, middle at x, y px; what is refused stays typed, with the reason. */
export function TypeOver({ dimension, x, y }: TypeOverProps) {
  const look = useLook();
  const { text, setText, problem, commit, onKey } = useTyping(dimension, look);
  const input = useRef<HTMLInputElement>(null);
  useEffect(() => input.current?.select(), []);
  return (
    <div className="type-over" style={{ left: x, top: y }}>
      <label>
        <span className="unseen">{drawingText.type(stepName(dimension))}</span>
        <input
          ref={input}
          className="number"
          type="text"
          inputMode="decimal"
          autoComplete="off"
          spellCheck={false}
          value={text}
          aria-invalid={problem !== null}
          aria-describedby={problem ? 'type-over-problem' : undefined}
          onChange={(event) => setText(event.target.value)}
          onKeyDown={onKey}
          onBlur={commit}
        />
      </label>
      <span className="unit">{unitText(dimension.spec.unit, look)}</span>
      {problem && (
        <span className="issue" id="type-over-problem" role="alert">
          {problem}
        </span>
      )}
    </div>
  );
}
