/**
 * Numbers of the sRGB space. Matrices solved from the primaries of ITU-R BT.709, red (0.64, 0.33), green (0.30, 0.60),
 * blue (0.15, 0.06), and the white below; a test solves them again.
 */

/** D65, 2-degree observer, Y = 100 (CIE 15). */
export const d65White: readonly [number, number, number] = [95.047, 100, 108.883];

/** Linear sRGB 0..1 to XYZ with Y = 1 for white. */
export const linearSrgbToXyz: readonly (readonly [number, number, number])[] = [
  [0.41245643909, 0.357576077644, 0.180437483266],
  [0.212672851406, 0.715152155288, 0.072174993307],
  [0.019333895582, 0.119192025881, 0.950304078536],
];

/** XYZ with Y = 1 for white to linear sRGB. */
export const xyzToLinearSrgb: readonly (readonly [number, number, number])[] = [
  [3.240454162114, -1.537138512798, -0.498531409556],
  [-0.969266030505, 1.876010845447, 0.04155601753],
  [0.055643430959, -0.204025913517, 1.057225188223],
];
