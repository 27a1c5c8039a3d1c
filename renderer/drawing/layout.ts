/** Where the texts of dimensions stand: in lanes above and below the machine, so that none lies over another. */

import type { BoxSize } from '../plots/useBox.ts';
import type { Dimension } from './types.ts';
import type { ToPixels } from './viewport.ts';

/** Height of a lane and of a text's box, px. */
const laneHeight = 18;
/** Height of a text's box, px. */
const boxHeight = 15;
/** Lanes kept free at the least at the upper and the lower edge, whatever the zoom. */
const leastLanes = 3;
/** Room at the lower edge for scale bar and notes, px. */
const footRoom = 30;
/** Free px between neighbours in a lane. */
const gap = 5;
/** Length that arrow heads need inside a dimension line, px. */
const arrows = 16;

/** Width of a text's box, px: wide enough for the widest digits of a system font at 11 px. */
const textWidth = (text: string): number => 7 * text.length + 8;

/** A box on the screen, px. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A dimension with its place on the screen. */
export interface Placed {
  readonly dimension: Dimension;
  readonly text: string;
  readonly box: Box;
  /** the dimension line from end to end, px; null for leaders */
  readonly line: { readonly from: number; readonly to: number; readonly y: number } | null;
  /** where extension lines or the leader begin, px */
  readonly feet: readonly { readonly x: number; readonly y: number }[];
}

/** What was placed, and how many found no room. */
export interface Layout {
  readonly placed: readonly Placed[];
  readonly left: number;
}

/** A stretch of a lane that is taken. */
interface Taken {
  readonly from: number;
  readonly to: number;
}

/** One way to put a dimension into a lane. */
interface Try extends Taken {
  /** left edge of the text's box */
  readonly text: number;
}

interface Band {
  /** middle of lane 0, the one next to the machine */
  readonly first: number;
  readonly way: 1 | -1;
  readonly lanes: Taken[][];
}

const between = (least: number, value: number, most: number): number => Math.max(least, Math.min(most, value));

/** Lanes above or below a machine whose outside reaches from `top` to `bottom`, px. */
function bandsFor(size: BoxSize, top: number, bottom: number): { readonly above: Band; readonly below: Band } {
  const least = leastLanes * laneHeight;
  const room = size.height - footRoom;
  const first = between(least - laneHeight / 2, top - laneHeight * 0.8, Math.max(least, room - laneHeight));
  const last = between(laneHeight, bottom + laneHeight * 0.8, room - least + laneHeight / 2);
  const lanes = (count: number): Taken[][] => Array.from({ length: Math.max(0, count) }, () => []);
  return {
    above: { first, way: -1, lanes: lanes(Math.floor((first - boxHeight / 2) / laneHeight) + 1) },
    below: { first: last, way: 1, lanes: lanes(Math.floor((room - boxHeight / 2 - last) / laneHeight) + 1) },
  };
}

/** Ways to place a line with its text: in the middle where there is room, else beside it. */
function triesAlong(from: number, to: number, width: number, size: BoxSize): readonly Try[] {
  const [low, high] = [Math.max(0, Math.min(from, to)), Math.min(size.width, Math.max(from, to))];
  if (high <= 0 || low >= size.width) return [];
  const whole = { from: low - 2, to: high + 2 };
  if (high - low >= width + arrows) return [{ ...whole, text: (low + high - width) / 2 }];
  const reach = 9;
  return [
    { from: low - reach, to: high + reach + width, text: high + reach },
    { from: low - reach - width, to: high + reach, text: low - reach - width },
  ];
}

function triesAt(x: number, width: number, size: BoxSize): readonly Try[] {
  if (x < 0 || x > size.width) return [];
  return [0, 0.45, -0.45, 1, -1, 1.6, -1.6].map((shift) => {
    const text = between(2, x - width / 2 + shift * width, size.width - width - 2);
    return { from: text, to: text + width, text };
  });
}

const free = (lane: readonly Taken[], { from, to }: Taken): boolean =>
  lane.every((one) => to + gap <= one.from || from - gap >= one.to);

function tries({ mark }: Dimension, width: number, size: BoxSize, at: ToPixels): readonly Try[] {
  return mark.kind === 'along'
    ? triesAlong(at.x(mark.from), at.x(mark.to), width, size)
    : triesAt(at.x(mark.z), width, size);
}

function feetOf({ mark }: Dimension, at: ToPixels): Placed['feet'] {
  if (mark.kind !== 'along') return [{ x: at.x(mark.z), y: at.y(mark.r) }];
  const y = at.y(mark.above ? mark.r : -mark.r);
  return [mark.from, mark.to].map((z) => ({ x: at.x(z), y }));
}

/** Puts one dimension into the first lane that has room. */
function place(dimension: Dimension, text: string, band: Band, size: BoxSize, at: ToPixels): Placed | null {
  const width = textWidth(text);
  const ways = tries(dimension, width, size, at).filter((way) => way.text >= 0 && way.text + width <= size.width);
  for (const [index, lane] of band.lanes.entries()) {
    const way = ways.find((candidate) => free(lane, candidate));
    if (!way) continue;
    lane.push(way);
    const y = band.first + band.way * index * laneHeight;
    const { mark } = dimension;
    const line = mark.kind === 'along' ? { from: at.x(mark.from), to: at.x(mark.to), y } : null;
    const box = { x: way.text, y: y - boxHeight / 2, width, height: boxHeight };
    return { dimension, text, box, line, feet: feetOf(dimension, at) };
  }
  return null;
}

/** Whether anything of a dimension is inside the box. */
function isSeen({ mark }: Dimension, size: BoxSize, { x }: ToPixels): boolean {
  const [from, to] = mark.kind === 'along' ? [x(mark.from), x(mark.to)] : [x(mark.z), x(mark.z)];
  return Math.max(from, to) >= 0 && Math.min(from, to) <= size.width;
}

/** What is to be placed: the dimensions, how their values are written, and the machine's radius, mm. */
export interface Sheet {
  readonly dimensions: readonly Dimension[];
  write(dimension: Dimension): string;
  readonly radius: number;
}

/** Places all dimensions that find room, the more important ones first. */
export function layOut({ dimensions, write, radius }: Sheet, size: BoxSize, at: ToPixels): Layout {
  const bands = bandsFor(size, at.y(radius), at.y(-radius));
  const seen = dimensions.filter((dimension) => isSeen(dimension, size, at));
  const ordered = [...seen].sort((a, b) => a.rank - b.rank);
  const placed = ordered.flatMap((dimension) => {
    const band = dimension.mark.above ? bands.above : bands.below;
    const found = place(dimension, write(dimension), band, size, at);
    return found ? [found] : [];
  });
  return { placed, left: seen.length - placed.length };
}

/** Handles nearer than this to a more important one would hide it, px. */
const crowdPx = 11;

/**
 * Handles that stand in the way of more important ones. They are reached by keys and by their numbers, and come forth
 * when there is room.
 * @param seat where a handle stands on the screen, px
 * @returns ids of their dimensions
 */
export function crowded(
  dimensions: readonly Dimension[],
  seat: (dimension: Dimension) => { readonly x: number; readonly y: number },
): ReadonlySet<string> {
  const kept: { readonly x: number; readonly y: number }[] = [];
  const hidden = new Set<string>();
  for (const dimension of [...dimensions].sort((a, b) => a.rank - b.rank)) {
    const { x, y } = seat(dimension);
    if (kept.some((one) => Math.hypot(one.x - x, one.y - y) < crowdPx)) hidden.add(dimension.id);
    else kept.push({ x, y });
  }
  return hidden;
}
