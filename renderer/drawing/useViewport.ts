/** The drawing's view: fitted or chosen, moved by wheel, pointer and keys, sent to places by commands. */

import { type RefObject, useCallback, useEffect, useMemo } from 'react';
import type { Revision } from '../../core/index.ts';
import type { BoxSize } from '../plots/useBox.ts';
import { useView, viewStore } from '../store/view.ts';
import { drawingStore, setDrawing, useDrawing } from './store.ts';
import { moved, type Viewport, viewOf, zoomedAt } from './viewport.ts';

/** Moved by one press of an arrow key, px. */
const keyMove = 40;
/** Zoom of one key press. */
const keyZoom = 1.4;

/** The view and the ways to change it. */
export interface ViewportTools {
  readonly view: Viewport;
  zoomBy(factor: number, at?: { readonly x: number; readonly y: number }): void;
  moveBy(dx: number, dy: number): void;
}

/** Follows requests to look at a place, those made before the drawing was opened too. */
function useFlights(revision: Revision, size: BoxSize): void {
  const flight = useView((state) => state.flight);
  useEffect(() => {
    if (size.width === 0 || drawingStore.getState().flight === flight.count) return;
    setDrawing({ flight: flight.count, view: flight.to === 'whole' ? null : viewOf(flight.to, revision, size) });
  }, [flight, revision, size]);
}

/** The wheel zooms about the pointer; React's own listener could not keep the page from scrolling. */
function useWheel(box: RefObject<HTMLDivElement | null>, zoomBy: ViewportTools['zoomBy']): void {
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const onWheel = (event: WheelEvent) => {
      event.preventDefault();
      const { left, top } = element.getBoundingClientRect();
      zoomBy(Math.exp(-event.deltaY * 0.0016), { x: event.clientX - left, y: event.clientY - top });
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  }, [box, zoomBy]);
}

/** The view of a revision in a box. */
export function useViewport(revision: Revision, size: BoxSize, box: RefObject<HTMLDivElement | null>): ViewportTools {
  const chosen = useDrawing((state) => state.view);
  const fitted = useMemo(() => viewOf('whole', revision, size), [revision, size]);
  const view = chosen ?? fitted;
  useFlights(revision, size);
  const zoomBy = useCallback<ViewportTools['zoomBy']>(
    (factor, at = { x: size.width / 2, y: size.height / 2 }) =>
      setDrawing({ view: zoomedAt(drawingStore.getState().view ?? fitted, factor, at, size) }),
    [fitted, size],
  );
  const moveBy = useCallback(
    (dx: number, dy: number) => setDrawing({ view: moved(drawingStore.getState().view ?? fitted, dx, dy) }),
    [fitted],
  );
  useWheel(box, zoomBy);
  return { view, zoomBy, moveBy };
}

/** Keys of the drawing itself: arrows move, plus and minus zoom, 0 fits. Answers whether the key was one of them. */
export function viewKey(key: string, { zoomBy, moveBy }: ViewportTools): boolean {
  const moves: Readonly<Record<string, readonly [number, number]>> = {
    ArrowLeft: [keyMove, 0],
    ArrowRight: [-keyMove, 0],
    ArrowUp: [0, keyMove],
    ArrowDown: [0, -keyMove],
  };
  if (moves[key]) moveBy(...moves[key]);
  else if (key === '+' || key === '=') zoomBy(keyZoom);
  else if (key === '-') zoomBy(1 / keyZoom);
  else if (key === '0') setDrawing({ view: null, flight: viewStore.getState().flight.count });
  else return false;
  return true;
}
