/** Heat transfer coefficients that nobody measures on a small head. All common practice unless a source is named. */

/** Natural convection and radiation from a painted or oxidised barrel in still air, W/(m² K). */
export const outsideCoefficient = { value: 10, low: 6, high: 16 } as const;

/** The same through a jacket of insulation, W/(m² K). */
export const insulatedCoefficient = 2;

/** Water jacket or finned cooling block on the barrel, W/(m² K). */
export const coolingCoefficient = 400;

/** Contact of a heater whose controller holds its set temperature, W/(m² K): large, so that the wall follows it. */
export const heaterCoefficient = 3000;

/** Conduction into a slab heated from both faces, as mean-temperature coefficient times gap over conductivity. */
export const slabNusselt = Math.PI ** 2 / 2;
