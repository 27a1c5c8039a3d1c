/** Heat that a dragged film brings to the bed at one place, and how much of it counts beside conduction. */

import { slabNusselt } from '../heat/coefficients.ts';
import { smoothRamp } from '../math/ramp.ts';
import { type FilmState, filmOver, filmThickness, relativeSpeed } from './dragRemoval.ts';
import { type FilmShear, filmShear } from './filmShear.ts';
import type { Granulate, MeltingCase, Stretch } from './types.ts';

/** Channel of a stretch, at its middle. */
export interface FilmChannel {
  /** all channels across their run, m² */
  readonly area: number;
  /** width of all channels together at the barrel, m, and of one */
  readonly width: number;
  readonly single: number;
  /** sine of the angle between channel and circumference: axial advance per channel length */
  readonly advance: number;
  readonly helix: number;
}

/** Film on a bed; W/m are per axial length. */
export interface FilmHeat {
  /** share of the film that is at work beside conduction, 0 to 1 */
  readonly share: number;
  /** m */
  readonly thickness: number;
  /** heat that melts the bed were the share 1, W/m */
  readonly flow: number;
  readonly film: FilmState;
  readonly shear: FilmShear;
}

/** Smallest heat that a kilogram is said to take up in melting, J/kg: keeps limits without fusion finite. */
export const leastDemand = 1;

/** Conduction path over film from which a film counts as dragged off, and from which wholly so. Own choice. */
const dragged = { begins: 1, full: 1.5 } as const;

/** Rounds in which viscosity and thickness of the film find each other. */
const rounds = 3;

/** Channel of a stretch. */
export function channelOf({ stations }: MeltingCase, { reach, depth, barrelRadius }: Stretch): FilmChannel {
  const middle = (values: Float64Array) => (values[reach] + values[reach + 1]) / 2;
  const starts = Math.max(1, stations.starts[reach]);
  const flighted = stations.flighted[reach] === 1;
  const helix = flighted ? middle(stations.helixBarrel) : Math.PI / 2;
  const single = flighted ? middle(stations.widthBarrel) : 2 * Math.PI * barrelRadius;
  const advance = flighted ? Math.sin(helix) : 1;
  return { area: starts * middle(stations.widthMean) * depth, width: starts * single, single, advance, helix };
}

/**
 * Film on a bed of a width.
 * @param bed width over that of the channel, > 0
 * @param weight from filmWeight, 0 to 1
 * @param conducted heat that the bed takes from the barrel by conduction alone, W/m, >= 0
 * Bed and film after Tadmor & Klein 1970 with film convection and thinning (see filmShear). The bed gets conduction and,
 * beyond it, what the film would bring more: the greater of both where the weight is 1. Heat that the melt carries off
 * above melting does not count for the bed. A film as thick as a slab's conduction path is not dragged, so that a slow
 * screw melts by conduction. The blending is own arithmetic.
 */
export function filmHeat(
  c: MeltingCase,
  at: Stretch,
  state: Granulate,
  channel: FilmChannel,
  bed: number,
  weight: number,
  conducted: number,
): FilmHeat {
  const { material, screw } = c.design;
  const { conductivity, melting } = material;
  const { speed, crossSpeed } = speedsOf(c, at, state, channel);
  const difference = Math.max(0, at.wall - melting);
  const cold = material.viscosityLaw(melting, 0);
  const hot = difference > 0 ? material.viscosityLaw(at.wall, 0) : cold;
  const path = at.depth / slabNusselt;
  let thickness = Math.max(screw.radialClearance, 0.1 * path);
  for (let round = 1; ; round++) {
    const shear = filmShear(cold, hot, speed, thickness, difference, conductivity);
    const film = filmOf(c, state, shear, crossSpeed, difference);
    const none = { share: 0, thickness, flow: 0, film, shear };
    if (!(film.drive > 0)) return none;
    const steady = filmOver(filmThickness(film, channel.single * bed), screw.radialClearance);
    if (!(steady < path)) return none;
    thickness = Math.max(steady, 1e-9);
    if (round < rounds) continue;
    const flow = (bed * channel.width * film.drive) / (channel.advance * thickness);
    const useful = flow * (1 - (material.heatCapacityMelt * shear.rise) / film.demand);
    const beyond = useful > conducted ? 1 - conducted / useful : 0;
    const share = weight * beyond * smoothRamp(path / thickness, dragged.begins, dragged.full);
    return { share, thickness, flow, film, shear };
  }
}

/** Barrel against bed and across the channel, m/s; the bed goes no faster than the screw carries it, a lead per turn. */
function speedsOf(c: MeltingCase, at: Stretch, state: Granulate, { helix }: FilmChannel) {
  const bedSpeed = c.massFlow / (c.design.material.solidDensity * state.filmFrom);
  const barrelSpeed = 2 * Math.PI * at.barrelRadius * c.screwSpeed;
  const carried = barrelSpeed / Math.max(0.5, Math.cos(helix));
  return {
    speed: relativeSpeed(barrelSpeed, Math.min(bedSpeed, carried), helix),
    crossSpeed: c.stations.flighted[at.reach] === 1 ? barrelSpeed * Math.sin(helix) : 0,
  };
}

function filmOf(c: MeltingCase, state: Granulate, shear: FilmShear, crossSpeed: number, difference: number): FilmState {
  const { conductivity, melting, meltDensity, heatOfFusion, heatCapacitySolid, heatCapacityMelt } = c.design.material;
  const demand = heatOfFusion + heatCapacitySolid * (melting - state.solid) + heatCapacityMelt * shear.rise;
  const drive = conductivity * difference + shear.toBed;
  return { crossSpeed, meltDensity, drive, demand: Math.max(leastDemand, demand), carried: shear.carried };
}
