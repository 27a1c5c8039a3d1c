/** Melting of a packed bed by a film that the barrel drags off: rate, film, bed width, length. */

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
 * Melting rate per channel length and square root of bed width, kg/(m^1.5 s).
 * Source: Tadmor & Klein 1970; shear of a Newtonian film: drive = k dT + viscosity x speed² / 2.
 */
export const meltingRate = ({ crossSpeed, meltDensity, drive, demand, carried }: FilmState): number =>
  Math.sqrt((crossSpeed * meltDensity * carried * drive) / (2 * demand));

/** Thickness of the film on a bed of a width (m), m; Infinity where nothing is dragged off. Source: as meltingRate. */
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
 * Film that grows before any is scraped off, m.
 * @param from thickness at the start, m; @param bedSpeed m/s along the channel; @param length of channel, m
 * Quasi-steady one-dimensional melting, heat of the solid lumped into the demand (Stefan 1891).
 */
export const grownFilm = (state: FilmState, from: number, bedSpeed: number, length: number): number =>
  Math.sqrt(from * from + (2 * state.drive * length) / (state.meltDensity * state.demand * bedSpeed));

/**
 * Melting number psi, dimensionless.
 * @param rate from meltingRate; @param width, depth of the channel at the start, m; @param massFlow in it, kg/s
 */
export const meltingNumber = (rate: number, width: number, depth: number, massFlow: number): number =>
  (rate * Math.sqrt(width) * depth) / massFlow;

/**
 * Channel length of melting, m.
 * @param number psi; @param depth at the start, m; @param taper -dH/dz along the channel, 0 <= taper < psi
 * Source: Tadmor & Klein 1970, from memory.
 */
export const meltingLength = (number: number, depth: number, taper = 0): number =>
  taper < number ? (depth / number) * (2 - taper / number) : Number.POSITIVE_INFINITY;

/**
 * Bed width over channel width after a length of channel (m), 0 to 1.
 * Constant depth: (1 - psi z / 2 H)²; linear taper: [psi/A - (psi/A - 1) sqrt(H/(H - A z))]². Source: Tadmor & Klein
 * 1970, from memory; the second solves d(H X)/dz = -psi sqrt(X W), which a test does in steps. A bed that is squeezed
 * wider than the channel (taper > psi) fills it.
 */
export function bedShare(number: number, depth: number, length: number, taper = 0): number {
  if (length >= meltingLength(number, depth, taper)) return 0;
  if (taper === 0) return (1 - (number * length) / (2 * depth)) ** 2;
  const ratio = number / taper;
  return Math.min(1, (ratio - (ratio - 1) * Math.sqrt(depth / (depth - taper * length))) ** 2);
}

/**
 * Solid left after a length, any unit of mass flow.
 * @param solid at the start; @param rate melted per length at the start, falling with the square root of the solid
 * Exact for constant depth.
 */
export const solidLeft = (solid: number, rate: number, length: number): number =>
  solid > 0 ? solid * Math.max(0, 1 - (rate * length) / (2 * solid)) ** 2 : 0;

/** Channel in steps; arrays over its points, z along the channel, m; rate from meltingRate per step. */
export interface BedChannel {
  readonly z: ArrayLike<number>;
  readonly depth: ArrayLike<number>;
  readonly width: ArrayLike<number>;
  readonly rate: ArrayLike<number>;
}

/**
 * Bed width over channel width at the points of a channel of any depth, width and wall temperature.
 * @param massFlow in this channel, kg/s; the bed keeps the speed that it has where it fills the first point
 * Second order in the step. A bed that would be wider than the channel fills it.
 */
export function bedProfile({ z, depth, width, rate }: BedChannel, massFlow: number): Float64Array {
  const share = new Float64Array(z.length);
  const perArea = massFlow / (depth[0] * width[0]);
  let solid = massFlow;
  for (let i = 0; i < z.length; i++) {
    share[i] = Math.min(1, solid / (perArea * depth[i] * width[i]));
    if (i + 1 === z.length) break;
    const middle = (depth[i] + depth[i + 1]) / 2;
    const bed = Math.min((width[i] + width[i + 1]) / 2, solid / (perArea * middle));
    solid = solidLeft(solid, rate[i] * Math.sqrt(bed), z[i + 1] - z[i]);
  }
  return share;
}
