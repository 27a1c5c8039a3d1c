/** A uPlot chart that follows its box, its data and the theme. */

import { type KeyboardEvent, useEffect, useMemo, useRef, useState } from 'react';
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import { useRootLook } from '../store/look.ts';
import { useView } from '../store/view.ts';
import { plotText } from '../strings/plots.ts';
import { type PlotActs, PlotMenu } from './PlotMenu.tsx';
import { copyData, copyPicture } from './plotCopy.ts';
import { moveReading, type ZoomHold, zoomingOptions, zoomStep } from './plotHandle.ts';
import { columnNames } from './plotTable.ts';
import type { Range } from './plotZoom.ts';

/** Colours of plots, read from the style sheet so that both themes fit. */
export interface Ink {
  readonly text: string;
  readonly grid: string;
  readonly series: readonly string[];
  readonly mark: string;
  readonly good: string;
  readonly goodSoft: string;
}

/** Reads the colours where an element stands. */
export function readInk(element: Element): Ink {
  const style = getComputedStyle(element);
  const colour = (name: string) => style.getPropertyValue(name).trim();
  return {
    text: colour('--ink-soft'),
    grid: colour('--plot-grid') || colour('--line'),
    series: [1, 2, 3, 4, 5, 6, 7].map((n) => colour(`--series-${n}`)),
    mark: colour('--mark'),
    good: colour('--good'),
    goodSoft: colour('--good-soft'),
  };
}

/** Stands in where only names are wanted. */
const plainInk: Ink = { text: '', grid: '', series: [], mark: '', good: '', goodSoft: '' };

/** Markers of the legend are pieces of the line, broken where it is. */
const legendMarkers: uPlot.Legend.Markers = {
  // half of the line above and half below the middle
  width: (plot, index) => (plot.series[index]?.width ?? 2) / 2,
  dash: (plot, index) => (plot.series[index]?.dash ? 'dashed' : 'solid'),
};

/** Height of the charts beside the figures, px. */
export const curveHeight = 230;

/** What a chart draws. `options` must be stable between renders that only change data. */
export interface ChartProps {
  readonly label: string;
  readonly data: uPlot.AlignedData;
  options(ink: Ink): Omit<uPlot.Options, 'width' | 'height'>;
  /** height of the plot without its legend, px; the box's own height where left out */
  readonly height?: number;
  /** names of the data's columns with their units, where the axes do not say them */
  readonly columns?: readonly string[];
  /** the zoom where views share it; else the chart keeps its own */
  readonly zoom?: Range | null;
  onZoom?(range: Range | null): void;
}

/** The plot in its box, made anew for new options, colours or height. */
function usePlot({ data, options, height }: ChartProps, hold: ZoomHold) {
  const box = useRef<HTMLDivElement>(null);
  const plot = useRef<uPlot | null>(null);
  const latest = useRef(data);
  latest.current = data;
  const look = useRootLook();
  const theme = useView((state) => state.theme);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the theme and look change the colours that readInk reads
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const sized = () => ({
      width: Math.max(80, element.clientWidth),
      height: height ?? Math.max(60, element.clientHeight),
    });
    const drawn = options(readInk(element));
    const legend = { ...drawn.legend, markers: legendMarkers };
    const made = new uPlot(zoomingOptions({ ...drawn, legend, ...sized() }, hold), latest.current, element);
    plot.current = made;
    const observer = new ResizeObserver(() => made.setSize(sized()));
    observer.observe(element);
    return () => {
      observer.disconnect();
      made.destroy();
      plot.current = null;
    };
  }, [options, theme, look, height, hold]);
  useEffect(() => plot.current?.setData(data), [data]);
  return [box, plot] as const;
}

/** The zoom as the plot reads it: shared, or the chart's own. */
function useZoom({ zoom, onZoom }: ChartProps): readonly [ZoomHold, Range | null] {
  const [own, setOwn] = useState<Range | null>(null);
  const current = onZoom ? (zoom ?? null) : own;
  const tell = useRef(onZoom ?? setOwn);
  tell.current = onZoom ?? setOwn;
  const hold = useMemo<ZoomHold>(() => ({ current: null, whole: null, set: (range) => tell.current(range) }), []);
  hold.current = current;
  return [hold, current];
}

/** What a key does to a plot; arrows move the reading by `step` of the width. */
function actOf(key: string, step: number): ((plot: uPlot, hold: ZoomHold) => void) | null {
  switch (key) {
    case '+':
    case '=':
      return (plot, hold) => zoomStep(plot, hold, 'in');
    case '-':
      return (plot, hold) => zoomStep(plot, hold, 'out');
    case '0':
    case 'Home':
      return (_, hold) => hold.set(null);
    case 'ArrowLeft':
      return (plot) => moveReading(plot, -step);
    case 'ArrowRight':
      return (plot) => moveReading(plot, step);
    default:
      return null;
  }
}

/** Keys while the plot has the focus: plus, minus, 0, arrows. */
function onKey(event: KeyboardEvent, plot: uPlot | null, hold: ZoomHold): void {
  if (!plot || event.ctrlKey || event.metaKey || event.altKey) return;
  const act = actOf(event.key, event.shiftKey ? 0.1 : 0.01);
  if (!act) return;
  event.preventDefault();
  act(plot, hold);
}

/** The chart; its box decides its width. */
export function Chart(props: ChartProps) {
  const { label, data, options, columns } = props;
  const [hold, zoom] = useZoom(props);
  const [box, plot] = usePlot(props, hold);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new zoom needs the ranges computed anew
  useEffect(() => plot.current?.setData(plot.current.data), [zoom, plot]);
  const names = () => columns ?? columnNames(options(plainInk));
  const acts: PlotActs = {
    zoomed: zoom !== null,
    zoomIn: () => plot.current && zoomStep(plot.current, hold, 'in'),
    zoomOut: () => plot.current && zoomStep(plot.current, hold, 'out'),
    whole: () => hold.set(null),
    copyPicture: () => plot.current && void copyPicture(plot.current, label, names()),
    copyData: () => void copyData(label, names(), data),
  };
  return (
    <div className="chart-frame">
      {/* biome-ignore lint/a11y/useSemanticElements: a plot is no set of fields */}
      <div
        className="chart"
        ref={box}
        role="group"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: keys zoom the plot and read it
        tabIndex={0}
        aria-label={label}
        aria-roledescription={plotText.roll}
        data-zoomed={zoom !== null}
        onKeyDown={(event) => onKey(event, plot.current, hold)}
      />
      <PlotMenu name={label} acts={acts} />
    </div>
  );
}

/** An axis with label and unit. */
export function axis(ink: Ink, label: string, more: uPlot.Axis = {}): uPlot.Axis {
  const font = '12px system-ui, sans-serif';
  return {
    label,
    labelFont: font,
    labelSize: 18,
    labelGap: 0,
    font,
    stroke: ink.text,
    grid: { stroke: ink.grid, width: 1 },
    ticks: { stroke: ink.grid, width: 1, size: 4 },
    gap: 3,
    ...more,
  };
}
