/** Looking closer at the cross-section: wheel, buttons, keys and dragging. */

import { type KeyboardEvent, type RefObject, useEffect, useMemo, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { StationSection } from '../../core/index.ts';
import { meltText } from '../strings/melt.ts';
import { enlarged, mostZoom, type SectionLayout, type SectionView, wholeSection, zoomedView } from './sectionLayout.ts';

const words = meltText.across;

/** Pixel of a pointer in the picture. */
export const pixelOf = (event: {
  clientX: number;
  clientY: number;
  currentTarget: Element;
}): readonly [number, number] => {
  const box = event.currentTarget.getBoundingClientRect();
  return [event.clientX - box.left, event.clientY - box.top];
};

/** Zoom by wheel, buttons and keys, and moving what is shown by dragging. */
export function useSectionView(section: StationSection, layout: SectionLayout) {
  const [view, setView] = useState<SectionView>(wholeSection);
  const shown = useMemo(() => enlarged(layout, view), [layout, view]);
  const middle = { x: 0, depth: Math.max(...section.depth) / 2 };
  const placeAt = ([px, py]: readonly [number, number]) => ({
    x: (px - shown.x(0)) / shown.perMetre,
    depth: (py - shown.y(0)) / shown.perMetre,
  });
  return {
    view,
    shown,
    zoom: (factor: number, at?: readonly [number, number]) =>
      setView((now) => {
        const start = now.zoom === 1 ? { zoom: 1, ...middle } : now;
        return zoomedView(start, factor, at ? placeAt(at) : { x: start.x, depth: start.depth });
      }),
    whole: () => setView(wholeSection),
    move: (dx: number, dy: number) =>
      setView((now) => ({ ...now, x: now.x - dx / shown.perMetre, depth: now.depth - dy / shown.perMetre })),
  };
}

/** What moves the view of a section. */
export type SectionHand = ReturnType<typeof useSectionView>;

/** Buttons for those without a wheel. */
export function ZoomButtons({ hand }: { readonly hand: SectionHand }) {
  const tools = [
    ['+', words.zoomIn, () => hand.zoom(1.5), hand.view.zoom >= mostZoom],
    ['−', words.zoomOut, () => hand.zoom(1 / 1.5), hand.view.zoom === 1],
    ['1:1', words.whole, hand.whole, hand.view.zoom === 1],
  ] as const;
  return (
    <div className="across-zoom">
      {tools.map(([sign, label, act, off]) => (
        <Button key={sign} className="tool" aria-label={label} isDisabled={off} onPress={act}>
          <span aria-hidden="true" title={label}>
            {sign}
          </span>
        </Button>
      ))}
    </div>
  );
}

/** Steps of the reading by arrow keys: rows lie next to each other in a column's numbers. */
function steppedNode({ columns, rows }: StationSection, node: number | null, key: string): number | null {
  const from = node ?? Math.floor(columns / 2) * rows + Math.floor(rows / 2);
  const [i, j] = [Math.floor(from / rows), from % rows];
  const held = (value: number, count: number) => Math.min(count - 1, Math.max(0, value));
  const at = (column: number, row: number) => held(column, columns) * rows + held(row, rows);
  const steps: Record<string, number> = {
    ArrowLeft: at(i - 1, j),
    ArrowRight: at(i + 1, j),
    ArrowUp: at(i, j - 1),
    ArrowDown: at(i, j + 1),
  };
  return steps[key] ?? null;
}

/** What is read. */
interface Read {
  readonly section: StationSection;
  readonly node: number | null;
  onPoint(node: number | null): void;
}

/** What keys do: arrows read, plus and minus zoom, 0 shows the whole. */
export function pressed(event: KeyboardEvent, { section, node, onPoint }: Read, hand: SectionHand): void {
  if (event.ctrlKey || event.metaKey || event.altKey) return;
  const next = steppedNode(section, node, event.key);
  if (next !== null) onPoint(next);
  else if (event.key === '+' || event.key === '=') hand.zoom(1.5);
  else if (event.key === '-') hand.zoom(1 / 1.5);
  else if (event.key === '0' || event.key === 'Home') hand.whole();
  else return;
  event.preventDefault();
}

/** The wheel enlarges while Ctrl is held, so that the panel scrolls otherwise; listened to here, since React's own listeners cannot stop the page. */
export function useWheel(canvas: RefObject<HTMLCanvasElement | null>, hand: SectionHand): void {
  const latest = useRef(hand);
  latest.current = hand;
  useEffect(() => {
    const element = canvas.current;
    if (!element) return;
    const onWheel = (event: WheelEvent) => {
      if (!event.ctrlKey && !event.metaKey) return;
      event.preventDefault();
      const box = element.getBoundingClientRect();
      latest.current.zoom(event.deltaY < 0 ? 1.25 : 0.8, [event.clientX - box.left, event.clientY - box.top]);
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  }, [canvas]);
}
