/** What happens along the axis: pressure and temperatures, then filling and melting, above a drawing to the same scale. */

import { type ReactNode, useCallback, useMemo } from 'react';
import type uPlot from 'uplot';
import { fromSi, lookNumber, lookUnit, type NumberLook, type Prediction, toSi, type Unit } from '../../core/index.ts';
import { useLook } from '../look.ts';
import type { Shape } from '../solve/protocol.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { pickStation } from '../store/melt.ts';
import { activeRevision, useProject } from '../store/project.ts';
import { setView, useView, viewStore } from '../store/view.ts';
import { text } from '../strings.ts';
import { AxialReadout, ReadPlace } from './AxialReadout.tsx';
import { sideRoom, useAxialZoom, wholeAxialRange, zoomAxial } from './axialScale.ts';
import { type AxialSeries, axialSeries } from './axialSeries.ts';
import { axis, Chart, type Ink } from './Chart.tsx';
import { MeltMarkStrip } from './MeltMarkStrip.tsx';
import { type MeltMark, meltMarks } from './meltMarks.ts';
import type { Range } from './plotZoom.ts';
import { ShareLane } from './ShareLane.tsx';
import { SideDrawing } from './SideDrawing.tsx';

const words = text.axial;

/** Lines that run through all lanes: where melting begins and ends, and the mark. */
function drawLines(plot: uPlot, marks: readonly MeltMark[], ink: Ink, length: Unit): void {
  const { mark } = viewStore.getState();
  const { ctx, bbox } = plot;
  const line = (z: number, colour: string, width: number, dash: number[]) => {
    const x = plot.valToPos(fromSi(z, length), 'x', true);
    ctx.strokeStyle = colour;
    ctx.lineWidth = width * devicePixelRatio;
    ctx.setLineDash(dash.map((length) => length * devicePixelRatio));
    ctx.beginPath();
    ctx.moveTo(x, bbox.top);
    ctx.lineTo(x, bbox.top + bbox.height);
    ctx.stroke();
  };
  ctx.save();
  for (const { z } of marks) line(z, ink.text, 1, [1, 3]);
  if (mark) line(mark.z, ink.mark, 2, []);
  ctx.restore();
}

const follow =
  (length: Unit) =>
  (plot: uPlot): void => {
    const { idx } = plot.cursor;
    const z = idx === null || idx === undefined ? null : (plot.data[0][idx] ?? null);
    setView({ hoverZ: z === null ? null : toSi(z, length) });
  };

/** A click picks the position under it; the line of the nearest point would be up to a station off. */
const pickByClick =
  (length: Unit) =>
  (plot: uPlot): void => {
    plot.over.addEventListener('click', () => {
      const { left } = plot.cursor;
      if (left !== undefined && left >= 0) pickStation(toSi(plot.posToVal(left, 'x'), length));
    });
  };

/** A line of a scale, without points. */
const line = (scale: string, stroke: string | undefined, more: uPlot.Series = {}): uPlot.Series => ({
  scale,
  ...(stroke ? { stroke } : {}),
  width: 2,
  points: { show: false },
  ...more,
});

/** Axes and lines over a range of z, m. */
function optionsFor([from, to]: Range, unit: Unit, marks: readonly MeltMark[], look: NumberLook) {
  const length = lookUnit('mm', look);
  return (ink: Ink): Omit<uPlot.Options, 'width' | 'height'> => {
    const [pressure, melt, core, wall, solid] = ink.series;
    return {
      padding: [7, 0, 0, 0],
      legend: { show: false },
      scales: {
        x: { time: false, range: () => [fromSi(from, length), fromSi(to, length)] },
        p: { range: (_u, _min, max) => [0, max > 0 ? max * 1.12 : 1] },
        C: { range: (_u, min, max) => [Math.min(min - 5, 20), max + 12] },
      },
      axes: [
        axis(ink, '', {
          size: 20,
          labelSize: 0,
          values: (_u, splits) => splits.map((z, i) => `${lookNumber(z, 4, look)}${i === 0 ? ` ${length}` : ''}`),
        }),
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
        line('C', solid, { dash: [9, 3] }),
        line('C', wall, { dash: [6, 4], width: 1.5 }),
        line('C', core, { dash: [2, 3], width: 1.5 }),
      ],
      hooks: {
        ready: [pickByClick(length)],
        draw: [(plot) => drawLines(plot, marks, ink, length)],
        setCursor: [follow(length)],
      },
    };
  };
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

/** Names of the plotted columns; the key of the lanes says them on screen. */
const columnsFor = (unit: Unit, length: Unit): string[] => [
  `${words.position}, ${length}`,
  `${words.pressure}, ${unit}`,
  ...[words.melt, words.granules, words.wall, words.core].map((name) => `${name}, °C`),
];

interface LanesProps {
  readonly series: AxialSeries;
  readonly shape: Shape;
  readonly marks: readonly MeltMark[];
}

function Plot({ series, shape, marks }: LanesProps) {
  const mark = useView((state) => state.mark);
  const look = useLook();
  const length = lookUnit('mm', look);
  const [from, to] = wholeAxialRange(shape.bounds);
  const zoom = useAxialZoom();
  const unit = series.pressureUnit;
  const options = useMemo(() => optionsFor([from, to], unit, marks, look), [from, to, unit, marks, look]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new mark needs a new drawing of the same data
  const data = useMemo<uPlot.AlignedData>(
    () => [
      series.z.map((z) => fromSi(toSi(z, 'mm'), length)),
      series.pressure,
      series.melt,
      series.solid,
      series.wall,
      series.core,
    ],
    [series, mark, length],
  );
  const shown = useMemo(() => zoom && ([fromSi(zoom[0], length), fromSi(zoom[1], length)] as const), [zoom, length]);
  return (
    <Chart
      label={words.plot}
      columns={columnsFor(unit, length)}
      zoom={shown}
      onZoom={(range) => zoomAxial(range && [toSi(range[0], length), toSi(range[1], length)])}
      {...{ data, options }}
    />
  );
}

const noMarks: readonly MeltMark[] = [];

/** Dims what belongs to an earlier description, and draws nothing of it anew for that. */
function Frame({ children }: { readonly children: ReactNode }) {
  const stale = useEvaluation((state) => state.stale);
  const leave = useCallback(() => setView({ hoverZ: null }), []);
  return (
    <div className={stale ? 'axial stale' : 'axial'} onPointerLeave={leave}>
      {children}
    </div>
  );
}

/** Legend with readout, names of places, plot, lane of shares, drawing. */
export function Axial() {
  const prediction = useEvaluation((state) => state.prediction);
  const shape = useEvaluation((state) => state.shape);
  const series = useSeries(prediction, shape);
  const marks = useMemo(() => (prediction ? meltMarks(prediction) : noMarks), [prediction]);
  // what reads the axial scale is made anew when it changes
  const scale = useAxialZoom()?.join() ?? 'whole';
  return (
    <Frame>
      <header>
        <h2>{words.title}</h2>
        <ReadPlace />
        <AxialReadout series={series} />
      </header>
      {series && shape && (
        <>
          <MeltMarkStrip key={`marks ${scale}`} marks={marks} bounds={shape.bounds} />
          <Plot {...{ series, shape, marks }} />
          <ShareLane key={`shares ${scale}`} bounds={shape.bounds} {...{ series, marks }} />
        </>
      )}
      <SideDrawing key={scale} />
    </Frame>
  );
}
