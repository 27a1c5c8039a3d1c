/** Colour of the extrudate from its residence and its temperatures. */

import { colourScale, predictColourOfParts } from '../age/colour.ts';
import { colourOrigin } from '../age/colourOrigin.ts';
import { scaledParts } from '../age/colourParts.ts';
import { type ColourGlance, glanceOf } from '../age/colourSweep.ts';
import { bleedAssumptions, spotBleeds } from '../age/spotBleed.ts';
import type { FlowState } from './flowState.ts';
import type { Machine } from './machine.ts';
import { agedParts, meltPassages, spotHistory } from './meltHistory.ts';
import type { ColourPrediction, DeadSpot, Residence } from './types.ts';

export { meltHeat, meltPassages } from './meltHistory.ts';

/**
 * Colour, or the reason why it cannot be said; loss of properties by every law.
 * @param spots dead spots found, for what they bleed into the stream
 */
export function colourStage(
  machine: Machine,
  state: FlowState,
  residence: Residence,
  spots: readonly DeadSpot[] = [],
): ColourPrediction {
  const { material } = machine.design;
  const passages = meltPassages(machine, state, residence);
  const colour = predictColourOfParts(material, agedParts(passages, residence));
  const scale = colourScale(material);
  if (colour.labMean === null || typeof scale === 'string') return colour;
  const held = spots.map((spot) => ({ spot, history: spotHistory(passages, spot) }));
  const bleed = spotBleeds(scale, held, colour.labMean, state.volumeFlow);
  const assumptions = bleed.length > 0 ? [...colour.basis.assumptions, ...bleedAssumptions] : colour.basis.assumptions;
  return { ...colour, origin: colourOrigin(scale.law, passages), bleed, basis: { ...colour.basis, assumptions } };
}

/**
 * Colour of the same machine at another flow: all times scaled, melt volumes and temperatures kept.
 * @param factor times over those of the residence, > 0: 2 at half the flow
 * @returns null where the colour cannot be said
 */
export function colourAtFlow(
  machine: Machine,
  state: FlowState,
  residence: Residence,
  factor: number,
): ColourGlance | null {
  const parts = scaledParts(agedParts(meltPassages(machine, state, residence), residence), factor);
  return glanceOf(machine.design.material, parts);
}
