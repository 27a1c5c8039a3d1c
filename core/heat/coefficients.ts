/** Heat transfer coefficients that nobody measures on a small head. All common practice unless a source is named. */

/** Natural convection and radiation from a painted or oxidised barrel in still air, W/(m² K). */
export const outsideCoefficient = { value: 10, low: 6, high: 16 } as const;

/** The same through a jacket of insulation, W/(m² K). */
export const insulatedCoefficient = 2;

/** Water jacket or finned cooling block on the barrel, W/(m² K). */
export const coolingCoefficient = 400;

/** Contact of a clamped heater band or block with the wall, W/(m² K). */
export const heaterCoefficient = 3000;

/** Contact of the nozzle, screwed in tight, with the end of the barrel, W/(m² K) on the nozzle's wall section. */
export const jointCoefficient = 10_000;

/** Conduction into a slab heated from both faces, as mean-temperature coefficient times gap over conductivity. */
export const slabNusselt = Math.PI ** 2 / 2;

/** Developed laminar flow in a pipe of constant wall temperature (Graetz 1883): coefficient times bore over conductivity. */
export const pipeNusselt = 3.66;
