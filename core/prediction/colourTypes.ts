/** Colour and loss of properties of the extrudate. Colours are L*a*b* under D65, 2 degrees; screen colours #rrggbb. */

import type { Basis } from './basisType.ts';
import type { DeadSpot } from './dwellTypes.ts';

/** L*, a*, b*. */
type LabValues = readonly [number, number, number];

/** Colour of the melt that a share of the output does not exceed in extent. */
export interface ColourAtShare {
  /** of the flux, 0 to 1 */
  readonly share: number;
  /** unit of the colour law */
  readonly extent: number;
  /** against fresh */
  readonly dE00: number;
  readonly lab: LabValues;
  readonly srgb: string;
}

/** Spread of the colour from the doubt ranges of rate and activation energy. */
export interface ColourRange {
  readonly dE00MeanLow: number;
  readonly dE00MeanHigh: number;
  readonly dE00WorstLow: number;
  readonly dE00WorstHigh: number;
  /** mean colour at the low and the high end */
  readonly labMeanLow: LabValues;
  readonly labMeanHigh: LabValues;
}

/** Indices of yellowing (ASTM E313, D65/2) and browning (divisor 0.17); null where not finite. */
export interface ColourIndices {
  readonly yellownessFresh: number | null;
  readonly yellownessMean: number | null;
  readonly yellownessWorst: number | null;
  readonly browningMean: number | null;
  readonly browningWorst: number | null;
  /** how far to trust them */
  readonly note: string;
}

/** What one part adds to the colour. */
export interface ColourOrigin {
  readonly part: 'channel' | 'tip' | 'nozzle';
  /** mean time in it, s, and its time-weighted temperature, K */
  readonly time: number;
  readonly temperature: number;
  /** of the mean extent's reduced time, 0 to 1; all parts add up to 1 */
  readonly share: number;
}

/** How a dead spot stains the stream. */
export interface SpotBleed extends Pick<DeadSpot, 'part' | 'where' | 'z' | 'volume'> {
  /** mean time held in the spot, s: its age less the mean time to reach it */
  readonly held: number;
  /** extent and colour of its melt; against fresh */
  readonly extent: number;
  readonly lab: LabValues;
  readonly srgb: string;
  readonly dE00: number;
  /** share of the stream it sheds: stirred (volume over time held) and swept through (half of that) */
  readonly share: number;
  readonly shareLow: number;
  /** stream with its melt evenly mixed in: against fresh, and against the stream without it */
  readonly dE00Mixed: number;
  readonly dE00Added: number;
  /** streak of its unmixed melt against the stream: stirred, and swept through (held twice as long at the exit) */
  readonly dE00Streak: number;
  readonly dE00StreakHigh: number;
}

/** Molar mass after random scission. kg/mol; shares of fresh; null where the fresh molar mass is not known. */
export interface MolarMassLoss {
  readonly initial: number | null;
  readonly mean: number | null;
  readonly worst: number | null;
  readonly shareMean: number | null;
  readonly shareWorst: number | null;
  /** viscosity over fresh, as M^3.4 (above entanglement, from memory) */
  readonly viscosityMean: number | null;
  readonly viscosityWorst: number | null;
  /** fresh molar mass that the mean and the worst extent would halve; null where nothing breaks */
  readonly halvesMean: number | null;
  readonly halvesWorst: number | null;
}

/** What one degradation law comes to in the outflow. */
export interface LawOutcome {
  readonly id: string;
  readonly observed: string;
  readonly kind: 'order' | 'scission' | 'twoStep' | 'lag';
  readonly drivesColour: boolean;
  /** unit of the law; worst: the oldest hundredth begins there */
  readonly extentMean: number;
  readonly extentWorst: number;
  /** only of scission laws */
  readonly molarMass: MolarMassLoss | null;
  /** what that means, one or two sentences */
  readonly means: string;
  /** null inside the law's temperatures, else in words */
  readonly outside: string | null;
}

/** Colour of the extrudate, or why it cannot be said; loss of properties by the other laws. */
export interface ColourPrediction {
  readonly dE00Mean: number | null;
  readonly dE00Worst: number | null;
  readonly labMean: LabValues | null;
  readonly labFresh: LabValues | null;
  readonly labWorst: LabValues | null;
  /** #rrggbb */
  readonly srgb: string | null;
  readonly srgbFresh: string | null;
  readonly srgbWorst: string | null;
  /** false where the screen cannot show the mean colour and it was cut */
  readonly srgbInGamut: boolean | null;
  /** which swatches the screen cannot show, in words; null where all are true */
  readonly gamutNote: string | null;
  /** flux-weighted mean extent, and extent of the worst streak; unit of the colour law */
  readonly extentMean: number | null;
  readonly extentWorst: number | null;
  /** distribution in the output at shares 0, 50, 90, 95 and 99 %; empty without a colour */
  readonly distribution: readonly ColourAtShare[];
  readonly indices: ColourIndices | null;
  readonly range: ColourRange | null;
  /** parts in order of passing; empty where not worked out */
  readonly origin: readonly ColourOrigin[];
  /** dead spots, the one that stains most first; empty where none are known or there is no colour */
  readonly bleed: readonly SpotBleed[];
  /** every law of the material */
  readonly laws: readonly LawOutcome[];
  readonly reason: string | null;
  readonly basis: Basis;
}
