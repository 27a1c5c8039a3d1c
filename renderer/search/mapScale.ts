/** Steps of a map's colours: round levels, as contour lines would lie. */

import { interpolateViridis } from 'd3-scale-chromatic';

/** Levels that a reader tells apart. */
const wanted = 8;

/** A map's steps: rising edges, one more than there are colours. */
export interface MapSteps {
  readonly edges: readonly number[];
  readonly colours: readonly string[];
}

/** The next of 1, 2, 2.5, 5 times a power of ten. */
function roundStep(raw: number): number {
  const decade = 10 ** Math.floor(Math.log10(raw));
  return (([1, 2, 2.5, 5].find((lead) => lead * decade >= raw * (1 - 1e-9)) ?? 10) as number) * decade;
}

/**
 * Steps over some values.
 * @param values finite ones count; any unit
 * @returns null where there are none
 */
export function mapSteps(values: readonly (number | null)[]): MapSteps | null {
  const finite = values.filter((value): value is number => value !== null && Number.isFinite(value));
  if (finite.length === 0) return null;
  const low = finite.reduce((a, b) => Math.min(a, b));
  const high = finite.reduce((a, b) => Math.max(a, b));
  const step = high > low ? roundStep((high - low) / wanted) : Math.abs(high) || 1;
  const first = Math.floor(low / step + 1e-9);
  const last = Math.max(first + 1, Math.ceil(high / step - 1e-9));
  const edges = Array.from({ length: last - first + 1 }, (_, i) => Number(((first + i) * step).toPrecision(10)));
  const count = edges.length - 1;
  const colours = Array.from({ length: count }, (_, i) => interpolateViridis(count > 1 ? i / (count - 1) : 0.5));
  return { edges, colours };
}

/** Colour of a value. */
export function stepColour({ edges, colours }: MapSteps, value: number): string {
  const above = edges.findIndex((edge) => value < edge);
  const at = above < 0 ? colours.length - 1 : Math.max(0, above - 1);
  return colours[Math.min(at, colours.length - 1)] ?? '';
}
