/** Stored melt, capillary hold and drip at the orifice. */

/** Compressibility of a melt, 1/Pa: 1e-9 within 40 % (Tait form with remembered constants). */
export const meltCompressibility = 1e-9;

/**
 * Time in which the pressure of a stopped screw lets go through the nozzle.
 * @param volume melt between screw and orifice, m³; @param resistance dp/dQ of the head, Pa s/m³
 * @returns s; compressibility x volume x resistance
 */
export const pressureTime = (volume: number, resistance: number): number => meltCompressibility * volume * resistance;

/**
 * Head of melt that the meniscus of an orifice can hold.
 * @param surfaceTension N/m; @param radius of the orifice, m; @param density kg/m³
 * @returns m; 2 gamma/(rho g R), Young-Laplace
 */
export const heldHead = (surfaceTension: number, radius: number, density: number): number =>
  (2 * surfaceTension) / (density * 9.81 * radius);

/**
 * Time in which a thread of melt of a radius pinches off.
 * @param viscosity Pa s; @param radius m; @param surfaceTension N/m
 * @returns s; R eta/(0.0709 gamma), Papageorgiou 1995 (from memory)
 */
export const pinchTime = (viscosity: number, radius: number, surfaceTension: number): number =>
  (radius * viscosity) / (0.0709 * surfaceTension);
