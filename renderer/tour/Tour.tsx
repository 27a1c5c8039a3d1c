/** The guided tour: a card beside each part of the window in turn. Nothing is blocked meanwhile. */

import { type KeyboardEvent, type RefObject, useEffect, useLayoutEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { tourText } from '../strings/tour.ts';
import { type Box, placeCard } from './place.ts';
import { type Stop, stops } from './stops.ts';
import { leaveTour, moveTour, useTour } from './store.ts';

/** The box of what a stop speaks of, followed while the window changes. */
function useTarget({ target }: Stop): Box | null {
  const [box, setBox] = useState<Box | null>(null);
  useLayoutEffect(() => {
    const element = target ? document.querySelector(target) : null;
    element?.scrollIntoView({ block: 'nearest' });
    const measure = () => setBox(element ? element.getBoundingClientRect() : null);
    measure();
    if (!element) return;
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    window.addEventListener('resize', measure);
    document.addEventListener('scroll', measure, true);
    return () => {
      observer.disconnect();
      window.removeEventListener('resize', measure);
      document.removeEventListener('scroll', measure, true);
    };
  }, [target]);
  return box;
}

/** Puts the card beside the box; through the element, as the policy refuses style text. */
function usePlaced(card: RefObject<HTMLElement | null>, frame: RefObject<HTMLElement | null>, box: Box | null) {
  useLayoutEffect(() => {
    const element = card.current;
    if (!element) return;
    const size = { width: element.offsetWidth, height: element.offsetHeight };
    const place = placeCard(box, size, { width: window.innerWidth, height: window.innerHeight });
    Object.assign(element.style, { left: `${place.left}px`, top: `${place.top}px` });
    if (!frame.current || !box) return;
    const { left, top, width, height } = box;
    const edges = { left: `${left}px`, top: `${top}px`, width: `${width}px`, height: `${height}px` };
    Object.assign(frame.current.style, edges);
  });
}

/** How far the tour is, and where it may go from here. */
function Steps({ at }: { readonly at: number }) {
  const last = at === stops.length - 1;
  return (
    <footer>
      <span className="quiet">{tourText.count(at + 1, stops.length)}</span>
      {!last && (
        <Button className="tool" onPress={leaveTour}>
          {tourText.leave}
        </Button>
      )}
      {at > 0 && (
        <Button className="tool" onPress={() => moveTour(-1)}>
          {tourText.back}
        </Button>
      )}
      <Button className="tool main" onPress={() => moveTour(1)}>
        {last ? tourText.done : tourText.next}
      </Button>
    </footer>
  );
}

function Card({ at, stop }: { readonly at: number; readonly stop: Stop }) {
  const card = useRef<HTMLElement>(null);
  const frame = useRef<HTMLDivElement>(null);
  const box = useTarget(stop);
  usePlaced(card, frame, box);
  // biome-ignore lint/correctness/useExhaustiveDependencies: each stop is read from its beginning
  useEffect(() => card.current?.focus(), [at]);
  const { title, text } = tourText.stops[stop.id];
  const onKeyDown = (event: KeyboardEvent) => {
    if (event.key !== 'Escape') return;
    event.stopPropagation();
    leaveTour();
  };
  return (
    <>
      {box && <div className="tour-frame" ref={frame} aria-hidden="true" />}
      <aside
        className="tour-card"
        ref={card}
        tabIndex={-1}
        aria-label={`${tourText.title}: ${title}`}
        aria-describedby="tour-text"
        onKeyDown={onKeyDown}
      >
        <h2>{title}</h2>
        <p id="tour-text">{text}</p>
        <Steps at={at} />
      </aside>
    </>
  );
}

/** The card of the stop shown, if any. */
export function Tour() {
  const at = useTour();
  const stop = at === null ? undefined : stops[at];
  if (at === null || !stop) return null;
  return <Card at={at} stop={stop} />;
}
