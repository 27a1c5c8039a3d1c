/** Stress in the screw's root and thrust on its bearing. */

/**
 * Torsional shear stress at the surface of a round shaft.
 * @param torque N m; @param diameter m; @param bore m, 0 for a solid shaft
 * @returns Pa; 16 T d/[pi (d⁴ - b⁴)], elementary torsion
 */
export function torsionStress(torque: number, diameter: number, bore = 0): number {
  return (16 * torque * diameter) / (Math.PI * (diameter ** 4 - bore ** 4));
}

/** Share of the yield stress that torsional shear may reach: half (Tresca) over a safety of 1.5; common practice. */
export const shearShareOfYield = 0.5 / 1.5;

/**
 * Thrust of the melt on the screw.
 * @param headPressure Pa; @param bore m
 * @returns N; pressure over the full bore, conservative
 */
export function thrustOf(headPressure: number, bore: number): number {
  return (headPressure * Math.PI * bore * bore) / 4;
}
