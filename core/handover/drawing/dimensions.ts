/** Dimensions after ISO 129-1: extension lines, arrows, text over the line; where there is no room, strokes and labels beside. */

import { lettering } from './lettering.ts';
import type { ArcEntity, DimensionEntity, Entity, FillEntity, PathEntity, Point, TextEntity } from './model.ts';
import { arrow, line, path, pt } from './shapes.ts';
import { type Size, sizeText } from './size.ts';

/** Extension lines start this far from the part, mm. */
const extensionGap = 0.8;
/** Extension lines run on this far over the dimension line, mm. */
const extensionReach = 1.6;
/** Room between a line and the text over it, mm. */
const textGap = 0.9;
/** Size of an arrow for a height of lettering: as long as a figure is high. */
const arrowSize = (height: number): number => height;

type Stroke = PathEntity | ArcEntity | FillEntity;
const D = 'DIMENSION' as const;

/** Puts a dimension together. */
export function dimensionOf(
  form: DimensionEntity['form'],
  size: Size,
  points: Pick<DimensionEntity, 'first' | 'second' | 'vertex' | 'place' | 'along'>,
  label: TextEntity,
  strokes: readonly Stroke[],
): DimensionEntity {
  const limits = size.fit && { upper: size.fit.upper, lower: size.fit.lower };
  const { value, prefix, scale } = size;
  return { kind: 'dimension', layer: D, form, value, prefix, limits, scale, ...points, label, strokes };
}

/** Dimension line from a to b with arrows inside, outside or (short) oblique strokes. */
export function arrowedLine(a: Point, b: Point, height: number, tight: 'outside' | 'strokes'): Stroke[] {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const dx = (b.x - a.x) / length || 0;
  const dy = (b.y - a.y) / length || 0;
  const size = arrowSize(height);
  if (length >= 2 * size + 0.8) return [line(D, a, b), arrow(D, a, -dx, -dy, size), arrow(D, b, dx, dy, size)];
  if (tight === 'strokes') return [line(D, a, b), oblique(a), oblique(b)];
  const run = 2 * size;
  return [
    line(D, pt(a.x - dx * run, a.y - dy * run), pt(b.x + dx * run, b.y + dy * run)),
    arrow(D, a, dx, dy, size),
    arrow(D, b, -dx, -dy, size),
  ];
}

const oblique = (at: Point): PathEntity => line(D, pt(at.x - 0.9, at.y - 0.9), pt(at.x + 0.9, at.y + 0.9));

/** Horizontal measure at height `y`, text in the middle over it; to its left where it is too short. */
export function lengthDimension(a: Point, b: Point, y: number, size: Size, height: number): DimensionEntity {
  const down = y < Math.min(a.y, b.y) ? -1 : 1;
  const text = sizeText(size);
  const inside = lettering(text, pt((a.x + b.x) / 2, y + textGap), height, { align: 'middle', layer: D });
  const fits = inside.width <= b.x - a.x - 1;
  const label = fits ? inside : lettering(text, pt(a.x - 2.4, y + textGap), height, { align: 'right', layer: D });
  const tail = fits ? [] : [line(D, pt(label.box.left, y), pt(a.x, y))];
  const strokes = [...extensions(a, b, y, down), ...arrowedLine(pt(a.x, y), pt(b.x, y), height, 'strokes'), ...tail];
  return dimensionOf(
    'linear',
    size,
    { first: a, second: b, vertex: null, place: pt(b.x, y), along: 'x' },
    label,
    strokes,
  );
}

/** Extension lines of a horizontal measure. */
export function extensions(a: Point, b: Point, y: number, down: 1 | -1): PathEntity[] {
  return [a, b].map((p) => line(D, pt(p.x, p.y + down * extensionGap), pt(p.x, y + down * extensionReach)));
}

/** A vertical measure. */
export interface UprightMeasure {
  /** where the dimension line stands */
  readonly x: number;
  /** the measured points */
  readonly low: Point;
  readonly high: Point;
}

/** Vertical measure beside a part; its text reads from the right, and climbs above the line where the measure is short. */
export function heightDimension({ x, low, high }: UprightMeasure, size: Size, height: number): DimensionEntity {
  const text = sizeText(size);
  const probe = lettering(text, pt(0, 0), height);
  const fits = high.y - low.y >= probe.width + 1;
  const arrowed = high.y - low.y >= 2 * arrowSize(height) + 0.8;
  const start = fits
    ? (low.y + high.y - probe.width) / 2
    : high.y + (arrowed ? extensionReach + 0.6 : 2 * arrowSize(height));
  const label = lettering(text, pt(x - 1.2, start), height, { turn: 90, layer: D });
  const extended = [low, high].map((p) => {
    const side = Math.sign(x - p.x) || 1;
    return line(D, pt(p.x + side * extensionGap, p.y), pt(x + side * extensionReach, p.y));
  });
  const tail = fits ? [] : [line(D, pt(x, high.y), pt(x, label.box.top))];
  const strokes = [...extended, ...arrowedLine(pt(x, low.y), pt(x, high.y), height, 'outside'), ...tail];
  const points = { first: low, second: high, vertex: null, place: pt(x, high.y), along: 'y' as const };
  return dimensionOf('linear', size, points, label, strokes);
}

/** An upward label: centre and lower end of its turned text. */
export const upright = (text: string, x: number, y: number, height: number): TextEntity =>
  lettering(text, pt(x + 0.39 * height, y), height, { turn: 90, layer: D });

/** Room that an upright label needs beside its neighbours, mm. */
export const uprightRoom = (height: number): number => 1.38 * height + 1.2;

/** A vertical measure through the part at `x`, its text in a row above it: `row` is where the text stands. */
export function throughDimension(
  { x, low, high }: UprightMeasure,
  size: Size,
  height: number,
  row: { readonly x: number; readonly y: number; readonly knee: number },
): DimensionEntity {
  const label = upright(sizeText(size), row.x, row.y + 0.8, height);
  const leader = path(D, [pt(x, high.y), pt(x, row.knee), pt(row.x, row.y)]);
  const strokes = [...arrowedLine(pt(x, low.y), pt(x, high.y), height, 'outside'), leader];
  const points = { first: low, second: high, vertex: null, place: pt(x, high.y), along: 'y' as const };
  return dimensionOf('linear', size, points, label, strokes);
}

/** Legs of an angle and where its arc runs. */
export interface AngleMeasure {
  readonly vertex: Point;
  /** of the arc, mm on paper */
  readonly radius: number;
  /** degrees, counter-clockwise */
  readonly from: number;
  readonly to: number;
}

const polar = ({ x, y }: Point, radius: number, degrees: number): Point =>
  pt(x + radius * Math.cos((degrees * Math.PI) / 180), y + radius * Math.sin((degrees * Math.PI) / 180));

/** An angle with an arc between its legs; `leader` runs from the arc's middle or end to the label. */
export function angleDimension(
  { vertex, radius, from, to }: AngleMeasure,
  size: Size,
  label: TextEntity,
  leader: readonly Point[],
  height: number,
): DimensionEntity {
  const ends = [polar(vertex, radius, from), polar(vertex, radius, to)] as const;
  const arc: ArcEntity = { kind: 'arc', layer: D, centre: vertex, radius, from, to };
  const head = Math.min(arrowSize(height), radius * 0.6);
  const heading = (degrees: number, sign: 1 | -1) => {
    // the head's own length turns it off the tangent
    const angle = ((degrees + sign * (90 - (head / radius) * 28.6)) * Math.PI) / 180;
    return [Math.cos(angle), Math.sin(angle)] as const;
  };
  const heads = [arrow(D, ends[0], ...heading(from, -1), head), arrow(D, ends[1], ...heading(to, 1), head)];
  const wide = (radius * (to - from) * Math.PI) / 180 >= 2 * head + 0.5;
  const strokes = [arc, ...(wide ? heads : []), ...(leader.length > 1 ? [path(D, leader)] : [])];
  const place = polar(vertex, radius, (from + to) / 2);
  const points = { first: ends[0], second: ends[1], vertex, place, along: 'x' as const };
  return dimensionOf('angular', size, points, label, strokes);
}

/** A radius: arrow on the arc, along a leader to its label. */
export function radiusDimension(
  centre: Point,
  onArc: Point,
  size: Size,
  label: TextEntity,
  leader: readonly Point[],
  height: number,
): DimensionEntity {
  const next = leader[0] ?? onArc;
  const length = Math.hypot(onArc.x - next.x, onArc.y - next.y) || 1;
  const head = arrow(D, onArc, (onArc.x - next.x) / length, (onArc.y - next.y) / length, arrowSize(height));
  const points = { first: centre, second: onArc, vertex: null, place: onArc, along: 'x' as const };
  return dimensionOf('radius', size, points, label, [path(D, [onArc, ...leader]), head]);
}

/** Every text of an entity. */
export const textsOf = (entity: Entity): readonly TextEntity[] =>
  entity.kind === 'text' ? [entity] : entity.kind === 'dimension' ? [entity.label] : [];
