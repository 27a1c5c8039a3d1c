/** Capacities against screw speed: what comes out, what each part of the machine would allow, and where it works. */

import { useMemo } from 'react';
import type uPlot from 'uplot';
import { type OutputCurve as Curve, fromSi, type Prediction } from '../../core/index.ts';
import { formatNumber, formatQuantity } from '../look.ts';
import { text } from '../strings.ts';
import { axis, Chart, curveHeight, type Ink } from './Chart.tsx';
import { workingRanges } from './workingRanges.ts';

const words = text.curve;

const shown = (unit: string) => (_: uPlot, value: number | null) =>
  value === null ? '' : `${formatNumber(value, 3)} ${unit}`;

/** Axes, lines and readout; `now` is the set speed in rpm, `works` the speeds in rpm between which the machine works. */
function optionsFor(now: number, works: readonly (readonly [number, number])[]) {
  return (ink: Ink): Omit<uPlot.Options, 'width' | 'height'> => {
    const [out, pumping, feed, melting, heater, torque, demand] = ink.series;
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
        line(words.melting, melting, { dash: [10, 3] }),
        line(words.heater, heater, { dash: [9, 3, 2, 3] }),
        line(words.torque, torque, { dash: [4, 2, 1, 2] }),
        line(words.demand, demand, { dash: [2, 3], width: 2 }),
      ],
      legend: { live: true },
      hooks: { drawClear: [(plot) => shadeWorking(plot, works, ink)], draw: [(plot) => drawNow(plot, now, ink)] },
    };
  };
}

/** The speeds that work, behind the lines, with a bar and a word at the foot so that colour is not the only sign. */
function shadeWorking(plot: uPlot, works: readonly (readonly [number, number])[], ink: Ink): void {
  const { ctx, bbox } = plot;
  const foot = 5 * devicePixelRatio;
  ctx.save();
  ctx.font = `${11 * devicePixelRatio}px system-ui, sans-serif`;
  for (const [from, to] of works) {
    const x = plot.valToPos(from, 'x', true);
    const width = plot.valToPos(to, 'x', true) - x;
    ctx.fillStyle = ink.goodSoft;
    ctx.fillRect(x, bbox.top, width, bbox.height);
    ctx.fillStyle = ink.good;
    ctx.fillRect(x, bbox.top + bbox.height - foot, width, foot);
    if (width > ctx.measureText(words.works).width + foot) {
      ctx.textAlign = 'center';
      ctx.fillText(words.works, x + width / 2, bbox.top + bbox.height - 2 * foot);
    }
  }
  ctx.restore();
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

/** All lines; capacities far above what comes out and is asked for are left out, so that the rest can be read. */
function linesOf(curve: Curve, demandFlow: number): uPlot.AlignedData {
  const demand = fromSi(demandFlow, 'mm³/s');
  const most = 2.5 * Math.max(demand, ...curve.volumeFlow.map((flow) => fromSi(flow, 'mm³/s')));
  const capped = (values: Float64Array) => flows(values).map((flow) => (flow !== null && flow > most ? null : flow));
  return [
    Array.from(curve.screwSpeed, (speed) => fromSi(speed, 'rpm')),
    flows(curve.volumeFlow),
    ...[curve.pumping, curve.feed, curve.melting, curve.heater, curve.torqueBound].map(capped),
    Array.from(curve.screwSpeed, () => demand),
  ];
}

/** Where it works, in words. */
function Working({ ranges }: { readonly ranges: readonly (readonly [number, number])[] }) {
  if (ranges.length === 0) return <p className="works">{words.worksNever}</p>;
  const rpm = (value: number) => formatQuantity(value / 60, 'rpm', 3);
  return (
    <p className="works" title={words.worksHelp}>
      {ranges.map(([from, to]) => `${words.worksFrom} ${rpm(from)} ${words.worksTo} ${rpm(to)}`).join('; ')}
    </p>
  );
}

/** The chart. */
export function OutputCurve({ prediction }: { readonly prediction: Prediction }) {
  const { curve, output, print } = prediction;
  const now = fromSi(output.screwSpeed, 'rpm');
  const ranges = useMemo(
    () => workingRanges(curve, print.speedForDemand).map(([a, b]) => [a * 60, b * 60] as const),
    [curve, print.speedForDemand],
  );
  const options = useMemo(() => optionsFor(now, ranges), [now, ranges]);
  const data = useMemo(() => linesOf(curve, print.demand), [curve, print.demand]);
  if (curve.screwSpeed.length < 2) return null;
  return (
    <section className="curve" aria-label={words.title}>
      <h2>{words.title}</h2>
      <Chart label={words.title} data={data} options={options} height={curveHeight} />
      <Working ranges={ranges} />
    </section>
  );
}
