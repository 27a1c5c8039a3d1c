/** Williams-Landel-Ferry temperature dependence in the Cross-WLF form. */

/** Constants of the zero-shear viscosity. */
export interface WlfConstants {
  /** Pa s: viscosity at the reference temperature T* */
  readonly d1: number;
  /** K: T* at no pressure */
  readonly d2: number;
  /** K/Pa: rise of T* with pressure */
  readonly d3: number;
  /** dimensionless */
  readonly a1: number;
  /** K */
  readonly a2: number;
}

/**
 * Zero-shear viscosity eta0 = D1 exp[-A1 (T - T*) / (A2 + T - T*)], T* = D2 + D3 p.
 * @param constants fitted constants; A2 here is the part that does not depend on pressure, so that the denominator is
 *   A2 + D3 p + T - T* = A2 + T - D2
 * @param temperature K; below T* the value at T* is held, since the form runs to a pole at T* - A2 and the material is
 *   glass there
 * @param pressure Pa above ambient, >= 0
 * @returns Pa s
 * Source: Williams, Landel and Ferry 1955; Cross-WLF in Kazmer, Injection Mold Design Engineering, eq. 5.8 to 5.11.
 */
export function wlfViscosity(constants: WlfConstants, temperature: number, pressure: number): number {
  const { d1, d2, d3, a1, a2 } = constants;
  const above = Math.max(0, temperature - d2 - d3 * pressure);
  return d1 * Math.exp((-a1 * above) / (a2 + d3 * pressure + above));
}
