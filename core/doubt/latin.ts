/** Stratified sampling, the same on every machine for the same seed. */

import { uniformFloat64 } from 'pure-rand/distribution/uniformFloat64';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';

/**
 * Latin hypercube: each input takes every one of n equal strata once, in an order of its own.
 * @param samples n, >= 1
 * @param inputs number of inputs, >= 0
 * @param seed whole number; those that differ by a multiple of 2^32 draw the same, and fractions are cut off
 * @returns row by row, samples x inputs, each above 0 and below 1
 * Source: McKay, Beckman and Conover 1979.
 */
export function latinHypercube(samples: number, inputs: number, seed: number): Float64Array {
  const random = xoroshiro128plus(seed | 0);
  const unit = new Float64Array(samples * inputs);
  for (let input = 0; input < inputs; input++) {
    const order = Uint32Array.from({ length: samples }, (_, i) => i);
    for (let i = samples - 1; i > 0; i--) {
      const other = uniformInt(random, 0, i);
      [order[i], order[other]] = [order[other], order[i]];
    }
    for (let i = 0; i < samples; i++) unit[i * inputs + input] = (order[i] + uniformFloat64(random)) / samples;
  }
  return unit;
}

/**
 * Quantile of the triangular distribution.
 * @param unit 0 to 1
 * @param low, mode, high in order, any unit
 * @returns same unit; the mode where low equals high
 */
export function triangularQuantile(unit: number, low: number, mode: number, high: number): number {
  const span = high - low;
  if (!(span > 0)) return mode;
  const turn = (mode - low) / span;
  return unit < turn
    ? low + Math.sqrt(unit * span * (mode - low))
    : high - Math.sqrt((1 - unit) * span * (high - mode));
}
