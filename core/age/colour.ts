/** Colour of the extrudate from residence times, temperature and the material's anchors. */

import {
  type AgeDistribution,
  type AgeShare,
  ageAtShare,
  ageProblem,
  ageShares,
  unresolvedShare,
} from './ageShares.ts';
import { type Lab, labToSrgb, labToXyz, xyzToLab } from './cielab.ts';
import { colourBasis, colourDoubts, noAnchorsReason, noColourBasis, noLawReason } from './colourBasis.ts';
import { type ColourPath, colourPath } from './colourPath.ts';
import type { ColourDetail, ColouredMaterial, ColourRange, MeltHeat } from './colourTypes.ts';
import { deltaE2000 } from './deltaE2000.ts';
import { extentOfChecked, type HeatSegment, rangeDoubt } from './kinetics.ts';
import { type Corner, type KineticLaw, nominalCorner, rangeCorners } from './laws.ts';

/** Share of the output younger than the worst streak. */
const streakShare = 0.99;

/** Everything the evaluation needs, checked. */
interface Ready {
  readonly law: KineticLaw;
  readonly path: ColourPath;
  readonly shares: readonly AgeShare[];
  readonly streakAge: number;
  /** one mean passage */
  readonly passage: readonly HeatSegment[];
}

/** Colours and extents at one corner of the doubt ranges. */
interface Colours {
  readonly labMean: Lab;
  readonly labWorst: Lab;
  readonly dE00Mean: number;
  readonly dE00Worst: number;
  readonly extentMean: number;
  readonly extentWorst: number;
  readonly beyondShare: number;
}

const durationOf = (passage: readonly HeatSegment[]) => passage.reduce((sum, segment) => sum + segment.duration, 0);

/** The mean passage stretched to an age, s. */
function passageOfAge(passage: readonly HeatSegment[], age: number): HeatSegment[] {
  const scale = age / durationOf(passage);
  return passage.map(({ duration, temperature }) => ({ duration: duration * scale, temperature }));
}

function heatProblem(passage: readonly HeatSegment[]): string | null {
  const usable = passage.every((s) => s.duration >= 0 && s.temperature > 0 && Number.isFinite(s.temperature));
  const total = durationOf(passage);
  return usable && total > 0 && Number.isFinite(total) ? null : 'the melt temperature is not known';
}

function prepare(material: ColouredMaterial, ages: AgeDistribution, heat: MeltHeat): Ready | string {
  const law = material.degradation.find((candidate) => candidate.id === material.colourLaw);
  if (!law) return noLawReason(material);
  const path = colourPath(material.colourAnchors);
  if (!path || path.last === path.first) return noAnchorsReason(material);
  const passage = typeof heat === 'number' ? [{ duration: 1, temperature: heat }] : heat;
  const problem = ageProblem(ages) ?? heatProblem(passage);
  if (problem) return `The colour cannot be said because ${problem}.`;
  return { law, path, shares: ageShares(ages), streakAge: ageAtShare(ages, streakShare), passage };
}

/** Flux-weighted mean colour and the streak at one corner of the doubt ranges. */
function evaluate(ready: Ready, corner: Corner): Colours {
  const { law, path, passage } = ready;
  const extentOf = (age: number) => extentOfChecked(law, passageOfAge(passage, age), corner);
  const sum = { x: 0, y: 0, z: 0, extent: 0, beyond: 0 };
  for (const { age, share } of ready.shares) {
    const extent = extentOf(age);
    const { lab, beyond } = path.at(extent);
    const [x, y, z] = labToXyz(lab);
    sum.x += share * x;
    sum.y += share * y;
    sum.z += share * z;
    sum.extent += share * extent;
    if (beyond) sum.beyond += share;
  }
  const fresh = path.at(0).lab;
  const labMean = xyzToLab([sum.x, sum.y, sum.z]);
  const extentWorst = extentOf(ready.streakAge);
  const labWorst = path.at(extentWorst).lab;
  return {
    labMean,
    labWorst,
    dE00Mean: deltaE2000(fresh, labMean),
    dE00Worst: deltaE2000(fresh, labWorst),
    extentMean: sum.extent,
    extentWorst,
    beyondShare: sum.beyond,
  };
}

function rangeOf(ready: Ready, nominal: Colours): ColourRange {
  const all = [nominal, ...rangeCorners.map((corner) => evaluate(ready, corner))];
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

/** No prediction, with the fresh colour where an anchor tells it. */
function noColour(material: ColouredMaterial, reason: string): ColourDetail {
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
    extentMean: null,
    extentWorst: null,
    range: null,
    reason,
    basis: noColourBasis(reason),
  };
}

/**
 * Colour of the extrudate: mean over the flux, worst streak, and how far both lie from the fresh granulate.
 * @param material laws, colour law and anchors
 * @param ages residence times of the outflow, s: upper edges and the flux share younger than each
 * @param heat melt temperature, K, or mean time and temperature of each part in order of passing
 * @returns colours under D65, dE00 against the anchor colour at extent 0, their range over the doubt of rate and
 * activation energy; nulls with a reason where the material has no colour law, no anchors, or an input is unusable
 * Valid within the law's temperatures and the anchors' extents; `basis.doubt` says where it is asked outside.
 * Source: extents per element averaged over the flux as for a segregated flow (Danckwerts 1958); see `basis.source`.
 */
export function predictColour(material: ColouredMaterial, ages: AgeDistribution, heat: MeltHeat): ColourDetail {
  const ready = prepare(material, ages, heat);
  if (typeof ready === 'string') return noColour(material, ready);
  const { beyondShare, ...colours } = evaluate(ready, nominalCorner);
  const labFresh = ready.path.at(0).lab;
  const screen = labToSrgb(colours.labMean);
  const outside = rangeDoubt(ready.law, ready.passage).doubt;
  const doubts = [...(outside ? [outside] : []), ...colourDoubts(ready.path, beyondShare, unresolvedShare(ages))];
  return {
    ...colours,
    labFresh,
    srgb: screen.hex,
    srgbFresh: labToSrgb(labFresh).hex,
    srgbWorst: labToSrgb(colours.labWorst).hex,
    srgbInGamut: screen.inGamut,
    range: rangeOf(ready, { beyondShare, ...colours }),
    reason: null,
    basis: colourBasis(material, ready.law, ready.path, heat, doubts),
  };
}
