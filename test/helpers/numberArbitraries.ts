/** Numbers as a person types them. */

import fc from 'fast-check';

/** A number from `min` to `max` with at most `decimals` decimals; never minus zero. */
export const decimal = (min: number, max: number, decimals: number): fc.Arbitrary<number> => {
  const scale = 10 ** decimals;
  return fc.integer({ min: Math.ceil(min * scale), max: Math.floor(max * scale) }).map((n) => n / scale);
};
