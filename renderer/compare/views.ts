/** Where the linked views lie in their canvas, and what all of them must see. */

import type { Stretch } from '../scene/frame.ts';
import { worldPerMetre } from '../scene/frame.ts';
import type { Bounds } from '../solve/protocol.ts';

/** As many at a time; own choice: more would be too small. */
export const mostViews = 4;

/** Columns and rows for so many views: machines are long, so they stand above each other until there are four. */
export const gridOf = (count: number): { readonly columns: number; readonly rows: number } =>
  count > 3 ? { columns: 2, rows: 2 } : { columns: 1, rows: Math.max(1, count) };

/** A view's place, px from the canvas's lower left, as drawing contexts count. */
export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Places of the views, the first at the upper left. */
export function viewBoxes(count: number, width: number, height: number): ViewBox[] {
  const { columns, rows } = gridOf(count);
  const [w, h] = [width / columns, height / rows];
  return Array.from({ length: count }, (_, i) => ({
    x: (i % columns) * w,
    y: height - (Math.floor(i / columns) + 1) * h,
    width: w,
    height: h,
  }));
}

/** Parts of the machines that all views can be sent to. */
export type ViewPlace = 'whole' | 'feed' | 'outlet';

/** A machine's extent and what is added to its z, m. */
export interface Stood {
  readonly bounds: Bounds;
  readonly shift: number;
}

/** The stretch that shows a part of every machine, mm. */
export function sharedStretch(place: ViewPlace, stood: readonly Stood[]): Stretch {
  const ends = stood.map(({ bounds, shift }): readonly [number, number] => {
    const { start, end, feedStart, feedEnd, barrelEnd, radius } = bounds;
    if (place === 'feed') return [feedStart - radius + shift, feedEnd + radius + shift];
    return place === 'outlet' ? [barrelEnd - radius + shift, end + 0.3 * radius + shift] : [start + shift, end + shift];
  });
  return {
    from: Math.min(...ends.map(([from]) => from)) * worldPerMetre,
    to: Math.max(...ends.map(([, to]) => to)) * worldPerMetre,
    radius: Math.max(...stood.map(({ bounds }) => bounds.radius)) * worldPerMetre,
  };
}
