/** Two small buttons at a number that step it, for the mouse; the arrow keys do the same from the keyboard. */

import { type PointerEvent, useEffect, useRef } from 'react';
import { editText } from '../strings/editing.ts';

/** A press longer than this repeats, ms. */
const holdMs = 400;
/** Pause between repeats, ms. */
const repeatMs = 80;

/** Repeats an act while something is held; the act is always that of the latest drawing. */
function useHeld(act: (by: number) => void) {
  const latest = useRef(act);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);
  useEffect(() => {
    latest.current = act;
  });
  const stop = () => clearTimeout(timer.current);
  useEffect(() => () => clearTimeout(timer.current), []);
  const start = (by: number) => {
    stop();
    latest.current(by);
    const again = () => {
      latest.current(by);
      timer.current = setTimeout(again, repeatMs);
    };
    timer.current = setTimeout(again, holdMs);
  };
  return { start, stop };
}

/** The two buttons; no stops of the tab key, and silent to readers, who have the arrow keys. */
export function Stepper({ step }: { step(by: number): void }) {
  const held = useHeld(step);
  const button = (sign: string, title: string, by: 1 | -1) => (
    <button
      type="button"
      tabIndex={-1}
      title={title}
      onPointerDown={(event: PointerEvent) => {
        // The focus stays where it is, so that what is being typed is not handed over first.
        event.preventDefault();
        if (event.button === 0) held.start(event.shiftKey ? 10 * by : by);
      }}
      onPointerUp={held.stop}
      onPointerLeave={held.stop}
      onPointerCancel={held.stop}
    >
      {sign}
    </button>
  );
  return (
    <span className="stepper" aria-hidden="true">
      {button('▴', editText.up, 1)}
      {button('▾', editText.down, -1)}
    </span>
  );
}
