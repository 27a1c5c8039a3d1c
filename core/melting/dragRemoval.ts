/** Melting of a packed bed by a film that the barrel drags off: film in balance, what is left of the bed. */

/** Film and bed at one place. */
export interface FilmState {
  /** barrel's speed across the channel, m/s, >= 0 */
  readonly crossSpeed: number;
  /** kg/m³ */
  readonly meltDensity: number;
  /** heat flow to the bed times film thickness, W/m: conductivity x difference + the shear's part */
  readonly drive: number;
  /** heat that each kilogram of bed takes up to become film, J/kg */
  readonly demand: number;
  /** mean film speed over half the barrel's; 1 for uniform viscosity */
  readonly carried: number;
}

/**
 * Speed of the barrel against the bed, m/s.
 * @param barrelSpeed, bedSpeed m/s, the bed's along the channel
 * @param helix angle at the barrel, rad
 */
export const relativeSpeed = (barrelSpeed: number, bedSpeed: number, helix: number): number =>
  Math.sqrt(Math.max(0, barrelSpeed ** 2 + bedSpeed ** 2 - 2 * barrelSpeed * bedSpeed * Math.cos(helix)));

/**
 * Thickness of the film on a bed of a width (m), m; Infinity where nothing is dragged off.
 * What the barrel drags off, half its speed times film and density, is what drive over film and demand melts: Tadmor &
 * Klein 1970 (from memory, no page seen); shear of a Newtonian film: drive = k dT + viscosity x speed² / 2.
 */
export const filmThickness = ({ crossSpeed, meltDensity, drive, demand, carried }: FilmState, width: number): number =>
  crossSpeed > 0
    ? Math.sqrt((2 * drive * width) / (crossSpeed * meltDensity * carried * demand))
    : Number.POSITIVE_INFINITY;

/**
 * Thickness where the flight leaves a film of its clearance on the barrel, m: only what is thicker is scraped off, so
 * film x (film - clearance) = (film without clearance)². Own arithmetic after the published uniform film.
 */
export const filmOver = (thickness: number, clearance: number): number =>
  (clearance + Math.sqrt(clearance * clearance + 4 * thickness * thickness)) / 2;

/**
 * Solid left after a length, any unit of mass flow.
 * @param solid at the start; @param rate melted per length at the start, falling with the square root of the solid
 * Exact for constant depth.
 */
export const solidLeft = (solid: number, rate: number, length: number): number =>
  solid > 0 ? solid * Math.max(0, 1 - (rate * length) / (2 * solid)) ** 2 : 0;
