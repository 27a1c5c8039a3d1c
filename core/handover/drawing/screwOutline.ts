/** Lines of the screw's side view. */

import type { Design } from '../../design/types.ts';
import { flightRadius, type PlacedSection, placeSections } from '../../geometry/profile.ts';
import { tipOutline, tipShape } from '../../geometry/tip.ts';
import { type Axis, breakGap, onPaper } from './axis.ts';
import { envelope, flightEdges, type SidePoint } from './helixView.ts';
import type { Entity, PathEntity, Point } from './model.ts';
import { line, path, pt, simplified } from './shapes.ts';

/** Deviation allowed where points are left out, mm on paper. */
const slack = 0.015;
const hemisphereChords = 48;

const toPaper = (axis: Axis, points: readonly SidePoint[]): Point[] =>
  simplified(
    points.map(({ z, y }) => pt(onPaper(axis, z), y * 1e3 * axis.scale)),
    slack,
  );

/** The drawn parts of a stretch of the screw. */
const drawnParts = (axis: Axis, from: number, to: number) =>
  axis.pieces
    .map((piece) => ({ from: Math.max(piece.from, from), to: Math.min(piece.to, to) }))
    .filter((part) => part.to - part.from > 1e-9);

function sectionLines(design: Design, axis: Axis, placed: PlacedSection): PathEntity[] {
  const sharp = placed.section.kind === 'flighted' && placed.section.rootFillet === 0;
  return drawnParts(axis, placed.start, placed.end).flatMap(({ from, to }) => [
    path('OUTLINE', toPaper(axis, envelope(design, placed, from, to, 1))),
    path('OUTLINE', toPaper(axis, envelope(design, placed, from, to, -1))),
    ...flightEdges(design, placed, from, to).map(({ kind, points }) =>
      path(kind === 'crest' || sharp ? 'OUTLINE' : 'THIN', toPaper(axis, points)),
    ),
  ]);
}

/** Faces across the axis where a flight or a step of the root begins or ends. */
function endFaces(design: Design, axis: Axis): PathEntity[] {
  const placed = placeSections(design.screw);
  const face = (z: number, section: PlacedSection, at: 'start' | 'end') => {
    const reach = (up: 1 | -1) => {
      const points = envelope(design, section, section.start, section.end, up, 24);
      return (points[at === 'start' ? 0 : points.length - 1] as SidePoint).y;
    };
    const x = onPaper(axis, z);
    return line('OUTLINE', pt(x, reach(-1) * 1e3 * axis.scale), pt(x, reach(1) * 1e3 * axis.scale));
  };
  return placed.flatMap((section, i) => {
    const next = placed[i + 1];
    const same = next && Math.abs(next.section.rootDiameterStart - section.section.rootDiameterEnd) < 1e-9;
    const joined = same && next.section.kind === section.section.kind;
    const first = i === 0 ? [face(section.start, section, 'start')] : [];
    if (joined) return first;
    const faces = [face(section.end, section, 'end')];
    return next ? [...first, ...faces, face(next.start, next, 'start')] : [...first, ...faces];
  });
}

function tipLines(design: Design, axis: Axis): PathEntity[] {
  const points = tipOutline(tipShape(design), hemisphereChords);
  const along = (sign: 1 | -1) =>
    path(
      'OUTLINE',
      points.map(({ z, r }) => pt(onPaper(axis, z), sign * r * 1e3 * axis.scale)),
    );
  const { pinRadius, start, bodyLength } = tipShape(design);
  const pin = pinRadius * 1e3 * axis.scale;
  const joint = onPaper(axis, start + bodyLength);
  return [
    along(1),
    along(-1),
    ...(pinRadius > 0 && bodyLength > 0 ? [line('OUTLINE', pt(joint, -pin), pt(joint, pin))] : []),
  ];
}

function shankLines({ screw }: Design, axis: Axis): PathEntity[] {
  if (screw.shankLength === 0) return [];
  const r = (screw.shankDiameter / 2) * 1e3 * axis.scale;
  return drawnParts(axis, -screw.shankLength, 0).flatMap(({ from, to }) => {
    const [left, right] = [onPaper(axis, from), onPaper(axis, to)];
    const ends = [
      ...(from <= -screw.shankLength + 1e-9 ? [line('OUTLINE', pt(left, -r), pt(left, r))] : []),
      ...(to >= -1e-9 ? [line('OUTLINE', pt(right, -r), pt(right, r))] : []),
    ];
    return [line('OUTLINE', pt(left, r), pt(right, r)), line('OUTLINE', pt(left, -r), pt(right, -r)), ...ends];
  });
}

/** Zigzag of a break line at `x` between heights. */
function breakLine(x: number, low: number, high: number): PathEntity {
  const middle = (low + high) / 2;
  return path('THIN', [
    pt(x, low - 1.5),
    pt(x, middle - 1.6),
    pt(x - 0.9, middle - 0.6),
    pt(x + 0.9, middle + 0.6),
    pt(x, middle + 1.6),
    pt(x, high + 1.5),
  ]);
}

/** Break lines of an axis between heights; none where nothing is left out. */
export const breakLines = (axis: Axis, low: number, high: number): PathEntity[] =>
  axis.pieces.slice(1).flatMap(({ x }) => [breakLine(x - breakGap, low, high), breakLine(x, low, high)]);

/** Axis line of a part. */
export const centreLine = (left: number, right: number, y = 0): PathEntity =>
  line('CENTRE', pt(left - 3, y), pt(right + 3, y));

/** All lines of the side view, axis on y = 0. */
export function screwLines(design: Design, axis: Axis): Entity[] {
  const crest = flightRadius(design) * 1e3 * axis.scale;
  const left = onPaper(axis, -design.screw.shankLength);
  return [
    ...shankLines(design, axis),
    ...placeSections(design.screw).flatMap((placed) => sectionLines(design, axis, placed)),
    ...endFaces(design, axis),
    ...tipLines(design, axis),
    ...breakLines(axis, -crest, crest),
    centreLine(left, onPaper(axis, tipShape(design).end)),
  ];
}
