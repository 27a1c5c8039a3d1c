/** The nozzle: section with its pieces, and their table. */

import { type PlacedSegment, placeSegments } from '../../geometry/bore.ts';
import { angleDimension, heightDimension, upright, uprightRoom } from './dimensions.ts';
import { roughnessMark, roughnessText, through } from './marks.ts';
import type { Block, Entity, Point } from './model.ts';
import { type ChainLink, chainWithTotal, type Mark, markRow } from './rows.ts';
import { centreLine } from './screwOutline.ts';
import { type DrawingSetting, letterHeight } from './setting.ts';
import { line, path, pt } from './shapes.ts';
import { degreesText, mm, numberText, plainSize } from './size.ts';
import { tableBlocks } from './tables.ts';

/** Pieces that have a length, places from the nozzle's own beginning, m. */
export function pieces({ design }: DrawingSetting): PlacedSegment[] {
  const from = design.barrel.length;
  return placeSegments(design)
    .filter(({ start, end }) => end > start)
    .map((piece) => ({ ...piece, start: piece.start - from, end: piece.end - from }));
}

/** Length of the nozzle, m. */
export const nozzleLength = ({ design }: DrawingSetting): number =>
  design.nozzle.segments.reduce((sum, { length }) => sum + length, 0);

/** Included angle of a cone, degrees; 0 for a straight bore. */
const coneAngle = ({ start, end, startRadius, endRadius }: PlacedSegment): number =>
  (360 / Math.PI) * Math.atan2(Math.abs(startRadius - endRadius), end - start);

/** Wall above the axis, on paper. */
function wallLoop(list: readonly PlacedSegment[], outer: number, s: number): Point[] {
  const bore = list.flatMap(({ start, end, startRadius, endRadius }) => [
    pt(start * s, startRadius * s),
    pt(end * s, endRadius * s),
  ]);
  const distinct = bore.filter((p, i) => {
    const before = bore[i - 1];
    return !before || Math.hypot(p.x - before.x, p.y - before.y) > 1e-6;
  });
  const last = distinct[distinct.length - 1] as Point;
  return [...distinct, pt(last.x, outer), pt(0, outer)];
}

/** Edges of the bore that are seen behind the cut. */
function boreEdges(list: readonly PlacedSegment[], s: number): Entity[] {
  const first = list[0] as PlacedSegment;
  const planes = list.map(({ end, endRadius }, i) => ({
    z: end,
    r: Math.min(endRadius, list[i + 1]?.startRadius ?? endRadius),
  }));
  return [{ z: 0, r: first.startRadius }, ...planes].map(({ z, r }) =>
    line('OUTLINE', pt(z * s, -r * s), pt(z * s, r * s)),
  );
}

function coneMark(piece: PlacedSegment, scale: number, height: number): Mark {
  const s = 1e3 * scale;
  const degrees = coneAngle(piece);
  const half = (degrees * Math.PI) / 360;
  const narrows = piece.endRadius < piece.startRadius;
  const wide = Math.max(piece.startRadius, piece.endRadius);
  const narrow = Math.min(piece.startRadius, piece.endRadius);
  // a blunt cone's arc bulges: it is drawn nearer to the narrow end
  const r = wide + (wide - narrow) * (half > 0.9 ? -0.75 : -0.45);
  const toward = narrows ? 1 : -1;
  const wideAt = narrows ? piece.start : piece.end;
  const vertex = pt((wideAt + (toward * wide) / Math.tan(half)) * s, 0);
  const radius = (r / Math.sin(half)) * s;
  const foot = pt(vertex.x - toward * radius * Math.cos(half), r * s);
  const axis = narrows ? 180 : 0;
  return {
    foot,
    room: uprightRoom(height),
    draw: (x, row, knee) => [
      angleDimension(
        { vertex, radius, from: axis - degrees / 2, to: axis + degrees / 2 },
        { value: degrees, prefix: '', fit: null, scale },
        upright(degreesText(degrees), x, row + 0.8, height),
        [foot, pt(foot.x, knee), pt(x, row)],
        height,
      ),
    ],
  };
}

function pieceMarks(list: readonly PlacedSegment[], scale: number, height: number): Mark[] {
  const s = 1e3 * scale;
  return list.flatMap((piece, i) => {
    if (Math.abs(piece.startRadius - piece.endRadius) > 1e-9) return [coneMark(piece, scale, height)];
    // the first and the last bore are measured at the faces
    if (i === 0 || i === list.length - 1) return [];
    const x = ((piece.start + piece.end) / 2) * s;
    const r = piece.startRadius * s;
    return [through({ x, low: pt(x, -r), high: pt(x, r) }, plainSize(mm(2 * piece.startRadius), '⌀', scale), height)];
  });
}

/** Section through the axis y = 0, beginning at x = 0. */
export function nozzleSection(setting: DrawingSetting, scale: number): Entity[] {
  const list = pieces(setting);
  const height = letterHeight(setting);
  const s = 1e3 * scale;
  const outer = (setting.design.nozzle.outerDiameter / 2) * s;
  const wall = wallLoop(list, outer, s);
  const loops = [wall, wall.map(({ x, y }) => pt(x, -y))];
  const right = nozzleLength(setting) * s;
  const away = 2.2 * height + 2;
  const first = list[0] as PlacedSegment;
  const last = list[list.length - 1] as PlacedSegment;
  const [entry, exit] = [first.startRadius * s, last.endRadius * s];
  const links: ChainLink[] = list.map(({ start, end }) => ({
    a: pt(start * s, -outer),
    b: pt(end * s, -outer),
    size: plainSize(mm(end - start), '', scale),
  }));
  const texture = roughnessMark(
    roughnessText(setting.roughness.bore),
    pt(
      (first.start + 0.2 * (first.end - first.start)) * s,
      (first.startRadius + 0.2 * (first.endRadius - first.startRadius)) * s,
    ),
    height,
  );
  const across = (x: number, from: number, r: number, value: number) =>
    heightDimension({ x, low: pt(from, -r), high: pt(from, r) }, plainSize(mm(2 * value), '⌀', scale), height);
  return [
    ...loops.map((loop) => path('OUTLINE', loop, true)),
    { kind: 'hatch', layer: 'HATCH', loops, spacing: 2.5 },
    ...boreEdges(list, s),
    centreLine(0, right),
    across(-away, 0, entry, first.startRadius),
    across(-2 * away, 0, outer, setting.design.nozzle.outerDiameter / 2),
    across(right + away, right, exit, last.endRadius),
    ...chainWithTotal(links, -outer - 1.9 * height - 2, height, plainSize(mm(nozzleLength(setting)), '', scale)),
    ...markRow([texture, ...pieceMarks(list, scale, height)], outer + 9, outer + 3, -2, right + 2),
  ];
}

/** Table of all pieces, shoulders and ledges with them. */
export function pieceTables(setting: DrawingSetting, mostRows: number): Block[] {
  const { nozzle } = setting.design;
  let from = 0;
  const rows = nozzle.segments.map(({ name, length, startDiameter, endDiameter }, i) => {
    const start = from;
    from += length;
    const piece = { start, end: from, startRadius: startDiameter / 2, endRadius: endDiameter / 2 };
    const straight = startDiameter === endDiameter;
    return [
      String(i + 1),
      name,
      numberText(mm(start)),
      numberText(mm(length)),
      numberText(mm(startDiameter)),
      numberText(mm(endDiameter)),
      straight ? 'straight' : length === 0 ? 'flat' : degreesText(coneAngle(piece)),
    ];
  });
  const columns = [
    { head: 'No.' },
    { head: 'Piece', words: true },
    { head: 'From, mm' },
    { head: 'Length, mm' },
    { head: '⌀ start, mm' },
    { head: '⌀ end, mm' },
    { head: 'Incl. angle' },
  ];
  return tableBlocks('Pieces of the bore, in the direction of flow', columns, rows, mostRows);
}
