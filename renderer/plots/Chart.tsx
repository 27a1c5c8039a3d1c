/** A uPlot chart that follows its box, its data and the theme. */

import { useEffect, useRef } from 'react';
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import { useView } from '../store/view.ts';

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
    grid: colour('--line'),
    series: [1, 2, 3, 4, 5, 6, 7].map((n) => colour(`--series-${n}`)),
    mark: colour('--mark'),
    good: colour('--good'),
    goodSoft: colour('--good-soft'),
  };
}

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
}

/** The chart; its box decides its width. */
export function Chart({ label, data, options, height }: ChartProps) {
  const box = useRef<HTMLDivElement>(null);
  const plot = useRef<uPlot | null>(null);
  const latest = useRef(data);
  latest.current = data;
  const theme = useView((state) => state.theme);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the theme changes the colours that readInk reads
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const sized = () => ({
      width: Math.max(80, element.clientWidth),
      height: height ?? Math.max(60, element.clientHeight),
    });
    const drawn = options(readInk(element));
    const legend = { ...drawn.legend, markers: legendMarkers };
    const made = new uPlot({ ...drawn, legend, ...sized() }, latest.current, element);
    plot.current = made;
    const observer = new ResizeObserver(() => made.setSize(sized()));
    observer.observe(element);
    return () => {
      observer.disconnect();
      made.destroy();
      plot.current = null;
    };
  }, [options, theme, height]);
  useEffect(() => plot.current?.setData(data), [data]);
  return <div className="chart" ref={box} role="img" aria-label={label} />;
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
