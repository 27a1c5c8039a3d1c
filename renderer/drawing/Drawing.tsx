/** The machine drawn to scale with its dimensions, which can be pulled, typed and stepped. */

import { type KeyboardEvent, type PointerEvent, useCallback, useEffect, useMemo, useRef } from 'react';
import { showNumber } from '../fields/quantity.ts';
import { useLook } from '../look.ts';
import { type BoxSize, useBox } from '../plots/useBox.ts';
import { pickStation } from '../store/melt.ts';
import { activeRevision, useProject } from '../store/project.ts';
import { setView } from '../store/view.ts';
import { drawingText } from '../strings/drawing.ts';
import { entryAt } from './choosing.ts';
import { DimensionMarks } from './DimensionMarks.tsx';
import { DrawingTools } from './DrawingTools.tsx';
import { DrawnMachine } from './DrawnMachine.tsx';
import { type Drawn, drawnOf, ofGroups } from './dimensions.ts';
import { Foot } from './Foot.tsx';
import { GripHandle, seatOf } from './Grip.tsx';
import { crowded, type Layout, layOut } from './layout.ts';
import { pathsOf } from './outlines.ts';
import { unpointField } from './pointAtField.ts';
import { pulled } from './pulling.ts';
import { Readout } from './Readout.tsx';
import { drawingStore, setDrawing, useDrawing } from './store.ts';
import { TypeOver } from './TypeOver.tsx';
import type { Dimension } from './types.ts';
import { LinkedPositions, Underlay } from './Underlay.tsx';
import { useViewport, type ViewportTools, viewKey } from './useViewport.ts';
import { boundsOf, showing, type ToPixels, toPixels, type Viewport } from './viewport.ts';

/** A press that moves less than this is a click, px. */
const clickPx = 4;

/** The machine as it is, or as it would be if the pull under way ended now. */
function useDrawn(): Drawn {
  const project = useProject();
  const manners = useDrawing((state) => state.manners);
  const pull = useDrawing((state) => state.pull);
  const now = useMemo(() => (pull ? pulled(pull) : project), [pull, project]);
  return useMemo(() => drawnOf(now, manners), [now, manners]);
}

/** Moving the picture by its ground, pointing along the axis, and choosing by a click. */
function useGround(drawn: Drawn, { view, moveBy }: ViewportTools, size: BoxSize) {
  const press = useRef<{ x: number; y: number; far: boolean } | null>(null);
  const placeOf = (event: PointerEvent) => {
    const { left, top } = event.currentTarget.getBoundingClientRect();
    const z = view.z + (event.clientX - left - size.width / 2) / view.zoom;
    return { z, r: view.r - (event.clientY - top - size.height / 2) / view.zoom };
  };
  const onAxis = (z: number) => z >= 0 && z <= 1000 * boundsOf(drawn.revision).end;
  return {
    onPointerDown: (event: PointerEvent) => {
      if (event.button > 1) return;
      press.current = { x: event.clientX, y: event.clientY, far: false };
      event.currentTarget.setPointerCapture?.(event.pointerId);
    },
    onPointerMove: (event: PointerEvent) => {
      const from = press.current;
      const [dx, dy] = from ? [event.clientX - from.x, event.clientY - from.y] : [0, 0];
      if (from && (from.far || Math.hypot(dx, dy) > clickPx)) {
        press.current = { x: event.clientX, y: event.clientY, far: true };
        moveBy(dx, dy);
      } else if (!drawingStore.getState().pull) {
        const { z } = placeOf(event);
        setView({ hoverZ: onAxis(z) ? z / 1000 : null });
      }
    },
    onPointerUp: (event: PointerEvent) => {
      const from = press.current;
      press.current = null;
      if (!from || from.far) return;
      const { z, r } = placeOf(event);
      if (onAxis(z)) pickStation(z / 1000);
      setDrawing({ chosen: entryAt(drawn.revision, z, r), notice: null });
    },
    onPointerLeave: () => setView({ hoverZ: null }),
  };
}

/** Brings a handle into sight when the focus comes to it. */
function useSeek(view: Viewport, size: BoxSize) {
  const now = useRef({ view, size });
  useEffect(() => {
    now.current = { view, size };
  }, [view, size]);
  return useCallback(({ grip }: Dimension) => {
    if (drawingStore.getState().pull) return;
    const shown = showing(now.current.view, grip, now.current.size);
    if (shown !== now.current.view) setDrawing({ view: shown });
  }, []);
}

interface SheetProps {
  readonly drawn: Drawn;
  readonly dimensions: readonly Dimension[];
  readonly layout: Layout;
  readonly at: ToPixels;
  readonly view: Viewport;
  readonly size: BoxSize;
}

/** Everything that is drawn. */
function Sheet({ drawn, dimensions, layout, at, view, size }: SheetProps) {
  const { revision, shape } = drawn;
  const paths = useMemo(() => pathsOf(revision, shape), [revision, shape]);
  const seek = useSeek(view, size);
  const hidden = useMemo(() => crowded(dimensions, (one) => seatOf(one, at)), [dimensions, at]);
  const { zoom } = view;
  const transform = `translate(${at.x(0)} ${at.y(0)}) scale(${zoom} ${-zoom})`;
  return (
    <>
      <DrawnMachine {...{ paths, transform, zoom }} />
      <Underlay {...{ revision, at, transform }} />
      <LinkedPositions {...{ at, size }} />
      <DimensionMarks placed={layout.placed} />
      {dimensions.map((dimension) => (
        <GripHandle
          key={dimension.id}
          dimension={dimension}
          {...seatOf(dimension, at)}
          zoom={zoom}
          hidden={hidden.has(dimension.id)}
          locked={revision.locked === true}
          onSeek={seek}
        />
      ))}
    </>
  );
}

/** Fields and figures over the drawing. */
function Overlay({ dimensions, layout, at, size }: Omit<SheetProps, 'drawn' | 'view'>) {
  const typing = useDrawing((state) => state.typing);
  const pulledId = useDrawing((state) => state.pull?.dimension.id);
  const find = (id: string | null | undefined) => dimensions.find((dimension) => dimension.id === id);
  const [typed, moving] = [find(typing), find(pulledId)];
  const place = layout.placed.find(({ dimension }) => dimension.id === typing)?.box;
  const [x, y] = place
    ? [place.x + place.width / 2, place.y + place.height / 2]
    : [at.x(typed?.grip.z ?? 0), at.y(typed?.grip.r ?? 0)];
  return (
    <>
      {typed && (
        <TypeOver
          key={typed.id}
          dimension={typed}
          x={Math.min(size.width - 60, Math.max(60, x))}
          y={Math.min(size.height - 30, Math.max(16, y))}
        />
      )}
      {moving && <Readout dimension={moving} {...{ at, size }} />}
    </>
  );
}

/** The layout of what is shown. */
function useLayout(drawn: Drawn, dimensions: readonly Dimension[], size: BoxSize, at: ToPixels): Layout {
  const look = useLook();
  return useMemo(() => {
    const write = ({ sign, value, spec }: Dimension) =>
      `${sign}${showNumber(value, spec.unit, look)}${spec.unit === '°' ? '°' : ''}`;
    return layOut({ dimensions, write, radius: drawn.revision.barrel.outerDiameterMm / 2 }, size, at);
  }, [dimensions, drawn, size, at, look]);
}

/** Keys of the drawing while none of its handles has the focus. */
const keysOf = (tools: ViewportTools) => (event: KeyboardEvent) => {
  if (event.target !== event.currentTarget || event.ctrlKey || event.metaKey || event.altKey) return;
  if (event.key === 'Escape') setDrawing({ chosen: null, notice: null });
  else if (viewKey(event.key, tools)) event.preventDefault();
};

/** Tools and drawing. */
export function Drawing() {
  const [box, size] = useBox();
  const drawn = useDrawn();
  const shown = useDrawing((state) => state.shown);
  // the view stays where it is while the machine is pulled
  const tools = useViewport(activeRevision(useProject()), size, box);
  const { view } = tools;
  const at = useMemo(() => toPixels(view, size), [view, size]);
  const dimensions = useMemo(() => ofGroups(drawn.dimensions, shown), [drawn, shown]);
  const layout = useLayout(drawn, dimensions, size, at);
  const ground = useGround(drawn, tools, size);
  useEffect(() => unpointField, []);
  return (
    <>
      <DrawingTools onZoom={tools.zoomBy} />
      {/* biome-ignore lint/a11y/useSemanticElements: a drawing is no form to be framed */}
      <div
        className="drawing"
        ref={box}
        role="group"
        aria-label={drawingText.label}
        aria-description={drawingText.help}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: arrows move the picture
        tabIndex={0}
        onKeyDown={keysOf(tools)}
      >
        {size.width > 0 && (
          <>
            <svg width={size.width} height={size.height} role="presentation" {...ground}>
              <Sheet {...{ drawn, dimensions, layout, at, view, size }} />
            </svg>
            <Overlay {...{ dimensions, layout, at, size }} />
            <Foot zoom={view.zoom} left={layout.left} />
          </>
        )}
      </div>
    </>
  );
}
