/** Colour of two melts seen together. */

import { type Lab, labToXyz, type Xyz, xyzToLab } from './cielab.ts';
import { d65White } from './srgbMatrices.ts';

/**
 * Colour of a share of one melt in another as fine streaks side by side: linear XYZ.
 * @param share of `own`, 0 to 1
 */
export function mixedLab(share: number, own: Lab, rest: Lab): Lab {
  const [first, second] = [labToXyz(own), labToXyz(rest)];
  const mix = (i: 0 | 1 | 2) => share * first[i] + (1 - share) * second[i];
  return xyzToLab([mix(0), mix(1), mix(2)]);
}

/** Reflectance below which a surface counts as black, so that absorption stays finite. */
const blackest = 1e-4;

/** Absorption over scattering of an opaque layer of a reflectance, and back (Kubelka and Munk 1931). */
const absorption = (reflectance: number) => (1 - reflectance) ** 2 / (2 * reflectance);
const reflectance = (ks: number) => 1 + ks - Math.sqrt(ks * ks + 2 * ks);

/**
 * Colour of a share of one melt blended into another down to its pigments: absorption over scattering adds up.
 * @param share of `own`, 0 to 1
 * Both melts opaque and equally scattering, X, Y and Z taken as three broad bands: a dark melt outweighs a pale one.
 * Source: Kubelka and Munk 1931 with the additivity of Duncan 1940, single-constant form; from memory.
 */
export function blendedLab(share: number, own: Lab, rest: Lab): Lab {
  const [first, second] = [labToXyz(own), labToXyz(rest)];
  const band = (xyz: Xyz, i: 0 | 1 | 2) => absorption(Math.min(1, Math.max(blackest, xyz[i] / d65White[i])));
  const mix = (i: 0 | 1 | 2) => d65White[i] * reflectance(share * band(first, i) + (1 - share) * band(second, i));
  return xyzToLab([mix(0), mix(1), mix(2)]);
}
