/** Round values while pulling: a step that suits the zoom, and neighbours that a pull sticks to. */

import { fromSi, toSi } from '../../core/index.ts';
import { clean, type Magnet } from './types.ts';

const inches = (value: number): number => fromSi(toSi(value, 'in'), 'mm');

/** Steps of lengths in mm, for readers of inches too, and of angles in degrees; the smallest worth pulling is taken. */
const steps = {
  mm: [0.1, 0.5, 1, 5],
  in: [0.005, 0.02, 0.05, 0.2].map(inches),
  '°': [1, 5],
} as const;
/** A step moves the hand at least this far, px. */
const leastPixels = 1;
/** A neighbour's value holds the hand within this, px. */
const stickPixels = 6;
/** Alt divides the step by this. */
const finer = 10;

/** How a pull is rounded. */
export interface Rounding {
  readonly unit: keyof typeof steps;
  /** value per px under the hand; its size only */
  readonly perPixel: number;
  /** Alt is held */
  readonly fine: boolean;
  readonly magnets: readonly Magnet[];
}

/** The step, in the value's unit. */
export function stepFor({ unit, perPixel, fine }: Omit<Rounding, 'magnets'>): number {
  const list: readonly number[] = steps[unit];
  const step = list.find((candidate) => candidate >= leastPixels * Math.abs(perPixel)) ?? list[list.length - 1];
  return fine ? step / finer : step;
}

/** A rounded value and the neighbour it sticks to, if any. */
export interface Snapped {
  readonly value: number;
  readonly magnet: Magnet | null;
}

/** Rounds a raw value; with Alt no neighbour holds it. */
export function snap(raw: number, rounding: Rounding): Snapped {
  const reach = stickPixels * Math.abs(rounding.perPixel);
  const near = rounding.fine
    ? []
    : rounding.magnets
        .map((magnet) => ({ magnet, away: Math.abs(magnet.value - raw) }))
        .filter(({ away }) => away <= reach)
        .sort((a, b) => a.away - b.away);
  const [best] = near;
  if (best) return { value: best.magnet.value, magnet: best.magnet };
  const step = stepFor(rounding);
  return { value: clean(Math.round(raw / step) * step), magnet: null };
}
