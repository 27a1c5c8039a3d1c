/** Coefficients of the yellowness index. */

/** Illuminant and observer the XYZ values were measured or computed for. */
export type E313Condition = 'C/2' | 'D65/2' | 'C/10' | 'D65/10';

/** Cx and Cz per illuminant / observer angle in degrees (ASTM E313-15e1, as quoted in a colour-science library). */
export const e313Coefficients: Readonly<Record<E313Condition, readonly [number, number]>> = {
  'C/2': [1.2769, 1.0592],
  'D65/2': [1.2985, 1.1335],
  'C/10': [1.2871, 1.0781],
  'D65/10': [1.3013, 1.1498],
};
