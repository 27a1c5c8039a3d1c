/** Making a plot that zooms along x, whichever way the zoom is asked for. */

import uPlot from 'uplot';
import { keptRange, type Range, zoomShares } from './plotZoom.ts';

/** What the chart keeps of its zoom. */
export interface ZoomHold {
  /** shown range; null: the whole */
  current: Range | null;
  /** the whole range, as last computed */
  whole: Range | null;
  set(range: Range | null): void;
}

type RangeOf = (plot: uPlot, min: number, max: number, key: string) => uPlot.Range.MinMax;

/** A single place gets room on both sides: over no width uPlot would count in steps too small to move, without end. */
function withWidth(min: number, max: number): uPlot.Range.MinMax {
  if (min !== max || typeof min !== 'number') return [min, max];
  const room = Math.abs(min) * 0.05 || 1;
  return [min - room, max + room];
}

/** The range of the options, or what the plot would take by itself. */
function wholeRange({ range, distr }: uPlot.Scale): RangeOf {
  if (typeof range === 'function') return range as RangeOf;
  if (Array.isArray(range)) return () => range as uPlot.Range.MinMax;
  return (_plot, min, max) => (distr === 3 ? uPlot.rangeLog(min, max, 10, false) : withWidth(min, max));
}

function zoomingScale(scale: uPlot.Scale, hold: ZoomHold): uPlot.Scale {
  const whole = wholeRange(scale);
  return {
    ...scale,
    range: (plot, min, max, key) => {
      const xs = plot.data[0];
      const full = whole(plot, xs[0] ?? min, xs.at(-1) ?? max, key);
      const [from, to] = full;
      hold.whole = typeof from === 'number' && typeof to === 'number' ? [from, to] : null;
      const kept = hold.current && hold.whole ? keptRange(hold.current, hold.whole) : null;
      return kept ? [...kept] : full;
    },
  };
}

/** Takes a dragged stretch over as the new range. */
function takeSelection(plot: uPlot, hold: ZoomHold): void {
  const { left, width } = plot.select;
  if (width < 5 || !hold.whole) return;
  const range = keptRange([plot.posToVal(left, 'x'), plot.posToVal(left + width, 'x')], hold.whole);
  plot.setSelect({ left: 0, top: 0, width: 0, height: 0 }, false);
  if (range) hold.set(range);
}

/** The options with zooming put in. */
export function zoomingOptions(options: uPlot.Options, hold: ZoomHold): uPlot.Options {
  const { scales = {}, hooks = {}, cursor = {} } = options;
  return {
    ...options,
    scales: { ...scales, x: zoomingScale(scales.x ?? { time: false }, hold) },
    cursor: {
      ...cursor,
      drag: { x: true, y: false, setScale: false },
      bind: {
        ...cursor.bind,
        dblclick: () => () => {
          hold.set(null);
          return null;
        },
      },
    },
    hooks: { ...hooks, setSelect: [...(hooks.setSelect ?? []), (plot) => takeSelection(plot, hold)] },
  };
}

/** One step in or out about the middle of what is shown; by pixels, so that logarithmic axes zoom evenly. */
export function zoomStep(plot: uPlot, hold: ZoomHold, way: 'in' | 'out'): void {
  if (!hold.whole) return;
  const width = plot.bbox.width / uPlot.pxRatio;
  const [a, b] = zoomShares[way];
  hold.set(keptRange([plot.posToVal(a * width, 'x'), plot.posToVal(b * width, 'x')], hold.whole));
}

/** Moves the reading by a share of the width; begins in the middle. */
export function moveReading(plot: uPlot, share: number): void {
  const width = plot.bbox.width / uPlot.pxRatio;
  const { left } = plot.cursor;
  const from = left === undefined || left < 0 ? width / 2 : left;
  plot.setCursor({
    left: Math.min(width, Math.max(0, from + share * width)),
    top: plot.bbox.height / uPlot.pxRatio / 2,
  });
}
