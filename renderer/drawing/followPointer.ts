/** Lets a dimension follow the pointer until it is let go; Escape gives up. */

import { beginPull, cancelPull, endPull, type Held, movePull } from './pulling.ts';
import { drawingStore } from './store.ts';
import type { Dimension } from './types.ts';

/** Where and with which keys a pointer is. */
interface Point extends Held {
  readonly clientX: number;
  readonly clientY: number;
}

/** Follows from a press on; `zoom` is px per mm. The window is listened to, as the handle itself may go while pulled. */
export function followPointer(dimension: Dimension, press: Point, zoom: number): void {
  if (!beginPull(dimension, press)) return;
  const { grip } = dimension;
  let last: Point = press;
  const move = (point: Point) => {
    last = point;
    const at =
      grip.axis === 'z'
        ? grip.z + (point.clientX - press.clientX) / zoom
        : grip.r - (point.clientY - press.clientY) / zoom;
    movePull(at, zoom, point);
  };
  const onMove = (event: PointerEvent) => move(event);
  const onKey = (event: KeyboardEvent) => {
    if (event.key === 'Escape' && event.type === 'keydown') {
      event.preventDefault();
      event.stopPropagation();
      cancelPull();
      stop();
    } else if (event.key === 'Shift' || event.key === 'Alt') {
      event.preventDefault();
      const { clientX, clientY } = last;
      if (last !== press) move({ clientX, clientY, shiftKey: event.shiftKey, altKey: event.altKey });
    }
  };
  const onUp = () => {
    endPull();
    stop();
  };
  const stop = listen({ pointermove: onMove, pointerup: onUp, pointercancel: () => onCancel() }, onKey);
  const onCancel = () => {
    cancelPull();
    stop();
  };
}

type PointerListeners = Readonly<Record<'pointermove' | 'pointerup' | 'pointercancel', (event: PointerEvent) => void>>;

/** Listens on the window; answers with what ends it. A pull that was ended elsewhere takes its listeners along. */
function listen(pointer: PointerListeners, onKey: (event: KeyboardEvent) => void): () => void {
  const names = ['pointermove', 'pointerup', 'pointercancel'] as const;
  for (const name of names) window.addEventListener(name, pointer[name]);
  window.addEventListener('keydown', onKey, true);
  window.addEventListener('keyup', onKey, true);
  const stop = () => {
    for (const name of names) window.removeEventListener(name, pointer[name]);
    window.removeEventListener('keydown', onKey, true);
    window.removeEventListener('keyup', onKey, true);
    unsubscribe();
  };
  const unsubscribe = drawingStore.subscribe(({ pull }) => {
    if (!pull) stop();
  });
  return stop;
}
