/** Any other curve of the prediction, chosen by name. */

import { useEffect, useMemo, useRef } from 'react';
import type uPlot from 'uplot';
import type { PresentedSeries } from '../../core/index.ts';
import { formatNumber, formatQuantity } from '../look.ts';
import { evaluationStore, useEvaluation } from '../store/evaluation.ts';
import { text } from '../strings.ts';
import { axis, Chart, curveHeight, type Ink } from './Chart.tsx';
import { chooseCurve, useChosenCurve } from './chosenCurve.ts';
import { drawTimeMarks, roomAbove, timeAxis, timeCurves, timeMarks } from './residenceMarks.ts';

const words = text.curve;

/** Curves shown elsewhere in the window already. */
const shownElsewhere = ['pressure', 'temperature', 'output'];

/** Lines after the first are broken, so that they can be told apart without colour. */
const dashes: readonly (number[] | undefined)[] = [undefined, [7, 4], [2, 3], [9, 3, 2, 3]];

const marksNow = () => {
  const { prediction } = evaluationStore.getState();
  return prediction ? timeMarks(prediction) : [];
};

/** No more than everything can have left; what stands above are names of landmarks. */
const shares = () => [0, 25, 50, 75, 100];

/** First and last x, so that no decade is shown half empty. */
const ends = (plot: uPlot): [number, number] => [plot.data[0][0] ?? 1, plot.data[0].at(-1) ?? 10];

/** Landmarks in words. */
function Landmarks() {
  const prediction = useEvaluation((state) => state.prediction);
  if (!prediction) return null;
  return (
    <p className="landmarks">
      {timeMarks(prediction).map(({ name, time }) => (
        <span key={name}>
          {name} <b>{formatQuantity(time, 's', 3)}</b>
        </span>
      ))}
    </p>
  );
}

function optionsFor(lines: readonly PresentedSeries[]) {
  return (ink: Ink): Omit<uPlot.Options, 'width' | 'height'> => {
    const [first] = lines;
    const marked = timeCurves.includes(first?.id ?? '');
    const reading = (unit: string) => (_: uPlot, value: number | null) =>
      value === null ? '' : `${formatNumber(value, 3)} ${unit}`;
    return {
      // Times run over decades: the first melt leaves early, the last of it very late.
      scales: {
        x: first?.xUnit === 's' ? { time: false, distr: 3, ...(marked ? { range: ends } : {}) } : { time: false },
        ...(marked ? { y: { range: (_u, _min, max) => [0, (max || 1) * roomAbove(curveHeight - 60)] } } : {}),
      },
      ...(marked ? { hooks: { draw: [(plot) => drawTimeMarks(plot, marksNow(), ink)] } } : {}),
      axes: [
        axis(ink, `${first?.xLabel}, ${first?.xUnit}`, { size: 26, ...(marked ? timeAxis : {}) }),
        axis(ink, `${first?.yLabel}, ${first?.yUnit}`, {
          size: 50,
          ...(first?.id === 'residence' ? { splits: shares } : {}),
        }),
      ],
      series: [
        { label: first?.xLabel ?? '', value: reading(first?.xUnit ?? '') },
        ...lines.map((line, index): uPlot.Series => {
          const stroke = ink.series[index];
          return {
            label: line.name,
            ...(stroke ? { stroke } : {}),
            width: index === 0 ? 2.5 : 2,
            ...(dashes[index] ? { dash: dashes[index] } : {}),
            points: { show: false },
            value: reading(line.yUnit),
          };
        }),
      ],
    };
  };
}

const finite = (values: Float64Array): (number | null)[] =>
  Array.from(values, (value) => (Number.isFinite(value) ? value : null));

/** A drop-down and the chosen chart. */
export function MoreCurves() {
  const all = useEvaluation((state) => state.presentation?.series);
  const { id: wanted, asked } = useChosenCurve();
  const choice = useRef<HTMLSelectElement>(null);
  const offered = useMemo(
    () => new Map(all?.filter(({ id }) => !shownElsewhere.includes(id)).map(({ id, title }) => [id, title])),
    [all],
  );
  // where nothing flows there are no times to show
  const chosen = offered.has(wanted) ? wanted : ([...offered.keys()][0] ?? '');
  const lines = useMemo(() => all?.filter(({ id }) => id === chosen) ?? [], [all, chosen]);
  const shape = lines.map(({ id, name }) => `${id}/${name}`).join();
  // biome-ignore lint/correctness/useExhaustiveDependencies: axes and names depend on which lines there are, not on data
  const options = useMemo(() => optionsFor(lines), [shape]);
  const data = useMemo<uPlot.AlignedData>(
    () => [Array.from(lines[0]?.x ?? []), ...lines.map((line) => finite(line.y))],
    [lines],
  );
  useEffect(() => {
    if (asked === 0) return;
    choice.current?.scrollIntoView({ block: 'start' });
    choice.current?.focus();
  }, [asked]);
  if (lines.length === 0) return null;
  return (
    <section className="curve" aria-label={words.more}>
      <header>
        <h2>{words.more}</h2>
        <select
          ref={choice}
          aria-label={words.more}
          value={chosen}
          onChange={(event) => chooseCurve(event.target.value)}
        >
          {[...offered].map(([id, title]) => (
            <option key={id} value={id}>
              {title}
            </option>
          ))}
        </select>
      </header>
      <Chart label={offered.get(chosen) ?? ''} data={data} options={options} height={curveHeight} />
      {timeCurves.includes(chosen) && <Landmarks />}
    </section>
  );
}
