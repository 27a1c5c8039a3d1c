/** One stretch of granules or melt heated by conduction alone. */

import { warmthOf } from '../heat/enthalpy.ts';
import { approach, granuleShare, slabSides } from './conduction.ts';
import { type Granulate, type MeltingCase, meltingModel, type Step, type Stretch } from './types.ts';

/**
 * Moves the granulate along a stretch: granules as a slab of loose grains up to the end of melting, then melt, which
 * alone has heat made in it.
 * Range: granules that are not pressed into a bed, or whose melt is too thin to stand on it as a film.
 */
export function conductionStep(c: MeltingCase, at: Stretch, state: Granulate): Step {
  const { material } = c.design;
  const { wall, core } = slabSides(material.conductivity, at.depth, at.barrelRadius, at.rootRadius);
  const warm = (wall * at.wall + core * at.core) / (wall + core);
  const along = ((wall + core) * at.length) / c.massFlow;
  const made = c.dissipation[at.reach];
  const asMelt = (share: number) =>
    approach(material, state.enthalpy, warm + made / (wall + core), share * along, share * along).enthalpy;
  if (state.complete) {
    state.enthalpy = asMelt(1);
    return { wall, core, filmPower: 0, model: meltingModel.melt, done: null };
  }
  const share = granuleShare(material, at.depth);
  const reached = approach(material, state.enthalpy, warm, share * along, share * along);
  const { done } = reached;
  if (done === null) state.enthalpy = reached.enthalpy;
  else {
    state.enthalpy = material.heatOfFusion;
    state.enthalpy = asMelt(1 - done);
    state.complete = true;
    state.bed = 0;
  }
  const { temperature, fused } = warmthOf(material, state.enthalpy);
  state.molten = state.complete ? 1 : fused;
  state.solid = Math.min(temperature, material.melting);
  const conducting = done === null ? share : share * done + 1 - done;
  const model = state.molten > 0 ? meltingModel.conduction : meltingModel.loose;
  return { wall: conducting * wall, core: conducting * core, filmPower: 0, model, done };
}
