/** A figure over two inputs as a map, read by pointer and by keyboard. */

import { type KeyboardEvent, type PointerEvent, useEffect, useMemo, useRef, useState } from 'react';
import { figureOf } from '../../core/index.ts';
import { formatNumber, useLook } from '../look.ts';
import { useBox } from '../plots/useBox.ts';
import { useRootLook } from '../store/look.ts';
import { searchText } from '../strings/search.ts';
import { HatchLegend } from './HatchLegend.tsx';
import { groundOf, reasonOf, ticked } from './hatching.ts';
import { type MapSteps, mapSteps } from './mapScale.ts';
import { cellAt, type MapAxis, type MapPicture, mapArea, paintMap } from './paintMap.ts';
import { figureNumber, figureTitle, inputTitle, seenUnit, seenValue, shownFigure, shownValue } from './shown.ts';
import { type SweepRun, useSearch } from './store.ts';

const words = searchText.result;

/** Height of the map, px. */
const height = 380;

/** How an arrow key moves over cells of a map with so many columns. */
const moves = (columns: number): Readonly<Record<string, number>> => ({
  ArrowLeft: -1,
  ArrowRight: 1,
  ArrowUp: columns,
  ArrowDown: -columns,
});

/** The next cell by a key, or null where it is none of the map's or leaves it. */
export function movedCell(key: string, cell: number, columns: number, rows: number): number | null {
  const by = moves(columns)[key];
  if (by === undefined) return null;
  const next = cell + by;
  const sideways = Math.abs(by) === 1 && columns > 1;
  if (next < 0 || next >= columns * rows) return null;
  return sideways && Math.floor(next / columns) !== Math.floor(cell / columns) ? null : next;
}

function axisOf(run: SweepRun, which: 0 | 1): MapAxis {
  const values = run.plan.values[which] ?? [];
  const input = run.inputs.find(({ id }) => id === run.plan.axes[which]?.input);
  return {
    title: input ? inputTitle(input) : '',
    values: values.map((value) => seenValue(value, input?.unit ?? '')),
    text: (value) => formatNumber(value, 3),
    present: input ? seenValue(input.value, input.unit) : Number.NaN,
  };
}

function Legend({ steps, unit }: { readonly steps: MapSteps; readonly unit: string }) {
  return (
    <ol className="map-legend" aria-label={searchText.result.figure}>
      {steps.colours.map((colour, i) => (
        <li key={colour}>
          <span className="map-swatch" style={{ background: colour }} aria-hidden="true" />
          {words.between(formatNumber(steps.edges[i] ?? 0, 4), formatNumber(steps.edges[i + 1] ?? 0, 4))}
          {unit && ` ${unit}`}
        </li>
      ))}
      <li>
        <span className="map-cross" aria-hidden="true">
          ✚
        </span>
        {words.present}
      </li>
    </ol>
  );
}

/** What stands under the pointer or the cursor. */
function Readout({
  run,
  cell,
  figure,
}: {
  readonly run: SweepRun;
  readonly cell: number | null;
  readonly figure: string;
}) {
  const limits = ticked(
    useSearch((state) => state.limits),
    useSearch((state) => state.hatchLimits),
  );
  if (cell === null) return <p className="map-readout quiet">{words.mapHelp}</p>;
  const design = run.designs[cell];
  const place = (run.plan.candidates[cell] ?? []).map(({ input, value }) => {
    const found = run.inputs.find(({ id }) => id === input);
    return `${found?.label ?? input} ${shownValue(value, found?.unit ?? '')}`;
  });
  const { label, unit } = figureOf(figure);
  return (
    <p className="map-readout" role="status">
      {place.join(', ')}: <b>{`${label} ${shownFigure(design?.figures[figure], unit)}`}</b> {reasonOf(design, limits)}
    </p>
  );
}

/** Draws whenever what is shown changes. */
function useDrawn(picture: Omit<MapPicture, 'ink'>, width: number) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const root = useRootLook();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the root's look changes the colours that are read
  useEffect(() => {
    const element = canvas.current;
    const ctx = element?.getContext('2d');
    if (!element || !ctx || width < 10) return;
    const style = getComputedStyle(element);
    const colour = (name: string) => style.getPropertyValue(name).trim();
    const ratio = globalThis.devicePixelRatio || 1;
    element.width = Math.round(width * ratio);
    element.height = Math.round(height * ratio);
    ctx.setTransform(ratio, 0, 0, ratio, 0, 0);
    const ink = {
      text: colour('--ink-soft'),
      line: colour('--line-strong'),
      mark: colour('--mark'),
      hatch: '#fff',
    };
    paintMap(ctx, { ...picture, ink }, width, height);
  }, [picture, width, root]);
  return canvas;
}

/** What is drawn of a run. */
function usePicture(run: SweepRun, figure: string, cell: number | null): Omit<MapPicture, 'ink'> {
  const limits = useSearch((state) => state.limits);
  const hatched = useSearch((state) => state.hatchLimits);
  const look = useLook();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the look changes units and signs
  return useMemo(() => {
    const { unit } = figureOf(figure);
    const cells = run.designs.map((design) =>
      design?.hole === null ? figureNumber(design.figures[figure], unit) : null,
    );
    const counted = ticked(limits, hatched);
    const grounds = run.designs.map((design) => groundOf(design, counted));
    return { x: axisOf(run, 0), y: axisOf(run, 1), cells, grounds, steps: mapSteps(cells), cursor: cell };
  }, [run, figure, limits, hatched, cell, look]);
}

/** How pointer and arrow keys choose a cell of a map so wide, px. */
function pointing(
  { x, y }: Pick<MapPicture, 'x' | 'y'>,
  width: number,
  choose: (next: (before: number | null) => number | null) => void,
) {
  const [columns, rows] = [x.values.length, y.values.length];
  return {
    onPointerMove: (event: PointerEvent<HTMLDivElement>) => {
      const edge = event.currentTarget.getBoundingClientRect();
      const at = cellAt(mapArea(width, height), columns, rows, event.clientX - edge.left, event.clientY - edge.top);
      if (at !== null) choose(() => at);
    },
    onKeyDown: (event: KeyboardEvent<HTMLDivElement>) => {
      if (moves(columns)[event.key] === undefined) return;
      event.preventDefault();
      choose((before) => (before === null ? 0 : (movedCell(event.key, before, columns, rows) ?? before)));
    },
  };
}

/** The map. */
export function SweepMap({ run }: { readonly run: SweepRun }) {
  const [figure] = useSearch((state) => state.shown);
  const [cell, setCell] = useState<number | null>(null);
  const [box, { width }] = useBox();
  const picture = usePicture(run, figure, cell);
  const canvas = useDrawn(picture, width);
  return (
    <div className="sweep-map">
      <Readout run={run} cell={cell} figure={figure} />
      <div
        ref={box}
        className="map-box"
        role="application"
        // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys move a cursor over it
        tabIndex={0}
        aria-label={`${words.map(figureOf(figure).label)}. ${words.mapHelp}`}
        {...pointing(picture, width, setCell)}
      >
        <canvas ref={canvas} style={{ width: '100%', height }} />
      </div>
      <div className="map-side">
        <h3>{figureTitle(figure)}</h3>
        {picture.steps ? (
          <Legend steps={picture.steps} unit={seenUnit(figureOf(figure).unit)} />
        ) : (
          <p>{words.allHoles}</p>
        )}
        <HatchLegend grounds={picture.grounds} />
      </div>
    </div>
  );
}
