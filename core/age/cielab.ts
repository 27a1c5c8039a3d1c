/** CIE XYZ, CIE L*a*b* and sRGB under D65 and the 2-degree observer. */

import { d65White, linearSrgbToXyz, xyzToLinearSrgb } from './srgbMatrices.ts';

/** L*, a*, b*. */
export type Lab = readonly [number, number, number];
/** X, Y, Z with Y = 100 for the perfect diffuser. */
export type Xyz = readonly [number, number, number];

/** A colour for the screen. */
export interface Srgb {
  /** red, green, blue, 0 to 255, whole numbers */
  readonly rgb: readonly [number, number, number];
  /** #rrggbb */
  readonly hex: string;
  /** false where a channel had to be cut to 0..1, so the screen cannot show the colour */
  readonly inGamut: boolean;
}

/** 6/29, where the cube root gives way to its tangent (CIE 15). */
const delta = 6 / 29;
/** Half a step of an 8-bit channel in the linear toe: less than this outside 0..1 is rounding, not gamut. */
const gamutSlack = 0.5 / 255 / 12.92;

const compress = (t: number) => (t > delta ** 3 ? Math.cbrt(t) : t / (3 * delta * delta) + 4 / 29);
const expand = (f: number) => (f > delta ? f ** 3 : 3 * delta * delta * (f - 4 / 29));

const multiply = (m: readonly (readonly number[])[], v: readonly number[]): [number, number, number] => {
  const row = (i: number) => m[i].reduce((sum, value, j) => sum + value * v[j], 0);
  return [row(0), row(1), row(2)];
};

/**
 * L*a*b* from XYZ.
 * @param xyz tristimulus values, Y = 100 scale
 * @param white of the same illuminant and observer; D65, 2 degrees by default
 * Source: CIE 15 (CIE 1976 L*a*b*), with the linear part below (6/29)^3.
 */
export function xyzToLab(xyz: Xyz, white: Xyz = d65White): Lab {
  const [fx, fy, fz] = xyz.map((value, i) => compress(value / white[i])) as [number, number, number];
  return [116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz)];
}

/** XYZ (Y = 100 scale) from L*a*b*: inverse of `xyzToLab`. */
export function labToXyz(lab: Lab, white: Xyz = d65White): Xyz {
  const fy = (lab[0] + 16) / 116;
  const f = [fy + lab[1] / 500, fy, fy - lab[2] / 200];
  return [white[0] * expand(f[0]), white[1] * expand(f[1]), white[2] * expand(f[2])];
}

/** sRGB transfer of one linear channel 0..1 to 0..1 (IEC 61966-2-1). */
const encode = (u: number) => (u <= 0.0031308 ? 12.92 * u : 1.055 * u ** (1 / 2.4) - 0.055);
/** Inverse of `encode`. */
const decode = (v: number) => (v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4);

/**
 * Screen colour of XYZ, channels cut to the gamut.
 * @param xyz under D65, Y = 100 scale
 * Source: IEC 61966-2-1.
 */
export function xyzToSrgb(xyz: Xyz): Srgb {
  const linear = multiply(
    xyzToLinearSrgb,
    xyz.map((value) => value / 100),
  );
  const byte = (u: number) => Math.round(255 * encode(Math.min(1, Math.max(0, u))));
  const rgb = [byte(linear[0]), byte(linear[1]), byte(linear[2])] as const;
  const inGamut = linear.every((u) => u >= -gamutSlack && u <= 1 + gamutSlack);
  return { rgb, hex: `#${rgb.map((c) => c.toString(16).padStart(2, '0')).join('')}`, inGamut };
}

/** Screen colour of L*a*b* under D65. */
export const labToSrgb = (lab: Lab): Srgb => xyzToSrgb(labToXyz(lab));

/**
 * XYZ under D65 (Y = 100 scale) of an 8-bit sRGB colour.
 * @param rgb channels 0 to 255
 */
export function srgbToXyz(rgb: readonly [number, number, number]): Xyz {
  const [x, y, z] = multiply(
    linearSrgbToXyz,
    rgb.map((channel) => decode(channel / 255)),
  );
  return [100 * x, 100 * y, 100 * z];
}
