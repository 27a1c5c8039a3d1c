/** Dead spots: how far the melt in them has come, and how it stains the stream. */

import type { DeadSpot, SpotBleed } from '../prediction/types.ts';
import { type Lab, labToSrgb } from './cielab.ts';
import type { ColourScale } from './colour.ts';
import { deltaE2000 } from './deltaE2000.ts';
import { durationOf, type HeatSegment, lawRun } from './lawRun.ts';
import { nominalCorner } from './laws.ts';
import { mixedLab } from './mixedLab.ts';

/** What melt in a spot went through before it was caught, and where it is held. */
export interface SpotHistory {
  /** s and K, in order of passing */
  readonly before: readonly HeatSegment[];
  /** temperatures of the holding, durations of any scale */
  readonly within: readonly HeatSegment[];
}

/** A dead spot with its history. */
export interface HeldSpot {
  readonly spot: Pick<DeadSpot, 'part' | 'where' | 'z' | 'volume' | 'meanAge'>;
  readonly history: SpotHistory;
}

/** Least time a spot is taken to hold its melt, as a share of its age: ages are means, known to about this. */
const leastHeld = 0.05;

/** Melt of a spot: mean time held (s), extent and colour, dE00 against fresh. */
export interface SpotMelt {
  readonly held: number;
  readonly extent: number;
  readonly lab: Lab;
  readonly srgb: string;
  readonly dE00: number;
}

/** Extent of melt that is held for a time after what came before. */
function extentHeld({ law }: ColourScale, { before, within }: SpotHistory, held: number): number {
  const run = lawRun(law, nominalCorner);
  const caught = run.through(before)(run.fresh, durationOf(before));
  return run.extentOf(run.through(within)(caught, held));
}

/** Melt of a spot at its own age and temperature, held `times` its mean time. */
export function spotMelt(scale: ColourScale, { spot, history }: HeldSpot, times = 1): SpotMelt {
  const before = Math.min(durationOf(history.before), (1 - leastHeld) * spot.meanAge);
  const held = times * (spot.meanAge - before);
  const extent = extentHeld(scale, history, held);
  const lab = scale.path.at(extent).lab;
  return { held, extent, lab, srgb: labToSrgb(lab).hex, dE00: deltaE2000(scale.path.at(0).lab, lab) };
}

function bleedOf(scale: ColourScale, held: HeldSpot, labStream: Lab, volumeFlow: number): SpotBleed {
  const { part, where, z, volume } = held.spot;
  const melt = spotMelt(scale, held);
  const share = Math.min(1, volume / melt.held / volumeFlow);
  const mixed = mixedLab(share, melt.lab, labStream);
  const streak = deltaE2000(labStream, melt.lab);
  return {
    ...{ part, where, z, volume, ...melt, share },
    shareLow: share / 2,
    dE00Mixed: deltaE2000(scale.path.at(0).lab, mixed),
    dE00Added: deltaE2000(labStream, mixed),
    dE00Streak: streak,
    dE00StreakHigh: Math.max(streak, deltaE2000(labStream, spotMelt(scale, held, 2).lab)),
  };
}

/** What the bleeding rests on. */
export const bleedAssumptions: readonly string[] = [
  'A dead spot is a stirred pocket: it sheds its volume over the mean time it holds melt; swept through instead, it sheds half of that, held twice as long.',
  'The time held is the spot’s age less the mean time to reach it; a closed eddy takes the age that diffusion gives it.',
  'The stream knows the old melt already as far as its ages do, so what a spot adds is an upper bound.',
];

/**
 * How dead spots stain the stream: extent and colour of their melt, the share they shed, the stream with it mixed in and
 * the streak it leaves unmixed.
 * @param labStream colour of the stream without them
 * @param volumeFlow m³/s, > 0
 * @returns the spot that changes the mixed stream most first; what a spot sheds is at most the whole stream
 * Mass balance: volume = flow x mean time held (Danckwerts 1953).
 */
export function spotBleeds(
  scale: ColourScale,
  spots: readonly HeldSpot[],
  labStream: Lab,
  volumeFlow: number,
): SpotBleed[] {
  if (!(volumeFlow > 0)) return [];
  const bleeds = spots
    .filter(({ spot }) => spot.volume > 0 && spot.meanAge > 0)
    .map((held) => bleedOf(scale, held, labStream, volumeFlow));
  return bleeds.sort((a, b) => b.dE00Added - a.dE00Added);
}
