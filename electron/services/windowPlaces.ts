/**
 * Where windows stood, kept from start to start. Ours, because the package for it takes whatever the file says: here
 * the file is checked, and a place on a display that is gone, or outside every display, is moved back into view.
 */

import { z } from 'zod';
import { readTextFile, writeTextFile } from './textFile.ts';

/** A rectangle on the desktop, in the system's points. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** A display, and the part of it that windows may cover. */
export interface Display {
  readonly id: number;
  readonly workArea: Area;
}

const point = z.number().int().min(-100_000).max(100_000);
const length = z.number().int().min(1).max(100_000);
const stored = z.strictObject({
  x: point,
  y: point,
  width: length,
  height: length,
  maximized: z.boolean(),
  display: z.number().int().min(0).max(Number.MAX_SAFE_INTEGER),
});

/** Place of a window, its size where it is not maximised, and the display that it is on. */
export type WindowPlace = z.infer<typeof stored>;

/** Smallest window that the layout is made for, and the one of a first start. */
export const leastSize = { width: 960, height: 640 };
const firstSize = { width: 1440, height: 900 };
/** How far one more window stands off the one before it. */
const cascade = 32;
/** Longest file that is read, bytes. */
const longestFile = 4_096;

/** The place kept in a file, or null where there is none or it makes no sense. */
export async function readPlace(path: string): Promise<WindowPlace | null> {
  const text = await readTextFile(path, longestFile);
  if (!text.ok) return null;
  try {
    return stored.parse(JSON.parse(text.value));
  } catch {
    return null;
  }
}

/** Keeps a place; one that cannot be written is given up, since no work is lost by it. */
export async function writePlace(path: string, place: WindowPlace): Promise<void> {
  await writeTextFile(path, `${JSON.stringify(place)}\n`);
}

const overlap = (a: Area, b: Area): number => {
  const across = Math.min(a.x + a.width, b.x + b.width) - Math.max(a.x, b.x);
  const down = Math.min(a.y + a.height, b.y + b.height) - Math.max(a.y, b.y);
  return Math.max(0, across) * Math.max(0, down);
};

/** The display a place belongs to: its own, else the one it covers most, else the first. */
function displayOf(displays: readonly [Display, ...Display[]], place: WindowPlace): Display {
  const own = displays.find(({ id, workArea }) => id === place.display && overlap(workArea, place) > 0);
  const most = displays.reduce((best, one) =>
    overlap(one.workArea, place) > overlap(best.workArea, place) ? one : best,
  );
  return own ?? most;
}

const within = (value: number, least: number, most: number): number => Math.max(least, Math.min(value, most));

/**
 * Where to open a window, wholly in view on one of the displays.
 * @param displays those that exist, the main one first
 * @param kept the place of last time, or null: the middle of the main display
 * @param before how many windows stand there already; each further one stands a little off
 */
export function placeInView(displays: readonly [Display, ...Display[]], kept: WindowPlace | null, before = 0): Area {
  const { workArea } = kept ? displayOf(displays, kept) : displays[0];
  const { width: wide, height: high } = kept ?? firstSize;
  const width = Math.min(Math.max(wide, leastSize.width), workArea.width);
  const height = Math.min(Math.max(high, leastSize.height), workArea.height);
  const left = kept?.x ?? workArea.x + Math.round((workArea.width - width) / 2);
  const top = kept?.y ?? workArea.y + Math.round((workArea.height - height) / 2);
  const off = cascade * (before % 8);
  return {
    x: within(left + off, workArea.x, workArea.x + workArea.width - width),
    y: within(top + off, workArea.y, workArea.y + workArea.height - height),
    width,
    height,
  };
}
