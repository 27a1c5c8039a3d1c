/** Colour in the machine-readable verdict. */

import type { Basis, ColourPrediction, Prediction } from '../prediction/types.ts';
import { orNull, rounded, shown } from './shown.ts';

type Maybe = number | null;

/** L*, a*, b*. */
type LabJson = readonly number[] | null;

/** Colour and loss of properties; dE00 against fresh, colours under D65. */
export interface ColourJson {
  readonly dE00_mean: Maybe;
  readonly dE00_worst: Maybe;
  readonly lab_fresh: LabJson;
  readonly lab_mean: LabJson;
  readonly lab_worst: LabJson;
  readonly srgb: string | null;
  readonly srgb_fresh: string | null;
  readonly srgb_worst: string | null;
  readonly gamutNote: string | null;
  /** by the doubt of rate and activation energy */
  readonly range: {
    readonly dE00_mean: readonly [number, number];
    readonly dE00_worst: readonly [number, number];
  } | null;
  /** `share` of the output does not exceed this */
  readonly distribution: readonly { readonly share: number; readonly dE00: number; readonly srgb: string }[];
  readonly indices: {
    readonly yellownessE313: readonly Maybe[];
    readonly browning: readonly Maybe[];
    readonly note: string;
  } | null;
  readonly origin: readonly {
    readonly part: string;
    readonly share: number;
    readonly time_s: number;
    readonly temperature_C: number;
  }[];
  readonly bleed: readonly {
    readonly part: string;
    readonly where: string;
    readonly held_s: number;
    readonly share: readonly [number, number];
    readonly dE00: number;
    readonly dE00_added: number;
    readonly dE00_streak: readonly [number, number];
  }[];
  readonly laws: readonly {
    readonly id: string;
    readonly observed: string;
    readonly drivesColour: boolean;
    readonly extent_mean: number;
    readonly extent_worst: number;
    readonly means: string;
    readonly outside: string | null;
  }[];
  readonly reason: string | null;
  readonly basis: Basis;
}

const labJson = (lab: readonly number[] | null): LabJson => (lab === null ? null : lab.map(rounded));

const pair = (low: number, high: number): readonly [number, number] => [rounded(low), rounded(high)];

function rangeJson({ range }: ColourPrediction): ColourJson['range'] {
  if (range === null) return null;
  return {
    dE00_mean: pair(range.dE00MeanLow, range.dE00MeanHigh),
    dE00_worst: pair(range.dE00WorstLow, range.dE00WorstHigh),
  };
}

function indicesJson({ indices }: ColourPrediction): ColourJson['indices'] {
  if (indices === null) return null;
  const { yellownessFresh, yellownessMean, yellownessWorst, browningMean, browningWorst, note } = indices;
  const all = (values: readonly Maybe[]) => values.map((value) => orNull(value));
  return {
    yellownessE313: all([yellownessFresh, yellownessMean, yellownessWorst]),
    browning: all([browningMean, browningWorst]),
    note,
  };
}

const bleedJson = ({ bleed }: ColourPrediction): ColourJson['bleed'] =>
  bleed.map((spot) => ({
    part: spot.part,
    where: spot.where,
    held_s: rounded(spot.held),
    share: pair(spot.shareLow, spot.share),
    dE00: rounded(spot.dE00),
    dE00_added: rounded(spot.dE00Added),
    dE00_streak: pair(spot.dE00Streak, spot.dE00StreakHigh),
  }));

/** Everything the colour prediction tells; order of indices: fresh, mean, worst (browning without fresh). */
export function colourJson({ colour }: Prediction): ColourJson {
  return {
    dE00_mean: orNull(colour.dE00Mean),
    dE00_worst: orNull(colour.dE00Worst),
    lab_fresh: labJson(colour.labFresh),
    lab_mean: labJson(colour.labMean),
    lab_worst: labJson(colour.labWorst),
    srgb: colour.srgb,
    srgb_fresh: colour.srgbFresh,
    srgb_worst: colour.srgbWorst,
    gamutNote: colour.gamutNote,
    range: rangeJson(colour),
    distribution: colour.distribution.map(({ share, dE00, srgb }) => ({ share, dE00: rounded(dE00), srgb })),
    indices: indicesJson(colour),
    origin: colour.origin.map(({ part, share, time, temperature }) => ({
      part,
      share: rounded(share),
      time_s: rounded(time),
      temperature_C: shown(temperature, '°C'),
    })),
    bleed: bleedJson(colour),
    laws: colour.laws.map(({ id, observed, drivesColour, extentMean, extentWorst, means, outside }) => ({
      ...{ id, observed, drivesColour, means, outside },
      extent_mean: rounded(extentMean),
      extent_worst: rounded(extentWorst),
    })),
    reason: colour.reason,
    basis: colour.basis,
  };
}
