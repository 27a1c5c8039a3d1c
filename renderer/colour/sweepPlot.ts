/** Lines, limit and marks of a chart of colour over speed or temperature. */

import type uPlot from 'uplot';
import { type ColourSweep, formatNumber, fromSi, type Unit } from '../../core/index.ts';
import { axis, type Ink } from '../plots/Chart.tsx';
import { colourText } from '../strings/colour.ts';

const words = colourText.line;

/** A marked place on the abscissa, in its display unit. */
export interface Place {
  readonly at: number;
  readonly label: string;
}

const shown =
  (unit: string) =>
  (_: uPlot, value: number | null): string =>
    value === null ? '' : `${formatNumber(value, 3)}${unit ? ` ${unit}` : ''}`;

/** Columns: place, mean, worst, ends of the mean, limit. */
export function sweepData({ points, acceptable }: ColourSweep, unit: Unit): uPlot.AlignedData {
  return [
    points.map(({ at }) => fromSi(at, unit)),
    points.map(({ dE00Mean }) => dE00Mean),
    points.map(({ dE00Worst }) => dE00Worst),
    points.map(({ dE00MeanLow }) => dE00MeanLow),
    points.map(({ dE00MeanHigh }) => dE00MeanHigh),
    points.map(() => acceptable),
  ];
}

/** Marks a place with a dashed line; labels of several stand below each other, the least before its line where there is room. */
function drawPlaces(plot: uPlot, places: readonly Place[], ink: Ink): void {
  const { ctx, bbox } = plot;
  ctx.save();
  ctx.strokeStyle = ink.mark;
  ctx.fillStyle = ink.mark;
  ctx.font = `${12 * devicePixelRatio}px system-ui, sans-serif`;
  const least = places.length > 1 ? Math.min(...places.map(({ at }) => at)) : Number.NaN;
  const share = (at: number) => (at === least ? 0.25 : places.length > 1 ? 0.8 : 0.6);
  places.forEach(({ at, label }, i) => {
    const x = Math.round(plot.valToPos(at, 'x', true)) + 0.5;
    if (!(x >= bbox.left && x <= bbox.left + bbox.width)) return;
    ctx.setLineDash(i === 0 ? [4, 4] : [1, 3]);
    ctx.beginPath();
    ctx.moveTo(x, bbox.top);
    ctx.lineTo(x, bbox.top + bbox.height);
    ctx.stroke();
    const right = x > bbox.left + share(at) * bbox.width;
    ctx.textAlign = right ? 'right' : 'left';
    ctx.fillText(label, x + (right ? -5 : 5), bbox.top + (13 + 15 * i) * devicePixelRatio);
  });
  ctx.restore();
}

/** Axes, lines and readout. */
export function sweepOptions(label: string, unit: Unit, places: readonly Place[]) {
  return (ink: Ink): Omit<uPlot.Options, 'width' | 'height'> => {
    const [mean, worst] = ink.series;
    const line = (name: string, stroke: string, more: uPlot.Series = {}): uPlot.Series => ({
      label: name,
      stroke,
      width: 1.5,
      value: shown(''),
      points: { show: true, size: 5 },
      ...more,
    });
    const end = { width: 1, dash: [2, 3], points: { show: false } };
    return {
      scales: { x: { time: false }, y: { range: (_u, _min, max) => [0, max > 0 ? max * 1.08 : 1] } },
      axes: [axis(ink, label, { size: 26 }), axis(ink, 'ΔE00', { size: 40 })],
      series: [
        { label, value: shown(unit) },
        line(words.mean, mean ?? ink.text, { width: 2.5 }),
        line(words.worst, worst ?? ink.text, { dash: [8, 3] }),
        line(words.low, mean ?? ink.text, end),
        line(words.high, mean ?? ink.text, end),
        line(words.limit, ink.good, { dash: [10, 4, 2, 4], points: { show: false } }),
      ],
      bands: [{ series: [4, 3], fill: `${mean}22` }],
      legend: { live: true },
      cursor: { drag: { x: false, y: false } },
      hooks: { draw: [(plot) => drawPlaces(plot, places, ink)] },
    };
  };
}
