/** Rows of labels along a view: a chain of lengths below it, marks above it; labels are spread so that none meet. */

import { arrowedLine, dimensionOf, extensions, lengthDimension, upright, uprightRoom } from './dimensions.ts';
import { textWidth } from './lettering.ts';
import type { DimensionEntity, Entity, Point } from './model.ts';
import { path, pt } from './shapes.ts';
import { auxiliary, type Size, sizeText } from './size.ts';

/**
 * Places for labels near where they are wanted, in rising order, none nearer than half their sizes together.
 * The mean of pushing all to the right and all to the left keeps every distance and shares the shift.
 */
function spread(wanted: readonly number[], sizes: readonly number[], least: number, most: number): number[] {
  const apart = (i: number) => ((sizes[i] as number) + (sizes[i + 1] as number)) / 2;
  const right = [...wanted];
  const left = [...wanted];
  const n = wanted.length;
  for (let i = 1; i < n; i++) right[i] = Math.max(right[i] as number, (right[i - 1] as number) + apart(i - 1));
  for (let i = n - 2; i >= 0; i--) left[i] = Math.min(left[i] as number, (left[i + 1] as number) - apart(i));
  const mean = wanted.map((_, i) => ((right[i] as number) + (left[i] as number)) / 2);
  const total = sizes.reduce((sum, size) => sum + size, 0);
  const spare = Math.max(0, total - (most - least)) / 2;
  for (let i = 0; i < n; i++) {
    const from = i === 0 ? least - spare + (sizes[0] as number) / 2 : (mean[i - 1] as number) + apart(i - 1);
    mean[i] = Math.max(mean[i] as number, from);
  }
  for (let i = n - 1; i >= 0; i--) {
    const to = i === n - 1 ? most + spare - (sizes[i] as number) / 2 : (mean[i + 1] as number) - apart(i);
    mean[i] = Math.min(mean[i] as number, to);
  }
  return mean;
}

/** A label above a view. */
export interface Mark {
  /** where on the part it points */
  readonly foot: Point;
  /** room along the row, mm */
  readonly room: number;
  /** draws it with its leader: centre of its place on the row, height of the row and of the leader's knee */
  draw(x: number, row: number, knee: number): readonly Entity[];
}

/** Marks in a row at `row`, leaders bending at `knee`, between the limits along x. */
export function markRow(marks: readonly Mark[], row: number, knee: number, least: number, most: number): Entity[] {
  const sorted = [...marks].sort((a, b) => a.foot.x - b.foot.x);
  const places = spread(
    sorted.map((mark) => mark.foot.x),
    sorted.map((mark) => mark.room),
    least,
    most,
  );
  return sorted.flatMap((mark, i) => mark.draw(places[i] as number, row, knee));
}

/** A length in a chain. */
export interface ChainLink {
  readonly a: Point;
  readonly b: Point;
  readonly size: Size;
}

/** Whether a link's text has room over its own dimension line. */
const isRoomy = ({ a, b, size }: ChainLink, height: number): boolean =>
  b.x - a.x >= textWidth(sizeText(size), height) + 1.6;

/** A link whose text stands upright below the chain at `x`. */
function hungLink({ a, b, size }: ChainLink, y: number, x: number, height: number): DimensionEntity {
  const text = sizeText(size);
  const label = upright(text, x, y - 6 - textWidth(text, height), height);
  const middle = (a.x + b.x) / 2;
  const strokes = [
    ...extensions(a, b, y, -1),
    ...arrowedLine(pt(a.x, y), pt(b.x, y), height, 'strokes'),
    path('DIMENSION', [pt(middle, y), pt(middle, y - 2.2), pt(x, y - 5.4)]),
  ];
  const points = { first: a, second: b, vertex: null, place: pt(b.x, y), along: 'x' as const };
  return dimensionOf('linear', size, points, label, strokes);
}

/** Chain of lengths at height `y` below a part; `bottom` is how far down it reaches, mm. */
function lengthChain(links: readonly ChainLink[], y: number, height: number): { entities: Entity[]; bottom: number } {
  const tight = links.filter((link) => !isRoomy(link, height));
  const left = Math.min(...links.map(({ a }) => a.x));
  const right = Math.max(...links.map(({ b }) => b.x));
  const places = spread(
    tight.map(({ a, b }) => (a.x + b.x) / 2),
    tight.map(() => uprightRoom(height)),
    left + 1.5,
    right - 1.5,
  );
  const hung = tight.map((link, i) => hungLink(link, y, places[i] as number, height));
  const roomy = links.filter((link) => isRoomy(link, height));
  const bottom = Math.min(y, ...hung.map(({ label }) => label.box.bottom));
  return { entities: [...roomy.map(({ a, b, size }) => lengthDimension(a, b, y, size, height)), ...hung], bottom };
}

/** A chain and, where it has several links, the whole length under it, in brackets: it follows from the links. */
export function chainWithTotal(links: readonly ChainLink[], y: number, height: number, total: Size): Entity[] {
  const chain = lengthChain(links, y, height);
  const first = links[0];
  const last = links[links.length - 1];
  if (links.length < 2 || !first || !last) return chain.entities;
  const under = chain.bottom - 2.6 * height - 1;
  return [...chain.entities, lengthDimension(first.a, last.b, under, auxiliary(total), height)];
}
