/** Screw, barrel and nozzle cut along the axis, to the scale of the axial plot above. */

import { type MouseEvent, memo, type ReactNode, useMemo } from 'react';
import type { Prediction, Revision } from '../../core/index.ts';
import type { Shape } from '../solve/protocol.ts';
import { useEvaluation } from '../store/evaluation.ts';
import { pickStation } from '../store/melt.ts';
import { activeRevision, useProject } from '../store/project.ts';
import { setView } from '../store/view.ts';
import { text } from '../strings.ts';
import { AxialLines } from './AxialLines.tsx';
import { axialToPixels, pixelsToAxial } from './axialScale.ts';
import { ChannelContent, ContentPatterns } from './ChannelContent.tsx';
import { type MeltMark, meltMarks } from './meltMarks.ts';
import { type BoxSize, useBox } from './useBox.ts';

/** Metres to pixels, x along the axis and y from it. */
interface Scale {
  x(z: number): number;
  y(r: number): number;
}

const points = (scale: Scale, list: readonly (readonly [number, number])[]): string =>
  list.map(([z, r]) => `${scale.x(z).toFixed(1)},${scale.y(r).toFixed(1)}`).join(' ');

const pairs = (outline: { readonly z: Float64Array; readonly r: Float64Array }): [number, number][] =>
  Array.from(outline.z, (z, i) => [z, outline.r[i] ?? 0]);

/** The barrel's outer surface between two planes, with its neck. */
const skinBetween = ({ barrelSkin }: Shape, from: number, to: number): [number, number][] =>
  barrelSkin
    .map((piece) => ({ ...piece, from: Math.max(from, piece.from), to: Math.min(to, piece.to) }))
    .filter((piece) => piece.to > piece.from)
    .flatMap((piece) => [
      [piece.from, piece.radius],
      [piece.to, piece.radius],
    ]);

/** A band between the bore and the outside, above and below the axis. */
function Walls({
  shape,
  revision,
  scale,
}: {
  readonly shape: Shape;
  readonly revision: Revision;
  readonly scale: Scale;
}) {
  const { bounds, outline } = shape;
  const bore = pairs(outline.outer);
  const { boreDiameterMm, feedOpening } = revision.barrel;
  const inner = boreDiameterMm / 2000;
  const nozzleBore = bore.filter(([z]) => z >= bounds.barrelEnd - 1e-9);
  const nozzleOuter = revision.nozzle.outerDiameterMm / 2000;
  const opening = [feedOpening.startMm / 1000, (feedOpening.startMm + feedOpening.lengthMm) / 1000] as const;
  const band = (side: number, from: number, to: number) =>
    points(scale, [
      ...skinBetween(shape, from, to).map(([z, r]) => [z, side * r] as const),
      [to, side * inner],
      [from, side * inner],
    ]);
  const nozzle = (side: number) =>
    points(scale, [
      ...nozzleBore.map(([z, r]) => [z, side * r] as const),
      [bounds.end, side * Math.min(nozzleOuter, (nozzleBore.at(-1)?.[1] ?? 0) * 2.5)],
      [bounds.barrelEnd + (bounds.end - bounds.barrelEnd) * 0.6, side * nozzleOuter],
      [bounds.barrelEnd, side * nozzleOuter],
    ]);
  return (
    <>
      <polygon className="draw-barrel" points={band(-1, 0, bounds.barrelEnd)} />
      <polygon className="draw-barrel" points={band(1, 0, opening[0])} />
      <polygon className="draw-barrel" points={band(1, opening[1], bounds.barrelEnd)} />
      <polygon className="draw-nozzle" points={nozzle(1)} />
      <polygon className="draw-nozzle" points={nozzle(-1)} />
    </>
  );
}

function ScrewCut({ shape, scale }: { readonly shape: Shape; readonly scale: Scale }) {
  const root = pairs(shape.outline.inner);
  const mirrored = root.map(([z, r]) => [z, -r] as const).reverse();
  return (
    <>
      {shape.flights.map(({ x, y }) => (
        <polygon
          key={`${x}/${y[0]}`}
          className="draw-flight"
          points={points(
            scale,
            Array.from(x, (at, i) => [at, y[i] ?? 0]),
          )}
        />
      ))}
      <polygon className="draw-root" points={points(scale, [...root, ...mirrored])} />
    </>
  );
}

function Zones({ revision, scale }: { readonly revision: Revision; readonly scale: Scale }) {
  const outer = revision.barrel.outerDiameterMm / 2000;
  return revision.barrel.zones.map((zone) => {
    const [from, to] = [scale.x(zone.startMm / 1000), scale.x(zone.endMm / 1000)];
    const label = zone.kind === 'heated' ? `${zone.name} ${zone.setTempC} °C` : zone.name;
    const room = Math.floor((to - from) / 6.2);
    return (
      <g key={`${zone.startMm}-${zone.name}`} className={`draw-zone ${zone.kind}`}>
        <title>{label}</title>
        <rect x={from} y={scale.y(-outer) + 1} width={Math.max(0, to - from - 1)} height={4} />
        {room > 3 && (
          <text x={(from + to) / 2} y={scale.y(-outer) + 15}>
            {label.length > room ? `${label.slice(0, room - 1)}…` : label}
          </text>
        )}
      </g>
    );
  });
}

/** True to scale where the height allows it, else flattened. */
function scaleFor(shape: Shape, size: BoxSize): Scale {
  const x = axialToPixels(shape.bounds, size.width);
  const perMetre = x(1) - x(0);
  const room = size.height - 22;
  const up = Math.min(perMetre, room / (2 * shape.bounds.radius));
  return { x, y: (r) => 3 + up * shape.bounds.radius - r * up };
}

/** Follows the pointer along the axis; a click picks the position. The slider of the cross-section does it by keys. */
function usePicking(shape: Shape | null, box: React.RefObject<HTMLDivElement | null>) {
  const at = (event: MouseEvent) => {
    const element = box.current;
    if (!shape || !element) return null;
    const z = pixelsToAxial(shape.bounds, element.clientWidth)(event.clientX - element.getBoundingClientRect().left);
    return z >= 0 && z <= shape.bounds.end ? z : null;
  };
  return {
    onPointerMove: (event: MouseEvent) => setView({ hoverZ: at(event) }),
    onClick: (event: MouseEvent) => {
      const z = at(event);
      if (z !== null) pickStation(z);
    },
  };
}

interface StillProps {
  readonly shape: Shape;
  readonly revision: Revision;
  readonly prediction: Prediction | null;
  readonly scale: Scale;
}

/** All that does not follow the pointer. */
const Still = memo(function Machine({ shape, revision, prediction, scale }: StillProps) {
  return (
    <>
      <ContentPatterns />
      {prediction && <ChannelContent {...{ prediction, scale }} />}
      <Walls {...{ shape, revision, scale }} />
      <ScrewCut {...{ shape, scale }} />
      <Zones {...{ revision, scale }} />
    </>
  );
});

const noMarks: readonly MeltMark[] = [];

/** The drawing; empty until a description was accepted. */
export function SideDrawing(): ReactNode {
  const shape = useEvaluation((state) => state.shape);
  const revision = activeRevision(useProject());
  const prediction = useEvaluation((state) => state.prediction);
  const marks = useMemo(() => (prediction ? meltMarks(prediction) : noMarks), [prediction]);
  const [box, size] = useBox();
  const scale = useMemo(() => (shape && size.width > 0 ? scaleFor(shape, size) : null), [shape, size]);
  const outer = revision.barrel.outerDiameterMm / 2000;
  return (
    <div className="side-drawing" ref={box} {...usePicking(shape, box)}>
      {shape && scale && (
        <svg width={size.width} height={size.height} role="img" aria-label={text.axial.drawing}>
          <Still {...{ shape, revision, prediction, scale }} />
          <AxialLines kind="draw" bounds={shape.bounds} width={size.width} height={scale.y(-outer)} marks={marks} />
        </svg>
      )}
    </div>
  );
}
