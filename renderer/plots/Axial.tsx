/** What happens along the axis: pressure and temperatures, above a drawing to the same scale. */

import { useCallback, useMemo } from 'react';
import type uPlot from 'uplot';
import { formatNumber, fromSi, type Prediction, type Unit } from '../../core/index.ts';
import type { Shape } from '../solve/protocol.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { pickStation } from '../store/melt.ts';
import { activeRevision, useProject } from '../store/project.ts';
import { setView, useView, viewStore } from '../store/view.ts';
import { text } from '../strings.ts';
import { axialRange, sideRoom } from './axialScale.ts';
import { type AxialSeries, axialSeries } from './axialSeries.ts';
import { axis, Chart, type Ink } from './Chart.tsx';
import { SideDrawing } from './SideDrawing.tsx';

const words = text.axial;

function drawMark(plot: uPlot, ink: Ink): void {
  const { mark } = viewStore.getState();
  if (!mark) return;
  const { ctx, bbox } = plot;
  const x = plot.valToPos(fromSi(mark.z, 'mm'), 'x', true);
  ctx.save();
  ctx.strokeStyle = ink.mark;
  ctx.lineWidth = 2 * devicePixelRatio;
  ctx.beginPath();
  ctx.moveTo(x, bbox.top);
  ctx.lineTo(x, bbox.top + bbox.height);
  ctx.stroke();
  ctx.restore();
}

function follow(plot: uPlot): void {
  const { idx } = plot.cursor;
  const z = idx === null || idx === undefined ? null : (plot.data[0][idx] ?? null);
  setView({ hoverZ: z === null ? null : z / 1000 });
}

/** A click picks the position under it; the line of the nearest point would be up to a station off. */
function pickByClick(plot: uPlot): void {
  plot.over.addEventListener('click', () => {
    const { left } = plot.cursor;
    if (left !== undefined && left >= 0) pickStation(plot.posToVal(left, 'x') / 1000);
  });
}

/** Axes and lines over a range of z, mm. */
function optionsFor(from: number, to: number, unit: Unit) {
  return (ink: Ink): Omit<uPlot.Options, 'width' | 'height'> => {
    const [pressure, melt, core, wall] = ink.series;
    const line = (scale: string, stroke: string | undefined, more: uPlot.Series = {}): uPlot.Series => ({
      scale,
      ...(stroke ? { stroke } : {}),
      width: 2,
      points: { show: false },
      ...more,
    });
    return {
      padding: [8, 0, 0, 0],
      legend: { show: false },
      cursor: { drag: { x: false, y: false } },
      scales: {
        x: { time: false, range: () => [from, to] },
        p: { range: (_u, _min, max) => [0, max > 0 ? max * 1.12 : 1] },
        C: { range: (_u, min, max) => [Math.min(min - 5, 20), max + 12] },
      },
      axes: [
        axis(ink, `${words.position}, mm`, { size: 24 }),
        axis(ink, `${words.pressure}, ${unit}`, { scale: 'p', size: sideRoom - 18 }),
        axis(ink, `${words.temperature}, °C`, { scale: 'C', side: 1, size: sideRoom - 18, grid: { show: false } }),
      ],
      series: [
        {},
        line('p', pressure, {
          width: 2.5,
          ...(pressure ? { fill: `color-mix(in srgb, ${pressure} 14%, transparent)` } : {}),
        }),
        line('C', melt),
        line('C', wall, { dash: [6, 4], width: 1.5 }),
        line('C', core, { dash: [2, 3], width: 1.5 }),
      ],
      hooks: { ready: [pickByClick], draw: [(plot) => drawMark(plot, ink)], setCursor: [follow] },
    };
  };
}

/** Index of the point at or before z (mm). */
const indexAt = (z: readonly number[], at: number): number =>
  Math.max(
    0,
    z.findLastIndex((value) => value <= at + 1e-9),
  );

/** Where the pointer is, or else the mark. m; null where neither is. */
const useReadZ = (): number | null => useView((state) => state.hoverZ ?? state.mark?.z ?? null);

/** The position that is read, in words. */
function Place() {
  const z = useReadZ();
  const label = useView((state) => (state.hoverZ === null ? state.mark?.label : undefined));
  if (z === null) return null;
  return <span className="at">{`z ${formatNumber(fromSi(z, 'mm'), 4)} mm${label ? `: ${label}` : ''}`}</span>;
}

function Readout({ series }: { readonly series: AxialSeries | null }) {
  const z = useReadZ();
  const index = series && z !== null ? indexAt(series.z, z * 1000) : null;
  const value = (values: readonly (number | null)[] | undefined, unit: string) => {
    const found = index === null ? null : (values?.[index] ?? null);
    return found === null ? '' : ` ${formatNumber(found, 3)} ${unit}`;
  };
  return (
    <p className="axial-legend">
      <span className="key key-pressure">
        {words.pressure}
        {value(series?.pressure, series?.pressureUnit ?? '')}
      </span>
      <span className="key key-melt">
        {words.melt}
        {value(series?.melt, '°C')}
      </span>
      <span className="key key-wall">
        {words.wall}
        {value(series?.wall, '°C')}
      </span>
      <span className="key key-core">
        {words.core}
        {value(series?.core, '°C')}
      </span>
    </p>
  );
}

function useSeries(prediction: Prediction | null, shape: Shape | null): AxialSeries | null {
  const { segments } = activeRevision(useProject()).nozzle;
  return useMemo(() => {
    if (!prediction || !shape) return null;
    let end = shape.bounds.barrelEnd;
    const ends = segments.map((segment) => (end += segment.lengthMm / 1000));
    return axialSeries(prediction, ends, shape.bounds.barrelEnd);
  }, [prediction, shape, segments]);
}

function Plot({ series, shape }: { readonly series: AxialSeries; readonly shape: Shape }) {
  const mark = useView((state) => state.mark);
  const [from, to] = axialRange(shape.bounds);
  const unit = series.pressureUnit;
  const options = useMemo(() => optionsFor(from * 1000, to * 1000, unit), [from, to, unit]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new mark needs a new drawing of the same data
  const data = useMemo<uPlot.AlignedData>(
    () => [series.z, series.pressure, series.melt, series.wall, series.core],
    [series, mark],
  );
  return (
    <Chart label={`${words.title}: ${words.pressure}, ${words.melt}, ${words.wall}`} data={data} options={options} />
  );
}

/** Legend with readout, plot, drawing. */
export function Axial() {
  const prediction = useEvaluation((state) => state.prediction);
  const shape = useEvaluation((state) => state.shape);
  const stale = useEvaluation((state) => state.stale);
  const series = useSeries(prediction, shape);
  const leave = useCallback(() => setView({ hoverZ: null }), []);
  return (
    <div className={stale ? 'axial stale' : 'axial'} onPointerLeave={leave}>
      <header>
        <h2>{words.title}</h2>
        <Place />
        <Readout series={series} />
      </header>
      {series && shape && <Plot {...{ series, shape }} />}
      <SideDrawing />
    </div>
  );
}
