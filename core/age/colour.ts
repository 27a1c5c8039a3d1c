/** Colour of the extrudate from residence times, temperature and the material's anchors. */

import type { ColourPrediction } from '../prediction/types.ts';
import { labToSrgb } from './cielab.ts';
import { colourBasis, colourDoubts, noAnchorsReason, noColourBasis, noLawReason } from './colourBasis.ts';
import { partsProblem } from './colourParts.ts';
import { type ColourPath, colourPath } from './colourPath.ts';
import { type Colours, coloursOf, gamutNote, indicesOf, toldDistribution } from './colourReading.ts';
import type { ColouredMaterial, ColourRange } from './colourTypes.ts';
import { type AgedPart, extentDistribution } from './extentDistribution.ts';
import { rangeDoubt } from './kinetics.ts';
import { lawOutcomes } from './lawOutcomes.ts';
import { type KineticLaw, nominalCorner, rangeCorners } from './laws.ts';

/** Law and path of a material's colour. */
export interface ColourScale {
  readonly law: KineticLaw;
  readonly path: ColourPath;
}

/** Law and path of a material's colour, or why it has none. */
export function colourScale(material: ColouredMaterial): ColourScale | string {
  const law = material.degradation.find((candidate) => candidate.id === material.colourLaw);
  if (!law) return noLawReason(material);
  const path = colourPath(material.colourAnchors);
  return path && path.last !== path.first ? { law, path } : noAnchorsReason(material);
}

function rangeOf({ law, path }: ColourScale, parts: readonly AgedPart[], nominal: Colours): ColourRange {
  const corners = rangeCorners.map((corner) => coloursOf(path, extentDistribution(law, parts, corner)));
  const all = [nominal, ...corners];
  const byMean = [...all].sort((p, q) => p.dE00Mean - q.dE00Mean);
  const [low, high] = [byMean[0], byMean[byMean.length - 1]];
  return {
    dE00MeanLow: low.dE00Mean,
    dE00MeanHigh: high.dE00Mean,
    dE00WorstLow: Math.min(...all.map((colours) => colours.dE00Worst)),
    dE00WorstHigh: Math.max(...all.map((colours) => colours.dE00Worst)),
    labMeanLow: low.labMean,
    labMeanHigh: high.labMean,
  };
}

/** No prediction, with the fresh colour where an anchor tells it and what the laws come to where melt flows. */
function noColour(material: ColouredMaterial, reason: string, parts: readonly AgedPart[]): ColourPrediction {
  const labFresh = colourPath(material.colourAnchors)?.at(0).lab ?? null;
  return {
    dE00Mean: null,
    dE00Worst: null,
    labMean: null,
    labFresh,
    labWorst: null,
    srgb: null,
    srgbFresh: labFresh && labToSrgb(labFresh).hex,
    srgbWorst: null,
    srgbInGamut: null,
    gamutNote: labFresh && gamutNote([['the fresh colour', labFresh]]),
    extentMean: null,
    extentWorst: null,
    distribution: [],
    indices: null,
    range: null,
    origin: [],
    bleed: [],
    laws: partsProblem(parts) === null ? lawOutcomes(material, parts) : [],
    reason,
    basis: noColourBasis(reason),
  };
}

/**
 * Colour of the extrudate: mean over the flux, worst streak, distribution, and how far all lie from fresh granulate.
 * @param material laws, colour law and anchors
 * @param parts in order of passing, each with its own ages and temperatures, independent of each other
 * @returns colours under D65, dE00 against the anchor colour at extent 0, their range over the doubt of rate and
 * activation energy, and what every other law comes to; nulls with a reason where the material has no colour law, no
 * anchors, or an input is unusable. `origin` and `bleed` are left empty.
 * Valid within the law's temperatures and the anchors' extents; `basis.doubt` says where it is asked outside.
 * Source: extents per element averaged over the flux as for a segregated flow (Danckwerts 1958); see `basis.source`.
 */
export function predictColourOfParts(material: ColouredMaterial, parts: readonly AgedPart[]): ColourPrediction {
  const scale = colourScale(material);
  if (typeof scale === 'string') return noColour(material, scale, parts);
  const problem = partsProblem(parts);
  if (problem) return noColour(material, `The colour cannot be said because ${problem}.`, []);
  const { law, path } = scale;
  const extents = extentDistribution(law, parts, nominalCorner);
  const { beyondShare, ...colours } = coloursOf(path, extents);
  const labFresh = path.at(0).lab;
  const screen = labToSrgb(colours.labMean);
  const passage = parts.flatMap(({ heat }) => heat);
  const outside = rangeDoubt(law, passage).doubt;
  const doubts = [...(outside ? [outside] : []), ...colourDoubts(path, beyondShare)];
  return {
    ...colours,
    labFresh,
    srgb: screen.hex,
    srgbFresh: labToSrgb(labFresh).hex,
    srgbWorst: labToSrgb(colours.labWorst).hex,
    srgbInGamut: screen.inGamut,
    gamutNote: gamutNote([
      ['the fresh colour', labFresh],
      ['the mean colour', colours.labMean],
      ['the worst streak', colours.labWorst],
    ]),
    distribution: toldDistribution(path, extents),
    indices: indicesOf(labFresh, colours.labMean, colours.labWorst),
    range: rangeOf(scale, parts, { beyondShare, ...colours }),
    origin: [],
    bleed: [],
    laws: lawOutcomes(material, parts, extents),
    reason: null,
    basis: colourBasis(material, law, path, parts, doubts),
  };
}
