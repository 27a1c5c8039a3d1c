/** CIEDE2000 colour difference. */

import type { Lab } from './cielab.ts';

const degree = Math.PI / 180;
const hueOf = (a: number, b: number) => (a === 0 && b === 0 ? 0 : (Math.atan2(b, a) / degree + 360) % 360);
/** C^7/(C^7 + 25^7) under a root: weight of high chroma. */
const chromaWeight = (chroma: number) => Math.sqrt(chroma ** 7 / (chroma ** 7 + 25 ** 7));

/** Hue difference on the shorter arc, degrees; 0 where one colour is grey (eq. 10). */
function hueDifference(from: number, to: number, grey: boolean): number {
  if (grey) return 0;
  const difference = to - from;
  if (difference > 180) return difference - 360;
  return difference < -180 ? difference + 360 : difference;
}

/** Mean hue on the shorter arc, degrees; the sum where one colour is grey (eq. 14). */
function meanHue(first: number, second: number, grey: boolean): number {
  const sum = first + second;
  if (grey) return sum;
  if (Math.abs(first - second) <= 180) return sum / 2;
  return sum < 360 ? (sum + 360) / 2 : (sum - 360) / 2;
}

/** Weighting functions of lightness, chroma and hue and the rotation term (eq. 15 to 21). */
function weights(lightness: number, chroma: number, hue: number) {
  const cosine = (factor: number, shift: number) => Math.cos((factor * hue + shift) * degree);
  const t = 1 - 0.17 * cosine(1, -30) + 0.24 * cosine(2, 0) + 0.32 * cosine(3, 6) - 0.2 * cosine(4, -63);
  const squared = (lightness - 50) ** 2;
  const turn = 30 * Math.exp(-(((hue - 275) / 25) ** 2));
  return {
    lightness: 1 + (0.015 * squared) / Math.sqrt(20 + squared),
    chroma: 1 + 0.045 * chroma,
    hue: 1 + 0.015 * chroma * t,
    rotation: -Math.sin(2 * turn * degree) * 2 * chromaWeight(chroma),
  };
}

/**
 * CIEDE2000 difference with kL = kC = kH = 1.
 * @param first L*a*b*
 * @param second L*a*b* under the same illuminant and observer
 * @returns dE00 >= 0, symmetric; meant for small differences (below about 5), monotone but less uniform beyond
 * Source: Sharma, Wu and Dalal 2005, Color Res. Appl. 30, 21-30, eq. 2 to 22.
 */
export function deltaE2000(first: Lab, second: Lab): number {
  const rawChroma = (Math.hypot(first[1], first[2]) + Math.hypot(second[1], second[2])) / 2;
  const stretch = 1 + 0.5 * (1 - chromaWeight(rawChroma));
  const chroma1 = Math.hypot(stretch * first[1], first[2]);
  const chroma2 = Math.hypot(stretch * second[1], second[2]);
  const hue1 = hueOf(stretch * first[1], first[2]);
  const hue2 = hueOf(stretch * second[1], second[2]);
  const grey = chroma1 * chroma2 === 0;
  const weight = weights((first[0] + second[0]) / 2, (chroma1 + chroma2) / 2, meanHue(hue1, hue2, grey));
  const turned = hueDifference(hue1, hue2, grey);
  const l = (second[0] - first[0]) / weight.lightness;
  const c = (chroma2 - chroma1) / weight.chroma;
  const h = (2 * Math.sqrt(chroma1 * chroma2) * Math.sin((turned / 2) * degree)) / weight.hue;
  return Math.sqrt(Math.max(0, l * l + c * c + h * h + weight.rotation * c * h));
}
