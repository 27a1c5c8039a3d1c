/** Output against screw speed: what comes out, what pumping and feed would allow, what the print asks for. */

import { useMemo } from 'react';
import type uPlot from 'uplot';
import { formatNumber, fromSi, type Prediction } from '../../core/index.ts';
import { text } from '../strings.ts';
import { axis, Chart, curveHeight, type Ink } from './Chart.tsx';

const words = text.curve;

const shown = (unit: string) => (_: uPlot, value: number | null) =>
  value === null ? '–' : `${formatNumber(value, 3)} ${unit}`;

/** Axes, lines and readout; `now` is the set speed in rpm. */
function optionsFor(now: number) {
  return (ink: Ink): Omit<uPlot.Options, 'width' | 'height'> => {
    const [out, pumping, feed, demand] = ink.series;
    const line = (label: string, stroke: string | undefined, more: uPlot.Series = {}): uPlot.Series => ({
      label,
      ...(stroke ? { stroke } : {}),
      width: 1.5,
      points: { show: false },
      value: shown('mm³/s'),
      ...more,
    });
    return {
      scales: { x: { time: false }, y: { range: (_u, _min, max) => [0, max > 0 ? max * 1.08 : 1] } },
      axes: [axis(ink, `${words.speed}, rpm`, { size: 26 }), axis(ink, `${words.flow}, mm³/s`, { size: 44 })],
      series: [
        { label: words.speed, value: shown('rpm') },
        line(words.delivered, out, { width: 3 }),
        line(words.pumping, pumping),
        line(words.feed, feed, { dash: [6, 4] }),
        line(words.demand, demand, { dash: [2, 3], width: 2 }),
      ],
      legend: { live: true },
      cursor: { drag: { x: false, y: false } },
      hooks: { draw: [(plot) => drawNow(plot, now, ink)] },
    };
  };
}

function drawNow(plot: uPlot, now: number, ink: Ink): void {
  const { ctx, bbox } = plot;
  const x = Math.round(plot.valToPos(now, 'x', true)) + 0.5;
  if (x < bbox.left || x > bbox.left + bbox.width) return;
  ctx.save();
  ctx.strokeStyle = ink.mark;
  ctx.fillStyle = ink.mark;
  ctx.setLineDash([4, 4]);
  ctx.beginPath();
  ctx.moveTo(x, bbox.top);
  ctx.lineTo(x, bbox.top + bbox.height);
  ctx.stroke();
  ctx.font = `${12 * devicePixelRatio}px system-ui, sans-serif`;
  const right = x > bbox.left + bbox.width * 0.7;
  ctx.textAlign = right ? 'right' : 'left';
  ctx.fillText(words.now, x + (right ? -5 : 5), bbox.top + 12 * devicePixelRatio);
  ctx.restore();
}

/** Flow that cannot be drawn is left out instead of stretching the axis: Infinity means that nothing binds. */
const flows = (values: Float64Array): (number | null)[] =>
  Array.from(values, (value) => (Number.isFinite(value) ? fromSi(value, 'mm³/s') : null));

/** The chart. */
export function OutputCurve({ prediction }: { readonly prediction: Prediction }) {
  const { curve, output, print } = prediction;
  const now = fromSi(output.screwSpeed, 'rpm');
  const options = useMemo(() => optionsFor(now), [now]);
  const data = useMemo<uPlot.AlignedData>(() => {
    const demand = fromSi(print.demand, 'mm³/s');
    const most = 2.5 * Math.max(demand, ...curve.volumeFlow.map((flow) => fromSi(flow, 'mm³/s')));
    const capped = (values: Float64Array) => flows(values).map((flow) => (flow !== null && flow > most ? null : flow));
    return [
      Array.from(curve.screwSpeed, (speed) => fromSi(speed, 'rpm')),
      flows(curve.volumeFlow),
      capped(curve.pumping),
      capped(curve.feed),
      Array.from(curve.screwSpeed, () => demand),
    ];
  }, [curve, print]);
  if (curve.screwSpeed.length < 2) return null;
  return (
    <section className="curve" aria-label={words.title}>
      <h2>{words.title}</h2>
      <Chart label={words.title} data={data} options={options} height={curveHeight} />
    </section>
  );
}
