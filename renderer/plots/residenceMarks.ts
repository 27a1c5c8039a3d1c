/** Landmarks of the residence times, drawn over the curves. */

import type uPlot from 'uplot';
import type { Prediction } from '../../core/index.ts';
import { meltText } from '../strings/melt.ts';
import type { Ink } from './Chart.tsx';

/** A time and its short name. */
export interface TimeMark {
  readonly name: string;
  /** s */
  readonly time: number;
}

const words = meltText.residence;

/** Curves that get the landmarks. */
export const timeCurves = ['residence', 'leaving'];

/** Landmarks of a prediction in order of time; those that are no numbers are left out. */
export function timeMarks({ residence }: Prediction): TimeMark[] {
  const { min, mean, t50, t95, t99, washout999 } = residence;
  const times = { min, t50, mean, t95, t99, washout: washout999 };
  return (Object.keys(times) as (keyof typeof times)[])
    .map((key) => ({ name: words[key], time: times[key] }))
    .filter(({ time }) => Number.isFinite(time) && time > 0)
    .sort((a, b) => a.time - b.time);
}

/** Round times (1, 2, 5 times a power of ten) from `first` to `last`, for a logarithmic axis. */
export function roundTimes(first: number, last: number): number[] {
  const times: number[] = [];
  for (let power = Math.floor(Math.log10(first)); power <= Math.log10(last); power++) {
    for (const step of [1, 2, 5]) {
      const time = Number((step * 10 ** power).toPrecision(3));
      if (time >= first && time <= last) times.push(time);
    }
  }
  return times;
}

/** Marks at round times; the plot's own logarithmic ones thin out to none over a short range. */
export const timeAxis: uPlot.Axis = {
  splits: (_u, _axis, min, max) => roundTimes(min, max),
  filter: (_u, splits) => splits,
  values: (_u, splits) => splits.map(String),
};

/** Lines of text above the curves. */
const markRows = 3;

/** Height of one, px. */
const rowHeight = 13;

/** Room that the names take above the curves, as a factor on the largest value in a plot `height` px high. */
export const roomAbove = (height: number): number => height / (height - (markRows * rowHeight + 6));

/** Draws lines and names, the names on rows in turn so that close ones do not cover each other. */
export function drawTimeMarks(plot: uPlot, marks: readonly TimeMark[], ink: Ink): void {
  const { ctx, bbox } = plot;
  const ratio = devicePixelRatio;
  ctx.save();
  ctx.font = `${11 * ratio}px system-ui, sans-serif`;
  ctx.lineWidth = ratio;
  ctx.setLineDash([2 * ratio, 3 * ratio]);
  ctx.strokeStyle = ink.mark;
  ctx.fillStyle = ink.text;
  marks.forEach(({ name, time }, index) => {
    const x = Math.round(plot.valToPos(time, 'x', true)) + 0.5;
    if (x < bbox.left || x > bbox.left + bbox.width + 1) return;
    const y = bbox.top + (11 + rowHeight * (index % markRows)) * ratio;
    const fits = x + ctx.measureText(name).width + 4 * ratio < bbox.left + bbox.width;
    ctx.textAlign = fits ? 'left' : 'right';
    ctx.beginPath();
    ctx.moveTo(x, y - 9 * ratio);
    ctx.lineTo(x, bbox.top + bbox.height);
    ctx.stroke();
    ctx.fillText(name, x + (fits ? 3 : -3) * ratio, y);
  });
  ctx.restore();
}
