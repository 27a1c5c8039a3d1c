/** Colour in short, and where along a sweep it passes what is accepted. */

import { type Lab, labToSrgb } from './cielab.ts';
import { colourScale } from './colour.ts';
import { partsProblem } from './colourParts.ts';
import { coloursOf } from './colourReading.ts';
import type { ColouredMaterial } from './colourTypes.ts';
import { deltaE2000 } from './deltaE2000.ts';
import { type AgedPart, extentDistribution } from './extentDistribution.ts';
import { nominalCorner } from './laws.ts';

/** Colour in short, at the stated constants. */
export interface ColourGlance {
  /** against fresh */
  readonly dE00Mean: number;
  readonly dE00Worst: number;
  readonly labMean: Lab;
  /** #rrggbb of the mean */
  readonly srgb: string;
}

/** Colour at one place of a sweep; `at` in the sweep's unit. */
export interface SweepPoint extends ColourGlance {
  readonly at: number;
  /** ends over the doubt of rate and activation energy */
  readonly dE00MeanLow: number;
  readonly dE00MeanHigh: number;
}

/** A stretch of a sweep that keeps the acceptable colour; null where it goes on beyond the sweep's end. */
export interface KeptStretch {
  readonly from: number | null;
  readonly to: number | null;
}

/** Colour over a sweep. */
export interface ColourSweep {
  readonly points: readonly SweepPoint[];
  /** dE00 */
  readonly acceptable: number;
  /** where the mean, and where the worst streak, is within what is accepted; null where nowhere */
  readonly keptMean: KeptStretch | null;
  readonly keptWorst: KeptStretch | null;
  /** why there are no points, or null */
  readonly reason: string | null;
  /** one sentence each */
  readonly assumptions: readonly string[];
}

/** Colour in short, or null where it cannot be said. @param parts see predictColourOfParts */
export function glanceOf(material: ColouredMaterial, parts: readonly AgedPart[]): ColourGlance | null {
  const scale = colourScale(material);
  if (typeof scale === 'string' || partsProblem(parts) !== null) return null;
  const { dE00Mean, dE00Worst, labMean } = coloursOf(scale.path, extentDistribution(scale.law, parts, nominalCorner));
  return { dE00Mean, dE00Worst, labMean, srgb: labToSrgb(labMean).hex };
}

/** Colour difference between layers laid at two places of a sweep, dE00 of their means. */
export const layerStep = (first: ColourGlance, second: ColourGlance): number =>
  deltaE2000(first.labMean, second.labMean);

/** Place between two points where a value meets a limit, by a straight line. */
const meeting = (a: readonly [number, number], b: readonly [number, number], limit: number): number =>
  a[0] + ((b[0] - a[0]) * (limit - a[1])) / (b[1] - a[1]);

/**
 * Longest stretch of a polyline that stays within a limit.
 * @param values rising in the first of each pair
 */
export function keptStretch(values: readonly (readonly [number, number])[], limit: number): KeptStretch | null {
  let best: { stretch: KeptStretch; length: number } | null = null;
  for (let i = 0; i < values.length; i++) {
    if (values[i][1] > limit || (i > 0 && values[i - 1][1] <= limit)) continue;
    let j = i;
    while (j + 1 < values.length && values[j + 1][1] <= limit) j++;
    const from = i === 0 ? null : meeting(values[i - 1], values[i], limit);
    const to = j + 1 === values.length ? null : meeting(values[j], values[j + 1], limit);
    const length = (to ?? values[j][0]) - (from ?? values[i][0]);
    if (!best || length > best.length) best = { stretch: { from, to }, length };
  }
  return best?.stretch ?? null;
}
