/** Stress in the screw's root, its wind-up and bowing, and thrust on its bearing. */

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
 * Stress of tension that is as grave as shear with tension or compression.
 * @param shear, axial Pa
 * @returns Pa; sqrt(axial² + 4 shear²), greatest shear after Tresca
 */
export const equivalentStress = (shear: number, axial: number): number => Math.sqrt(axial * axial + 4 * shear * shear);

/**
 * Thrust of the melt on the screw.
 * @param headPressure Pa; @param bore m
 * @returns N; pressure over the full bore, conservative
 */
export function thrustOf(headPressure: number, bore: number): number {
  return (headPressure * Math.PI * bore * bore) / 4;
}

/** Poisson's ratio of metals; common practice, 0.27 to 0.34. */
const metalPoisson = 0.3;

/** A stretch of shaft whose diameter runs straight. m. */
export interface ShaftPiece {
  readonly length: number;
  readonly start: number;
  readonly end: number;
}

/**
 * Wind-up of a shaft that carries one torque all along.
 * @param torque N m; @param young Pa; @param pieces solid, tapers straight
 * @returns rad; integral of 32 T/(pi G d⁴), in closed form for each taper, G = E/[2 (1 + 0.3)]
 */
export function twistOf(torque: number, young: number, pieces: readonly ShaftPiece[]): number {
  const shear = young / (2 * (1 + metalPoisson));
  const compliance = pieces.reduce((sum, { length, start: a, end: b }) => {
    return sum + (length * (a * a + a * b + b * b)) / (3 * (a * b) ** 3);
  }, 0);
  return (32 * torque * compliance) / (Math.PI * shear);
}

/** Length that bows, over the shaft's length: held firmly at one end alone, guided at both. */
export const bowing = { free: 2, held: 1 } as const;

/**
 * Axial load at which a straight round bar bows out, Euler.
 * @param young Pa; @param diameter m, the least; @param length m, > 0; @param lengthFactor see `bowing`
 * @returns N; pi² E I/(k L)². A screw then leans on melt and barrel: it rubs rather than fails.
 */
export function bucklingLoad(young: number, diameter: number, length: number, lengthFactor: number): number {
  const inertia = (Math.PI * diameter ** 4) / 64;
  return (Math.PI ** 2 * young * inertia) / (lengthFactor * length) ** 2;
}
