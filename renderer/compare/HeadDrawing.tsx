/** Half-sections of heads over each other: base filled, every revision in its own line, differences hatched. */

import { memo } from 'react';
import {
  type DifferingStretch,
  differingStretches,
  fromSi,
  type HeadProfile,
  lookNumber,
  lookUnit,
  type PlaneOutline,
  radiusAt,
  unitLabel,
} from '../../core/index.ts';
import { useLook } from '../look.ts';
import { compareText } from '../strings/compare.ts';
import { type DrawingScale, roundPlaces, type Sight } from './drawingScale.ts';
import { colourOf, dashOf } from './marks.tsx';

type Point = readonly [number, number];
type Outline = HeadProfile['bore'];

/** One head to be drawn. */
export interface DrawnHead {
  readonly id: string;
  /** place among the chosen, which decides its line */
  readonly place: number;
  readonly profile: HeadProfile;
  /** added to its z so that it lies on the base, m */
  readonly shift: number;
  /** as cut by the plane; empty until known */
  readonly flights: readonly PlaneOutline[];
}

const pointsOf = ({ z, r }: Outline): Point[] => Array.from(z, (at, i) => [at, r[i] ?? 0]);

/** An outline without the stretch of the feed opening. */
function opened(outline: Outline, { start, end }: HeadProfile['feedOpening']): Point[][] {
  const points = pointsOf(outline);
  return [
    [...points.filter(([z]) => z < start), [start, radiusAt(outline, start, 'before')]],
    [[end, radiusAt(outline, end, 'after')], ...points.filter(([z]) => z > end)],
  ];
}

/** Every line of a head: screw, walls without the feed opening, faces. */
function linesOf({ profile }: DrawnHead): Point[][] {
  const { screw, bore, outside, feedOpening, end } = profile;
  const [inner, outer] = [pointsOf(bore), pointsOf(outside)];
  const face = (z: number, from = 0, to = 0): Point[] => [
    [z, from],
    [z, to],
  ];
  const wall = (z: number, side: 'before' | 'after') => face(z, radiusAt(bore, z, side), radiusAt(outside, z, side));
  const rest = [wall(0, 'after'), wall(feedOpening.start, 'before'), wall(feedOpening.end, 'after')];
  return [
    pointsOf(screw),
    ...opened(bore, feedOpening),
    ...opened(outside, feedOpening),
    ...rest,
    face(end, inner.at(-1)?.[1], outer.at(-1)?.[1]),
  ];
}

const placed = (scale: DrawingScale, shift: number, points: readonly Point[]): string =>
  points.map(([z, r]) => `${scale.x(z + shift).toFixed(1)},${scale.y(r).toFixed(1)}`).join(' ');

/** The upper half's cuts, from root over crest to root. */
const flightLines = ({ flights }: DrawnHead): Point[][] =>
  flights.filter(({ y }) => (y[0] ?? 0) > 0).map(({ x, y }) => Array.from(x, (at, i) => [at, y[i] ?? 0]));

function HeadLines({ head, scale }: { readonly head: DrawnHead; readonly scale: DrawingScale }) {
  const line = { stroke: colourOf(head.place), strokeDasharray: dashOf(head.place).join(' ') };
  return (
    <g className="head-lines" data-revision={head.id}>
      {flightLines(head).map((points) => (
        <polyline key={String(points)} className="head-flight" points={placed(scale, head.shift, points)} {...line} />
      ))}
      {linesOf(head).map((points) => (
        <polyline key={placed(scale, head.shift, points)} points={placed(scale, head.shift, points)} {...line} />
      ))}
    </g>
  );
}

/** The base's solid parts, faintly. */
function BaseFill({ head, scale }: { readonly head: DrawnHead; readonly scale: DrawingScale }) {
  const { screw, bore, outside, feedOpening } = head.profile;
  const down: Point[] = [
    [screw.z.at(-1) ?? 0, 0],
    [screw.z[0] ?? 0, 0],
  ];
  const [before, after] = [opened(bore, feedOpening), opened(outside, feedOpening)];
  return (
    <>
      <polygon className="head-screw" points={placed(scale, head.shift, [...pointsOf(screw), ...down])} />
      {before.map((inner, i) => {
        const walls = [...inner, ...[...(after[i] ?? [])].reverse()];
        return <polygon key={inner[0]?.[0]} className="head-wall" points={placed(scale, head.shift, walls)} />;
      })}
    </>
  );
}

const around = ({ z, base, other }: DifferingStretch): Point[] => [
  ...z.map((at, i): Point => [at, base[i] ?? 0]),
  ...z.map((at, i): Point => [at, other[i] ?? 0]).reverse(),
];

function Differences({ base, head, scale }: { base: DrawnHead; head: DrawnHead; scale: DrawingScale }) {
  const parts = ['screw', 'bore', 'outside'] as const;
  return (
    <g className="head-differences" data-revision={head.id}>
      {parts.flatMap((part) =>
        differingStretches(base.profile[part], head.profile[part], head.shift).map((stretch) => (
          <polygon
            key={`${part} ${stretch.z[0]}`}
            points={placed(scale, 0, around(stretch))}
            fill={`url(#differs-${head.place})`}
          />
        )),
      )}
    </g>
  );
}

/** Hatches lean and lie apart differently for each revision. */
function Hatch({ place }: { readonly place: number }) {
  const apart = 5 + (place % 3);
  return (
    <pattern
      id={`differs-${place}`}
      width={apart}
      height={apart}
      patternUnits="userSpaceOnUse"
      patternTransform={`rotate(${[45, -45, 20, -20, 70, -70][place % 6]})`}
    >
      <line x1={0} y1={0} x2={0} y2={apart} stroke={colourOf(place)} strokeWidth={2} />
    </pattern>
  );
}

function Axis({ sight, scale, width, height }: { sight: Sight; scale: DrawingScale; width: number; height: number }) {
  const look = useLook();
  const unit = lookUnit('mm', look);
  const places = roundPlaces(fromSi(sight.from, unit), fromSi(sight.to, unit), width / 90);
  const perUnit = fromSi(1, unit);
  return (
    <g className="head-axis">
      <line className="head-centre" x1={0} x2={width} y1={scale.y(0)} y2={scale.y(0)} />
      {places.map((place) => (
        <g key={place}>
          <line x1={scale.x(place / perUnit)} x2={scale.x(place / perUnit)} y1={scale.y(0)} y2={scale.y(0) + 4} />
          <text x={scale.x(place / perUnit)} y={scale.y(0) + 16}>
            {lookNumber(place, 6, look)}
          </text>
        </g>
      ))}
      <text className="head-axis-name" x={width / 2} y={height - 4}>
        {compareText.drawings.axis(unitLabel(unit))}
      </text>
    </g>
  );
}

/** The drawing, without what follows the pointer. */
export const HeadDrawing = memo(function Heads(props: {
  readonly heads: readonly DrawnHead[];
  readonly base: DrawnHead;
  readonly sight: Sight;
  readonly scale: DrawingScale;
  readonly width: number;
  readonly height: number;
}) {
  const { heads, base, sight, scale, width, height } = props;
  const others = heads.filter((head) => head !== base);
  return (
    <>
      <defs>
        {others.map(({ place }) => (
          <Hatch key={place} place={place} />
        ))}
        <clipPath id="heads-seen">
          <rect x={0} y={0} width={width} height={Math.max(0, scale.y(0))} />
        </clipPath>
      </defs>
      <g clipPath="url(#heads-seen)">
        <BaseFill head={base} scale={scale} />
        {others.map((head) => (
          <Differences key={head.id} {...{ base, head, scale }} />
        ))}
        {heads.map((head) => (
          <HeadLines key={head.id} {...{ head, scale }} />
        ))}
      </g>
      <Axis {...{ sight, scale, width, height }} />
    </>
  );
});
