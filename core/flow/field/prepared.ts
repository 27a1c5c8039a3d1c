/** A channel cross-section made ready for the solver, and the scales between its numbers and SI. */

import { localIndex, type ViscosityLaw, viscosityAt } from '../../material/viscosityLaw.ts';
import { issueText } from '../../result.ts';
import type { Rheology } from './assembly.ts';
import { refined, type SpaceOptions } from './bases.ts';
import { type ChannelMotion, type ChannelSection, channelSectionIssues, sectionDepth } from './channelSection.ts';
import { type ChannelSpace, channelSpace } from './channelSpace.ts';
import { type LidMotion, lidMotion } from './lid.ts';
import { sectionShape } from './sectionShape.ts';

/** How fine and how far; every field may be left out. */
export interface ChannelOptions {
  /** Factor on all cell sizes, default 1 (flow within 0.3 %); 0.5 for residence times and references. */
  readonly coarseness?: number;
  /** Stop when the last Newton step is below this, relative in the energy norm; default 3e-3 (flow then within 2e-4). */
  readonly tolerance?: number;
  /** Default 60. */
  readonly mostIterations?: number;
  /** Called before each step of the iteration; may wait, or throw to give the run up. */
  readonly onStep?: () => void;
}

/** Depends on the shape only; reuse it for any law, speed and gradient. */
export interface PreparedChannel {
  readonly section: ChannelSection;
  readonly space: ChannelSpace;
  readonly lid: LidMotion;
}

/** Standard mesh: cubic splines; checked against independent solutions in test/reference. */
const STANDARD: SpaceOptions = { degree: 3, cornerCell: 0.001, rootCell: 0.08, growth: 0.7, largest: 0.2 };

/**
 * Prepares a section.
 * @throws RangeError when the section has issues (check with channelSectionIssues first)
 */
export function prepareChannel(section: ChannelSection, options: ChannelOptions = {}): PreparedChannel {
  const issues = channelSectionIssues(section);
  if (issues.length > 0) throw new RangeError(issues.map(issueText).join('\n'));
  // the corner is fine enough as it is; only the rest follows the wish
  const factor = options.coarseness ?? 1;
  const space = channelSpace(sectionShape(section), { ...refined(STANDARD, factor), cornerCell: STANDARD.cornerCell });
  return { section, space, lid: lidMotion(space, section.kind === 'flat' ? section.helixAngle : 0) };
}

/** Multipliers from dimensionless to SI. */
export interface ChannelScales {
  /** m */
  readonly length: number;
  /** m/s */
  readonly speed: number;
  /** Pa s */
  readonly viscosity: number;
  /** Dimensionless load per Pa/m of pressure gradient. */
  readonly loadPerGradient: number;
  /** m3/s through the whole section (all starts) per unit of half-section flow. */
  readonly flow: number;
  /** W/m (per length down-channel, or axial in a helical channel, all starts) per unit of half-section dissipation. */
  readonly power: number;
}

/** Scales of a prepared channel; the viscosity scale is the law's value at speed / depth. */
export function channelScales(prepared: PreparedChannel, law: ViscosityLaw, motion: ChannelMotion): ChannelScales {
  const { section, space } = prepared;
  const length = sectionDepth(section);
  const speed = motion.barrelSpeed;
  const viscosity = viscosityAt(law, speed / length);
  const { twist } = space.shape;
  const starts = section.kind === 'helical' ? section.starts : 1;
  return {
    length,
    speed,
    viscosity,
    loadPerGradient: (length * length) / (viscosity * speed * (twist > 0 ? twist : 1)),
    flow: 2 * starts * speed * length * length,
    power: 2 * viscosity * speed * speed * (twist > 0 ? starts * twist : 1),
  };
}

/** The law in dimensionless form. */
export function dimensionlessLaw(law: ViscosityLaw, scales: ChannelScales): Rheology {
  const rate = scales.speed / scales.length;
  if (law.model === 'newtonian') return NEWTONIAN;
  return {
    viscosity: (g) => viscosityAt(law, g * rate) / scales.viscosity,
    index: (g) => localIndex(law, Math.max(g, 1e-9) * rate),
    // corners behind a fillet are nearly at rest: springs must outweigh the viscosity there
    stiff: viscosityAt(law, 0.01 * rate) / scales.viscosity,
  };
}

/** Constant unit viscosity. */
export const NEWTONIAN: Rheology = { viscosity: () => 1, index: () => 1, stiff: 1 };
