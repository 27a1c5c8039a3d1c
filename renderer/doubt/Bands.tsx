/** Output over screw speed with the band that the ranges leave. */

import { useMemo } from 'react';
import type uPlot from 'uplot';
import { type DoubtSummary, formatNumber, fromSi } from '../../core/index.ts';
import { axis, Chart, type Ink } from '../plots/Chart.tsx';
import { doubtText } from '../strings/doubt.ts';

const words = doubtText.curve;

/** Columns: rpm, then mm³/s as stated, at 5, 50 and 95 %. */
function bandData({ speed, nominal, q05, q50, q95 }: DoubtSummary['curve']): uPlot.AlignedData {
  const flow = (values: Float64Array) =>
    Array.from(values, (value) => (Number.isFinite(value) ? fromSi(value, 'mm³/s') : null));
  return [Array.from(speed, (value) => fromSi(value, 'rpm')), flow(nominal), flow(q05), flow(q50), flow(q95)];
}

function options(ink: Ink): Omit<uPlot.Options, 'width' | 'height'> {
  const colour = ink.series[0] ?? ink.text;
  const shown = (unit: string) => (_: uPlot, value: number | null) =>
    value === null ? '' : `${formatNumber(value, 3)} ${unit}`;
  const line = (label: string, more: uPlot.Series): uPlot.Series => ({
    label,
    stroke: colour,
    width: 1,
    points: { show: false },
    value: shown('mm³/s'),
    ...more,
  });
  return {
    scales: { x: { time: false }, y: { range: (_u, _min, max) => [0, max > 0 ? max * 1.08 : 1] } },
    axes: [axis(ink, `${words.speed}, rpm`, { size: 26 }), axis(ink, `${words.flow}, mm³/s`, { size: 44 })],
    series: [
      { label: words.speed, value: shown('rpm') },
      line(words.nominal, { width: 2.5, stroke: ink.series[1] ?? colour }),
      line(words.q05, { dash: [2, 3] }),
      line(words.q50, { width: 2 }),
      line(words.q95, { dash: [2, 3] }),
    ],
    bands: [{ series: [4, 2], fill: `${colour}26` }],
    legend: { live: true },
    cursor: { drag: { x: false, y: false } },
  };
}

/** The chart; nothing where the drive has no curve. */
export function Bands({ curve }: { readonly curve: DoubtSummary['curve'] }) {
  const data = useMemo(() => bandData(curve), [curve]);
  if (curve.speed.length < 2) return null;
  return (
    <section className="sweep" aria-label={words.title}>
      <h2>{words.title}</h2>
      <Chart label={words.title} data={data} options={options} height={260} />
    </section>
  );
}
