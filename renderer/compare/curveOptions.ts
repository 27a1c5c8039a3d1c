/** Lines, axes, readout and letters of a plot of several revisions. */

import type uPlot from 'uplot';
import { formatNumber } from '../look.ts';
import { axis, type Ink } from '../plots/Chart.tsx';
import { timeAxis } from '../plots/residenceMarks.ts';
import type { ComparedCurves } from './curveData.ts';
import { dashOf } from './marks.tsx';

/** Index of the point at which a line carries its letter: each at another share of its own stretch. */
export function letterAt(y: readonly (number | null)[], place: number, count: number): number {
  const there = y.flatMap((value, i) => (value === null ? [] : [i]));
  const share = 0.35 + (0.5 * (place + 0.5)) / Math.max(1, count);
  return there[Math.min(there.length - 1, Math.floor(share * there.length))] ?? -1;
}

/** The letters of the lines, on small grounds so that they can be read over them. */
function drawLetters(plot: uPlot, ink: Ink, ground: string): void {
  const { ctx } = plot;
  const size = 12 * devicePixelRatio;
  const lines = plot.series.slice(1);
  ctx.save();
  ctx.font = `bold ${size}px system-ui, sans-serif`;
  ctx.textAlign = 'center';
  ctx.textBaseline = 'middle';
  lines.forEach((series, place) => {
    const values = plot.data[place + 1] ?? [];
    const at = letterAt(
      Array.from(values, (value) => value ?? null),
      place,
      lines.length,
    );
    const [x, y] = [plot.data[0][at], values[at]];
    if (x === undefined || y === null || y === undefined) return;
    const [left, top] = [plot.valToPos(x, 'x', true), plot.valToPos(y, 'y', true)];
    const label = String(series.label);
    const half = ctx.measureText(label).width / 2 + 3 * devicePixelRatio;
    ctx.fillStyle = ground;
    ctx.fillRect(left - half, top - size * 0.65, 2 * half, size * 1.3);
    ctx.fillStyle = ink.series[place] ?? ink.text;
    ctx.fillText(label, left, top);
  });
  ctx.restore();
}

const spaced = (unit: string): string => (unit === '' ? '' : ` ${unit}`);
const named = (label: string, unit: string): string => (unit === '' ? label : `${label}, ${unit}`);

/** From the first to the last time, so that no decade is shown half empty. */
const endsOf = (_: uPlot, min: number, max: number): [number, number] => [min, max];

/** The options of a plot; they change with its lines and units, not with its data. */
export function curveOptions(curves: ComparedCurves, ids: readonly string[], places: readonly number[]) {
  const { xLabel, xUnit, yLabel, yUnit, logarithmic, fromZero } = curves;
  const shown = (unit: string) => (_: uPlot, value: number | null) =>
    value === null ? '' : `${formatNumber(value, 3)}${spaced(unit)}`;
  return (ink: Ink): Omit<uPlot.Options, 'width' | 'height'> => ({
    scales: {
      x: { time: false, ...(logarithmic ? { distr: 3 as const, range: endsOf } : {}) },
      y: fromZero ? { range: (_u, _min, max) => [0, max > 0 ? max * 1.08 : 1] } : {},
    },
    axes: [
      axis(ink, named(xLabel, xUnit), { size: 26, ...(logarithmic ? timeAxis : {}) }),
      axis(ink, named(yLabel, yUnit), { size: 50 }),
    ],
    series: [
      { label: xLabel, value: shown(xUnit) },
      ...ids.map((id, i): uPlot.Series => {
        const place = places[i] ?? i;
        const dash = dashOf(place);
        const stroke = ink.series[place];
        return {
          label: id,
          ...(stroke ? { stroke } : {}),
          ...(dash.length > 0 ? { dash: [...dash] } : {}),
          width: 2.2,
          points: { show: false },
          value: shown(yUnit),
        };
      }),
    ],
    legend: { live: true },
    cursor: { drag: { x: false, y: false } },
    hooks: {
      draw: [
        (plot) =>
          drawLetters(plot, { ...ink, series: places.map((place) => ink.series[place] ?? ink.text) }, groundOf(plot)),
      ],
    },
  });
}

/** The colour behind the plot. */
const groundOf = (plot: uPlot): string => getComputedStyle(plot.root).getPropertyValue('--pane').trim();
