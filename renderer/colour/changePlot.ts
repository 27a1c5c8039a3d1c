/** Old melt in the output over time, shares on a logarithmic axis. */

import type uPlot from 'uplot';
import { type ChangeOver, formatNumber, formatQuantity } from '../../core/index.ts';
import { axis, type Ink } from '../plots/Chart.tsx';
import { colourText } from '../strings/colour.ts';

const words = colourText.change;

/** Least share that is drawn. */
const floor = 1e-4;

/** Columns: minutes, share of old melt (null below the axis), and shares of 1 % and 0.1 %. */
export function changeData({ time, oldShare, knownShare }: ChangeOver): uPlot.AlignedData {
  const kept = Array.from(time.keys()).filter((i) => oldShare[i] >= Math.max(floor, 1 - knownShare));
  // until the quickest melt arrives, all is old
  const minutes = [0, ...kept.map((i) => time[i] / 60)];
  return [minutes, [1, ...kept.map((i) => oldShare[i])], minutes.map(() => 0.01), minutes.map(() => 0.001)];
}

/** Axes, lines and readout. */
export function changeOptions(ink: Ink): Omit<uPlot.Options, 'width' | 'height'> {
  const share = (_: uPlot, value: number | null) => (value === null ? '' : formatQuantity(value, '%', 2));
  const guide = (label: string): uPlot.Series => ({
    label,
    stroke: ink.good,
    width: 1,
    dash: [8, 4],
    points: { show: false },
    value: share,
  });
  return {
    scales: { x: { time: false }, y: { distr: 3, range: [floor, 1] } },
    axes: [
      axis(ink, `${words.time}, min`, { size: 26 }),
      axis(ink, `${words.share}, %`, {
        size: 50,
        values: (_u, splits) => splits.map((value) => (isDecade(value) ? formatNumber(100 * value, 2) : '')),
      }),
    ],
    series: [
      {
        label: words.time,
        value: (_: uPlot, value: number | null) => (value === null ? '' : `${formatNumber(value, 3)} min`),
      },
      { label: words.share, stroke: ink.series[0] ?? ink.text, width: 2.5, points: { show: false }, value: share },
      guide('1 %'),
      guide('0.1 %'),
    ],
    legend: { live: true },
    cursor: { drag: { x: false, y: false } },
  };
}

const isDecade = (value: number): boolean => Math.abs(Math.log10(value) - Math.round(Math.log10(value))) < 1e-6;
