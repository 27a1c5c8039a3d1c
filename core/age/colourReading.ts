/** Colours of extents and their indices. */

import type { ColourAtShare, ColourIndices } from '../prediction/types.ts';
import { type Lab, labToSrgb, labToXyz, xyzToLab } from './cielab.ts';
import type { ColourPath } from './colourPath.ts';
import { deltaE2000 } from './deltaE2000.ts';
import type { ExtentDistribution } from './extentDistribution.ts';
import { browningIndex, yellownessE313 } from './indices.ts';

/** Share of the output younger than the worst streak. */
export const streakShare = 0.99;

/** Shares at which the distribution is told. */
const toldShares = [0, 0.5, 0.9, 0.95, streakShare] as const;

/** Colours of a distribution of extents. */
export interface Colours {
  readonly labMean: Lab;
  readonly labWorst: Lab;
  readonly dE00Mean: number;
  readonly dE00Worst: number;
  readonly extentMean: number;
  readonly extentWorst: number;
  /** of the flux, past the last anchor */
  readonly beyondShare: number;
}

/** Flux-weighted mean colour in XYZ, and the colour of the worst streak. */
export function coloursOf(path: ColourPath, extents: ExtentDistribution): Colours {
  const sum = { x: 0, y: 0, z: 0, beyond: 0 };
  extents.extent.forEach((extent, i) => {
    const share = extents.share[i];
    const { lab, beyond } = path.at(extent);
    const [x, y, z] = labToXyz(lab);
    sum.x += share * x;
    sum.y += share * y;
    sum.z += share * z;
    if (beyond) sum.beyond += share;
  });
  const fresh = path.at(0).lab;
  const labMean = xyzToLab([sum.x, sum.y, sum.z]);
  const extentWorst = extents.at(streakShare);
  const labWorst = path.at(extentWorst).lab;
  return {
    labMean,
    labWorst,
    dE00Mean: deltaE2000(fresh, labMean),
    dE00Worst: deltaE2000(fresh, labWorst),
    extentMean: extents.mean,
    extentWorst,
    beyondShare: sum.beyond,
  };
}

/** Extent and colour at the told shares. */
export function toldDistribution(path: ColourPath, extents: ExtentDistribution): ColourAtShare[] {
  const fresh = path.at(0).lab;
  return toldShares.map((share) => {
    const extent = extents.at(share);
    const { lab } = path.at(extent);
    return { share, extent, lab, dE00: deltaE2000(fresh, lab), srgb: labToSrgb(lab).hex };
  });
}

/** L* below which both indices fall again while a sample darkens. */
const turning = 40;

const finite = (value: number): number | null => (Number.isFinite(value) ? value : null);

/** Yellowness and browning with the word on how far they go. */
export function indicesOf(fresh: Lab, mean: Lab, worst: Lab): ColourIndices {
  const yellowness = (lab: Lab) => finite(yellownessE313(labToXyz(lab)));
  const dark = Math.min(mean[0], worst[0]) < turning;
  return {
    yellownessFresh: yellowness(fresh),
    yellownessMean: yellowness(mean),
    yellownessWorst: yellowness(worst),
    browningMean: finite(browningIndex(mean)),
    browningWorst: finite(browningIndex(worst)),
    note: dark
      ? `Below about L* ${turning} both indices fall again as a sample darkens: do not compare by them here, use dE2000 or L*.`
      : `Good for pale to tan; below about L* ${turning} both fall again as a sample darkens.`,
  };
}

/** Swatches that the screen cannot show, or null. */
export function gamutNote(named: readonly (readonly [string, Lab])[]): string | null {
  const cut = named.filter(([, lab]) => !labToSrgb(lab).inGamut).map(([name]) => name);
  if (cut.length === 0) return null;
  return `The screen's colours (sRGB) do not reach ${cut.join(' and ')}; the swatch is the nearest by cutting channels.`;
}
