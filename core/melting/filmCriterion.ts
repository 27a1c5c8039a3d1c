/** How far granules melt as a packed bed with a film on the barrel. */

import { backedUp, offeredRate } from '../feed/solidsSupply.ts';
import { slabNusselt } from '../heat/coefficients.ts';
import { viscosityAt } from '../material/viscosityLaw.ts';
import { smoothRamp } from '../math/ramp.ts';
import { looseShare } from './conduction.ts';
import { drainSpeed } from './drainage.ts';
import type { MeltingCase, MeltingChoice, Stretch } from './types.ts';

/** Barrel above melting at which a film covers all of it, K: below, melt wets it in patches. Own choice. */
const wetsWithin = 10;

/** Median grains over the depth: up to one they roll one by one, from two on they lie on one another. Common practice. */
const layers = { none: 1, full: 2 } as const;

/** Filling of a metered channel from which granules begin to be packed; full: packed. Own choice. */
const closing = 0.75;

/** Melt stands on the bed where it forms this many times as fast as it sinks in, and sinks where the inverse. Own choice. */
const standing = 3;

/**
 * Weight of the film on a stretch, for a choice of model, 0 to 1, continuous in all that is continuous.
 * A film wants a barrel above melting under a flight behind the feed opening; grains in layers; granules that fill the
 * channel; and melt that sinks into the bed more slowly than it forms. The weights of these are multiplied.
 * Shear is no criterion: the film model holds for any Brinkman number, and for low ones tells how conduction through a
 * film that is dragged off melts the bed.
 */
export function filmWeight(c: MeltingCase, at: Stretch, choice: MeltingChoice): number {
  const hot = choice === 'conduction' ? 0 : hotness(c, at);
  if (choice !== 'suited' || hot === 0) return hot;
  const layered = smoothRamp(at.depth / c.design.material.grain.d50, layers.none, layers.full);
  return layered > 0 ? hot * layered * packing(c, at) * standingShare(c, at) : 0;
}

function hotness({ design, stations }: MeltingCase, at: Stretch): number {
  const { start, length } = design.barrel.feedOpening;
  const past = at.from >= start + length - 1e-9;
  return past && stations.flighted[at.reach] === 1 ? smoothRamp(at.wall - design.material.melting, 0, wetsWithin) : 0;
}

/** More is offered than is taken, or metered granules fill the channel at the speed of one lead per turn. */
function packing({ design, stations, screwSpeed, massFlow }: MeltingCase, { reach }: Stretch): number {
  const flooded = backedUp(offeredRate(design), massFlow);
  const carried = design.material.bulkDensity * stations.freeArea[reach] * stations.lead[reach] * screwSpeed;
  return Math.max(flooded, carried > 0 ? smoothRamp(massFlow / carried, closing, 1) : 1);
}

/** Compares the sinking of melt into the bed with the front that conduction over a slab's path would drive. */
function standingShare({ design, walls, stations }: MeltingCase, at: Stretch): number {
  const { material, process } = design;
  const hottest = Math.max(at.wall, walls.barrel[stations.count - 1]);
  const demand = material.heatOfFusion + material.heatCapacitySolid * (material.melting - process.feedTemperature);
  const heat = (slabNusselt * material.conductivity * (hottest - material.melting)) / at.depth;
  const front = heat / (material.meltDensity * Math.max(1, demand));
  const bed = {
    grain: material.grain.d50,
    packing: looseShare(material),
    depth: at.depth,
    meltDensity: material.meltDensity,
    surfaceTension: material.surfaceTension,
  };
  const sinks = drainSpeed(bed, viscosityAt(material.viscosityLaw((material.melting + hottest) / 2, 0), 1));
  return smoothRamp(Math.log(front / sinks), -Math.log(standing), Math.log(standing));
}
