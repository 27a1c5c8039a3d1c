/** Whether granules melt as a packed bed with a film on the barrel. */

import { slabNusselt } from '../heat/coefficients.ts';
import { viscosityAt } from '../material/viscosityLaw.ts';
import { looseShare } from './conduction.ts';
import { drainSpeed } from './drainage.ts';
import type { MeltingCase, MeltingChoice, Stretch } from './types.ts';

/** Channel depth over median grain from which grains lie on one another: with fewer they roll one by one. Common practice. */
export const bedLayers = 1.5;

/** What speaks for a film, each on its own. */
export interface FilmReasons {
  /** barrel above melting, under a flight, behind the feed opening */
  readonly hot: boolean;
  /** granules fill the channel: flooded, or metered feed that fills it at the speed of one lead per turn */
  readonly packed: boolean;
  /** at least `bedLayers` grains over the depth */
  readonly layered: boolean;
  /** melt stands on the bed: it sinks in more slowly than it forms; false too where there is no bed or no melt */
  readonly stands: boolean;
}

/**
 * Judges a stretch. Speed and flow only enter where the feed is metered, so that the choice does not flicker with them.
 * Shear is no criterion: the film model holds for any Brinkman number, and for low ones tells how conduction through a
 * film that is dragged off melts the bed.
 */
export function filmReasons(c: MeltingCase, at: Stretch): FilmReasons {
  const { design, stations } = c;
  const { material, process } = design;
  const hot = isHot(c, at);
  const layered = at.depth >= bedLayers * material.grain.d50;
  const carried = material.bulkDensity * stations.freeArea[at.reach] * stations.lead[at.reach] * c.screwSpeed;
  return {
    hot,
    packed: process.starvedRate === null || c.massFlow >= carried,
    layered,
    stands: hot && layered && meltStands(c, at),
  };
}

function isHot({ design, stations }: MeltingCase, at: Stretch): boolean {
  const { start, length } = design.barrel.feedOpening;
  const past = at.from >= start + length - 1e-9;
  return past && at.wall > design.material.melting && stations.flighted[at.reach] === 1;
}

/** Whether a film may begin on a stretch, for a choice of model. */
export function filmCanForm(c: MeltingCase, at: Stretch, choice: MeltingChoice): boolean {
  if (choice === 'conduction') return false;
  if (choice === 'film') return isHot(c, at);
  const { hot, packed, layered, stands } = filmReasons(c, at);
  return hot && packed && layered && stands;
}

/** Compares the sinking of melt into the bed with the front that conduction over a slab's path would drive. */
function meltStands({ design, walls, stations }: MeltingCase, at: Stretch): boolean {
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
  return drainSpeed(bed, viscosityAt(material.viscosityLaw((material.melting + hottest) / 2, 0), 1)) < front;
}
