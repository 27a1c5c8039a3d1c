/** Colour of two melts seen together. */

import { type Lab, labToXyz, xyzToLab } from './cielab.ts';

/**
 * Colour of a share of one melt evenly in another, mixed in linear XYZ.
 * @param share of `own`, 0 to 1
 */
export function mixedLab(share: number, own: Lab, rest: Lab): Lab {
  const [first, second] = [labToXyz(own), labToXyz(rest)];
  const mix = (i: 0 | 1 | 2) => share * first[i] + (1 - share) * second[i];
  return xyzToLab([mix(0), mix(1), mix(2)]);
}
