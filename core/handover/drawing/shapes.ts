/** Small makers of entities, moving them, and the room they take. */

import type {
  Block,
  Box,
  DimensionEntity,
  Entity,
  FillEntity,
  LayerName,
  PathEntity,
  Point,
  TextEntity,
} from './model.ts';

/** A point. */
export const pt = (x: number, y: number): Point => ({ x, y });

/** An open or closed line through points. */
export const path = (layer: LayerName, points: readonly Point[], closed = false): PathEntity => ({
  kind: 'path',
  layer,
  points,
  closed,
});

/** A straight line. */
export const line = (layer: LayerName, from: Point, to: Point): PathEntity => path(layer, [from, to]);

/** An upright rectangle. */
export const rectangle = (layer: LayerName, box: Box): PathEntity =>
  path(
    layer,
    [pt(box.left, box.bottom), pt(box.right, box.bottom), pt(box.right, box.top), pt(box.left, box.top)],
    true,
  );

/** A filled arrow head with its tip at `tip`, coming from the direction (`dx`, `dy`, of length 1), 15° wide as ISO 129 shows. */
export function arrow(layer: LayerName, tip: Point, dx: number, dy: number, size: number): FillEntity {
  const half = size * Math.tan((7.5 * Math.PI) / 180);
  const base = pt(tip.x - dx * size, tip.y - dy * size);
  return {
    kind: 'fill',
    layer,
    points: [tip, pt(base.x - dy * half, base.y + dx * half), pt(base.x + dy * half, base.y - dx * half)],
  };
}

/** A filled dot. */
export function dot(layer: LayerName, at: Point, radius: number): FillEntity {
  const points = Array.from({ length: 12 }, (_, i) => {
    const angle = (i * Math.PI) / 6;
    return pt(at.x + radius * Math.cos(angle), at.y + radius * Math.sin(angle));
  });
  return { kind: 'fill', layer, points };
}

const shifted =
  (dx: number, dy: number) =>
  ({ x, y }: Point): Point => ({ x: x + dx, y: y + dy });

/** A box moved. */
const movedBox = (box: Box, dx: number, dy: number): Box => ({
  left: box.left + dx,
  right: box.right + dx,
  bottom: box.bottom + dy,
  top: box.top + dy,
});

const movedText = (text: TextEntity, dx: number, dy: number): TextEntity => ({
  ...text,
  at: shifted(dx, dy)(text.at),
  box: movedBox(text.box, dx, dy),
});

function movedDimension(entity: DimensionEntity, dx: number, dy: number): DimensionEntity {
  const shift = shifted(dx, dy);
  return {
    ...entity,
    first: shift(entity.first),
    second: shift(entity.second),
    vertex: entity.vertex && shift(entity.vertex),
    place: shift(entity.place),
    label: movedText(entity.label, dx, dy),
    strokes: entity.strokes.map((stroke) => moved(stroke, dx, dy)),
  };
}

/** An entity moved by (`dx`, `dy`), mm. */
export function moved<E extends Entity>(entity: E, dx: number, dy: number): E;
/** Of any kind of entity; mm. */
export function moved(entity: Entity, dx: number, dy: number): Entity {
  const shift = shifted(dx, dy);
  switch (entity.kind) {
    case 'path':
    case 'fill':
      return { ...entity, points: entity.points.map(shift) };
    case 'circle':
    case 'arc':
      return { ...entity, centre: shift(entity.centre) };
    case 'hatch':
      return { ...entity, loops: entity.loops.map((loop) => loop.map(shift)) };
    case 'text':
      return movedText(entity, dx, dy);
    case 'dimension':
      return movedDimension(entity, dx, dy);
  }
}

/** Smallest box round several. */
export const boxOf = (boxes: readonly Box[]): Box => ({
  left: Math.min(...boxes.map((b) => b.left)),
  right: Math.max(...boxes.map((b) => b.right)),
  bottom: Math.min(...boxes.map((b) => b.bottom)),
  top: Math.max(...boxes.map((b) => b.top)),
});

function boxOfPoints(points: readonly Point[]): Box {
  const box = { left: Infinity, right: -Infinity, bottom: Infinity, top: -Infinity };
  for (const { x, y } of points) {
    box.left = Math.min(box.left, x);
    box.right = Math.max(box.right, x);
    box.bottom = Math.min(box.bottom, y);
    box.top = Math.max(box.top, y);
  }
  return box;
}

/** Room that an entity takes, line widths apart; an arc counts as its whole circle's part between its ends. */
export function entityBox(entity: Entity): Box {
  switch (entity.kind) {
    case 'path':
    case 'fill':
      return boxOfPoints(entity.points);
    case 'circle':
      return boxOfPoints([
        pt(entity.centre.x - entity.radius, entity.centre.y - entity.radius),
        pt(entity.centre.x + entity.radius, entity.centre.y + entity.radius),
      ]);
    case 'arc':
      return boxOfPoints(arcPoints(entity.centre, entity.radius, entity.from, entity.to, 24));
    case 'hatch':
      return boxOfPoints(entity.loops.flat());
    case 'text':
      return entity.box;
    case 'dimension':
      return boxOf([entity.label.box, ...entity.strokes.map(entityBox)]);
  }
}

/** Points along an arc; degrees, counter-clockwise. */
export const arcPoints = (centre: Point, radius: number, from: number, to: number, chords: number): Point[] =>
  Array.from({ length: chords + 1 }, (_, i) => {
    const angle = ((from + ((to - from) * i) / chords) * Math.PI) / 180;
    return pt(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle));
  });

/** A block of entities. */
export const blockOf = (name: string, entities: readonly Entity[], aside = false): Block => ({
  name,
  entities,
  box: boxOf(entities.map(entityBox)),
  aside,
});

/** A block moved. */
export const movedBlock = (block: Block, dx: number, dy: number): Block => ({
  ...block,
  entities: block.entities.map((entity) => moved(entity, dx, dy)),
  box: movedBox(block.box, dx, dy),
});

/** Points without those that lie within `slack` (mm) of the line of their neighbours (Douglas and Peucker 1973). */
export function simplified(points: readonly Point[], slack: number): Point[] {
  const keep = new Uint8Array(points.length).fill(0);
  const stack: [number, number][] = [[0, points.length - 1]];
  keep[0] = 1;
  keep[points.length - 1] = 1;
  for (let range = stack.pop(); range; range = stack.pop()) {
    const [from, to] = range;
    const worst = farthest(points, from, to);
    if (worst.distance <= slack) continue;
    keep[worst.index] = 1;
    stack.push([from, worst.index], [worst.index, to]);
  }
  return points.filter((_, i) => keep[i] === 1);
}

function farthest(points: readonly Point[], from: number, to: number): { index: number; distance: number } {
  const a = points[from] as Point;
  const b = points[to] as Point;
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  let worst = { index: from, distance: 0 };
  for (let i = from + 1; i < to; i++) {
    const p = points[i] as Point;
    const distance =
      length < 1e-9
        ? Math.hypot(p.x - a.x, p.y - a.y)
        : Math.abs((b.x - a.x) * (a.y - p.y) - (a.x - p.x) * (b.y - a.y)) / length;
    if (distance > worst.distance) worst = { index: i, distance };
  }
  return worst;
}
