/** One or two figures against one input. */

import { useMemo, useRef } from 'react';
import type uPlot from 'uplot';
import { figureOf, type SearchInput } from '../../core/index.ts';
import { formatNumber } from '../look.ts';
import { axis, Chart, type Ink } from '../plots/Chart.tsx';
import { searchText } from '../strings/search.ts';
import { HatchLegend } from './HatchLegend.tsx';
import { type Ground, groundOf, hatch, ticked } from './hatching.ts';
import { figureNumber, figureTitle, inputTitle, seenUnit, seenValue } from './shown.ts';
import { type SweepRun, useSearch } from './store.ts';

const words = searchText.result;

/** What is drawn behind the lines. */
interface Behind {
  readonly x: readonly number[];
  readonly ground: readonly Ground[];
  readonly present: number;
}

const readout =
  (unit: string) =>
  (_: uPlot, value: number | null): string =>
    value === null ? '' : `${formatNumber(value, 4)}${unit ? ` ${unit}` : ''}`;

/** Neighbours of one kind as one stretch, so that no seams show. */
function stretches(ground: readonly Ground[]): { kind: 'hole' | 'missed'; first: number; last: number }[] {
  const found: { kind: 'hole' | 'missed'; first: number; last: number }[] = [];
  ground.forEach((kind, i) => {
    const before = found.at(-1);
    if (kind !== 'hole' && kind !== 'missed') return;
    if (before?.kind === kind && before.last === i - 1) before.last = i;
    else found.push({ kind, first: i, last: i });
  });
  return found;
}

/** Hatches the stretch about each value that is no good design, half-way to its neighbours. */
function drawBehind(plot: uPlot, { x, ground, present }: Behind, ink: Ink): void {
  const { ctx, bbox } = plot;
  const { left, top, width, height } = bbox;
  const within = (at: number) => Math.max(left, Math.min(left + width, at));
  const middle = (i: number, k: number) => plot.valToPos(((x[i] ?? 0) + (x[k] ?? x[i] ?? 0)) / 2, 'x', true);
  for (const { kind, first, last } of stretches(ground)) {
    const from = within(first === 0 ? plot.valToPos(x[0] ?? 0, 'x', true) : middle(first - 1, first));
    const to = within(last === x.length - 1 ? plot.valToPos(x[last] ?? 0, 'x', true) : middle(last, last + 1));
    const box = { x: from, y: top, width: to - from, height };
    hatch(ctx, box, kind, kind === 'hole' ? ink.text : ink.mark, devicePixelRatio);
  }
  const at = Math.round(plot.valToPos(present, 'x', true)) + 0.5;
  if (at < left || at > left + width) return;
  ctx.save();
  ctx.strokeStyle = ink.text;
  ctx.fillStyle = ink.text;
  ctx.setLineDash([4, 4]);
  ctx.beginPath();
  ctx.moveTo(at, top);
  ctx.lineTo(at, top + height);
  ctx.stroke();
  ctx.font = `${12 * devicePixelRatio}px system-ui, sans-serif`;
  const right = at > left + 0.7 * width;
  ctx.textAlign = right ? 'right' : 'left';
  ctx.fillText(words.present, at + (right ? -5 : 5), top + 13 * devicePixelRatio);
  ctx.restore();
}

/** Axes and lines; the second figure has its own axis on the right. */
function chartOptions(input: SearchInput, figures: readonly string[], behind: { readonly current: Behind }) {
  return (ink: Ink): Omit<uPlot.Options, 'width' | 'height'> => {
    const fromZero: uPlot.Scale = { range: (_u, min, max) => [Math.min(0, min ?? 0), max > 0 ? max * 1.08 : 1] };
    const scales = ['y', 'y2'] as const;
    const line = (id: string, i: number): uPlot.Series => ({
      label: figureOf(id).label,
      scale: scales[i] ?? 'y',
      stroke: ink.series[i] ?? ink.text,
      width: 2,
      points: { show: true, size: 5 },
      value: readout(seenUnit(figureOf(id).unit)),
      ...(i === 1 ? { dash: [8, 3] } : {}),
    });
    return {
      scales: { x: { time: false }, y: fromZero, ...(figures.length > 1 ? { y2: fromZero } : {}) },
      axes: [
        axis(ink, inputTitle(input), { size: 26 }),
        ...figures.map((id, i) =>
          axis(ink, figureTitle(id), {
            size: 48,
            scale: scales[i] ?? 'y',
            stroke: ink.series[i] ?? ink.text,
            ...(i === 1 ? { side: 1 as const, grid: { show: false } } : {}),
          }),
        ),
      ],
      series: [{ label: input.label, value: readout(seenUnit(input.unit)) }, ...figures.map(line)],
      legend: { live: true },
      cursor: { drag: { x: false, y: false } },
      hooks: { drawClear: [(plot) => drawBehind(plot, behind.current, ink)] },
    };
  };
}

/** What the chart draws: lines over rising values, and what lies behind them. */
function useDrawing(run: SweepRun, input: SearchInput | undefined, figures: readonly string[]) {
  const limits = useSearch((state) => state.limits);
  const hatched = useSearch((state) => state.hatchLimits);
  // values may run downwards; a chart wants them rising
  const order = useMemo(() => {
    const values = run.plan.values[0] ?? [];
    const unit = input?.unit ?? '';
    return values.map((value, i) => [seenValue(value, unit), i] as const).sort(([a], [b]) => a - b);
  }, [run.plan, input]);
  const counted = ticked(limits, hatched);
  const ground = order.map(([, i]) => groundOf(run.designs[i], counted));
  const grounds = ground.join(' ');
  // biome-ignore lint/correctness/useExhaustiveDependencies: a change of the ground has to draw the chart anew
  const data = useMemo(
    (): uPlot.AlignedData => [
      order.map(([value]) => value),
      ...figures.map((id) => order.map(([, i]) => figureNumber(run.designs[i]?.figures[id], figureOf(id).unit))),
    ],
    [order, figures, run.designs, grounds],
  );
  const present = input ? seenValue(input.value, input.unit) : Number.NaN;
  const behind: Behind = { x: order.map(([value]) => value), ground, present };
  return { data, behind };
}

/** The chart. */
export function SweepChart({ run }: { readonly run: SweepRun }) {
  const [first, second] = useSearch((state) => state.shown);
  const input = run.inputs.find(({ id }) => id === run.plan.axes[0]?.input);
  const figures = useMemo(() => (second === null || second === first ? [first] : [first, second]), [first, second]);
  const drawing = useDrawing(run, input, figures);
  const behind = useRef<Behind>(drawing.behind);
  behind.current = drawing.behind;
  const options = useMemo(() => (input ? chartOptions(input, figures, behind) : null), [input, figures]);
  if (!input || !options) return null;
  return (
    <>
      <div className="sweep">
        <Chart
          label={words.chart(figures.map((id) => figureOf(id).label).join(', '), input.label)}
          data={drawing.data}
          options={options}
          height={300}
        />
      </div>
      <HatchLegend grounds={drawing.behind.ground} />
    </>
  );
}
