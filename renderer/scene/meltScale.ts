/** Colours of times and speeds: perceptually even maps that colour-blind people can read. */

import { interpolateCividis, interpolateViridis } from 'd3-scale-chromatic';

/** Times shown, in multiples of the mean; beyond them the end colour holds. */
const shownTimes = { from: 0.1, to: 10 } as const;

/** Marks of the legend, multiples of the mean. */
export const timeMarks = [0.1, 0.3, 1, 3, 10] as const;

/** Place of a time (in multiples of the mean) on the logarithmic scale, 0 to 1. */
export function timePlace(multiple: number): number {
  const place = Math.log(Math.max(multiple, 1e-9) / shownTimes.from) / Math.log(shownTimes.to / shownTimes.from);
  return Math.min(1, Math.max(0, place));
}

/** Colour of a place on the scale of times, as CSS. */
export const timeColour = (place: number): string => interpolateViridis(place);

/** Colour of a place on the scale of speeds, as CSS; another map, so that the two are not mistaken. */
export const speedColour = (place: number): string => interpolateCividis(place);

/** A CSS gradient of a colour map, left to right. */
export function gradientOf(colour: (place: number) => string): string {
  const stops = Array.from({ length: 17 }, (_, i) => colour(i / 16));
  return `linear-gradient(to right, ${stops.join(', ')})`;
}
