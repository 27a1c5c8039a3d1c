/** Beds of granules that melt by a film, as the melting checks need them. */

import { type FilmState, filmThickness, relativeSpeed, solidLeft } from '../melting/dragRemoval.ts';
import { drainSpeed } from '../melting/drainage.ts';
import { thinnedShear } from '../melting/filmShear.ts';

/** A packed bed in a channel of square pitch and constant depth. SI, °C, J/kg. */
interface MeltingBed {
  readonly diameter: number;
  /** width across */
  readonly flight: number;
  readonly depth: number;
  /** rev/s */
  readonly speed: number;
  /** kg/s */
  readonly massFlow: number;
  readonly solidDensity: number;
  readonly meltDensity: number;
  readonly conductivity: number;
  readonly wall: number;
  readonly melting: number;
  readonly feed: number;
  readonly heatCapacity: number;
  readonly fusion: number;
  readonly viscosity: number;
}

/** Screw and polyethylene remembered from a textbook (Tadmor & Gogos), its constant viscosity is ours. */
export const largeBed: MeltingBed = {
  diameter: 0.0635,
  flight: 0.00635,
  depth: 0.009398,
  speed: 82 / 60,
  massFlow: 67.1 / 3600,
  solidDensity: 915.1,
  meltDensity: 790.87,
  conductivity: 0.1817,
  wall: 149,
  melting: 110,
  feed: 20,
  heatCapacity: 2763,
  fusion: 129.8e3,
  viscosity: 800,
};

/** A small screw of round numbers. */
export const smallBed: MeltingBed = {
  diameter: 0.016,
  flight: 0.0016,
  depth: 0.003,
  speed: 1,
  massFlow: 1 / 3600,
  solidDensity: 1250,
  meltDensity: 1100,
  conductivity: 0.2,
  wall: 200,
  melting: 160,
  feed: 25,
  heatCapacity: 2000,
  fusion: 30e3,
  viscosity: 500,
};

/** Thickness of the film on the whole width (m), and share of solid left after a length of channel (m). */
export function meltedBed(bed: MeltingBed, length: number): { readonly film: number; readonly left: number } {
  const helix = Math.atan(1 / Math.PI);
  const barrelSpeed = Math.PI * bed.diameter * bed.speed;
  const width = bed.diameter * Math.cos(helix) - bed.flight;
  const bedSpeed = bed.massFlow / (bed.solidDensity * width * bed.depth);
  const speed = relativeSpeed(barrelSpeed, bedSpeed, helix);
  const difference = bed.wall - bed.melting;
  const { toBed, carried } = thinnedShear(bed.viscosity, 1, 0, speed, difference, bed.conductivity);
  const state: FilmState = {
    crossSpeed: barrelSpeed * Math.sin(helix),
    meltDensity: bed.meltDensity,
    drive: bed.conductivity * difference + toBed,
    demand: bed.fusion + bed.heatCapacity * (bed.melting - bed.feed),
    carried,
  };
  const film = filmThickness(state, width);
  const dragged = (state.crossSpeed * bed.meltDensity * film * carried) / 2;
  return { film, left: solidLeft(bed.massFlow, dragged, length) / bed.massFlow };
}

/** Permeability of a bed over grain size squared, from the speed at which melt sinks without suction. */
export function permeability(packing: number): number {
  const [grain, viscosity, meltDensity] = [1e-3, 10, 1000];
  const bed = { grain, packing, depth: 1, meltDensity, surfaceTension: 0 };
  return (drainSpeed(bed, viscosity) * viscosity) / (meltDensity * 9.81) / grain ** 2;
}
