/** Heat transfer coefficients that nobody measures on a small head. All common practice unless a source is named. */

/** Share of a black body's radiation that painted or oxidised steel gives off; low: bright metal, high: matt paint. */
export const emissivity = { value: 0.8, low: 0.2, high: 0.95 } as const;

/** The same through a jacket of insulation, W/(m² K). */
export const insulatedCoefficient = 2;

/** Water jacket or finned cooling block on the barrel, W/(m² K). */
export const coolingCoefficient = 400;

/** Contact of a clamped heater band or block with the wall, W/(m² K). */
export const heaterCoefficient = 3000;

/** Conductivity of air at room temperature, W/(m K). */
export const airConductivity = 0.026;

/** Volumetric heat capacity of steel, J/(m³ K); aluminium has 2.4e6. */
export const steelHeatCapacity = { value: 3.7e6, low: 2.4e6, high: 3.9e6 } as const;

/** Thickness of a heater's own body on the wall, m: a thin band 3 mm, a cast block 12 mm. */
export const heaterThickness = { value: 5e-3, low: 3e-3, high: 12e-3 } as const;

/** Contact of the nozzle, screwed in tight, with the end of the barrel, W/(m² K) on the nozzle's wall section. */
export const jointCoefficient = 10_000;

/** Conduction into a slab heated from both faces, as mean-temperature coefficient times gap over conductivity. */
export const slabNusselt = Math.PI ** 2 / 2;

/** Developed laminar flow in a pipe of constant wall temperature (Graetz 1883): coefficient times bore over conductivity. */
export const pipeNusselt = 3.66;
