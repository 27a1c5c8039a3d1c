/** Colour against print speed and against set temperature, and where it passes what is accepted. */

import type { Design } from '../design/types.ts';
import { type Lab, labToSrgb } from './cielab.ts';
import { colourScale } from './colour.ts';
import { partsProblem, scaledParts, shiftedParts } from './colourParts.ts';
import { coloursOf } from './colourReading.ts';
import type { ColouredMaterial } from './colourTypes.ts';
import { deltaE2000 } from './deltaE2000.ts';
import { type AgedPart, extentDistribution } from './extentDistribution.ts';
import { nominalCorner, rangeCorners } from './laws.ts';

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

/** What a sweep needs of a design. */
export interface SweptDesign {
  readonly material: ColouredMaterial;
  readonly process: Pick<Design['process'], 'acceptableDeltaE'>;
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

function pointAt(material: ColouredMaterial, parts: readonly AgedPart[], at: number): SweepPoint | null {
  const scale = colourScale(material);
  const glance = glanceOf(material, parts);
  if (!glance || typeof scale === 'string') return null;
  const ends = rangeCorners.map(
    (corner) => coloursOf(scale.path, extentDistribution(scale.law, parts, corner)).dE00Mean,
  );
  const all = [glance.dE00Mean, ...ends];
  return { at, ...glance, dE00MeanLow: Math.min(...all), dE00MeanHigh: Math.max(...all) };
}

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

function sweepOf(
  design: SweptDesign,
  places: readonly number[],
  partsAt: (place: number) => readonly AgedPart[],
  assumptions: readonly string[],
): ColourSweep {
  const acceptable = design.process.acceptableDeltaE;
  const scale = colourScale(design.material);
  const sorted = [...places].sort((a, b) => a - b);
  const points = sorted.flatMap((place) => pointAt(design.material, partsAt(place), place) ?? []);
  const kept = (value: (point: SweepPoint) => number) =>
    keptStretch(
      points.map((point) => [point.at, value(point)] as const),
      acceptable,
    );
  const nothing = points.length === 0 ? 'The colour cannot be said at any of these points.' : null;
  return {
    points,
    acceptable,
    keptMean: kept((point) => point.dE00Mean),
    keptWorst: kept((point) => point.dE00Worst),
    reason: typeof scale === 'string' ? scale : nothing,
    assumptions,
  };
}

/**
 * Colour over print speed (or screw speed, or flow).
 * @param speeds any order, one unit
 * @param partsAt ages and temperatures at a speed: from predictions (see agedParts), or `partsByFlow`; none where
 * nothing flows
 */
export const colourOverSpeed = (
  design: SweptDesign,
  speeds: readonly number[],
  partsAt: (speed: number) => readonly AgedPart[],
): ColourSweep => sweepOf(design, speeds, partsAt, ['Each speed is a steady state of its own.']);

/**
 * Parts at other flows from those at one flow: times go as 1/flow, melt volumes and temperatures kept.
 * @param flow m³/s of `parts`, > 0; @param flowAt m³/s at a speed
 * Exact for full channels of constant temperature and power-law melt at a fixed throttle ratio; else a first answer.
 */
export const partsByFlow =
  (parts: readonly AgedPart[], flow: number, flowAt: (speed: number) => number) =>
  (speed: number): readonly AgedPart[] => {
    const there = flowAt(speed);
    return there > 0 ? scaledParts(parts, flow / there) : [];
  };

/**
 * Colour over set temperature.
 * @param setTemperature K at which `parts` hold
 * @param temperatures K, any order: all of the melt is shifted by the difference
 */
export const colourOverTemperature = (
  design: SweptDesign,
  parts: readonly AgedPart[],
  setTemperature: number,
  temperatures: readonly number[],
): ColourSweep =>
  sweepOf(design, temperatures, (temperature) => shiftedParts(parts, temperature - setTemperature), [
    'The residence is kept and all melt follows the set temperatures degree for degree: only the rates change.',
    'Thinner melt at a higher temperature changes output and residence a little; predict there to see it.',
  ]);
