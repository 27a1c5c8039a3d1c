/** Discharge and trickle of the hopper, and its outlet against the grain. */

import type { Design } from '../design/types.ts';
import { gravity } from '../math/constants.ts';
import { archingRisk, archingShare, type CoarseArch, largestGrain } from './arching.ts';

/**
 * Mass discharge of granules through a round outlet.
 * @param outlet diameter, m; @param bulkDensity kg/m³; @param grain diameter, m
 * @param shape k, 1.4 for round grains, up to about 3 for long or angular ones
 * @returns kg/s; 0 where the outlet is smaller than k grains
 * Source: Beverloo, Leniger & van de Velde 1961, C = 0.58 (from memory). Within about 10 % for compact grains;
 * over-predicts elongated ones. Range: dischargeDoubts.
 */
export function beverlooDischarge(outlet: number, bulkDensity: number, grain: number, shape = 1.4): number {
  const open = outlet - shape * grain;
  return open > 0 ? 0.58 * bulkDensity * Math.sqrt(gravity) * open ** 2.5 : 0;
}

/**
 * Mass discharge of granules through a slot.
 * @param length, width m; @param bulkDensity kg/m³; @param grain diameter, m; @param shape k as for the round outlet
 * @returns kg/s; 0 where either side is smaller than k grains
 * Source: the Beverloo law for slots, W = 1.03 rho sqrt(g) (L - k d)(b - k d)^1.5 (from memory).
 */
export function slotDischarge(length: number, width: number, bulkDensity: number, grain: number, shape = 1.4): number {
  const long = Math.max(length, width) - shape * grain;
  const narrow = Math.min(length, width) - shape * grain;
  return narrow > 0 ? 1.03 * bulkDensity * Math.sqrt(gravity) * long * narrow ** 1.5 : 0;
}

/** What the hopper does. */
export interface HopperState {
  /** kg/s that gravity alone would deliver through outlet and feed opening */
  readonly discharge: number;
  /** which of the two lets out less */
  readonly bottleneck: 'outlet' | 'opening';
  /** outlet over largest grain dimension, and what is wanted */
  readonly outletRatio: number;
  readonly outletRatioWanted: number;
  readonly outletArch: CoarseArch;
  /** the feed opening as a slot */
  readonly openingArch: CoarseArch;
  /** widest gap over the finest grains; above 1 they trickle out (static), above 0.5 they may when shaken */
  readonly gapRatio: number;
}

/** Shape coefficient k of the discharge laws: 1.4 for compact grains, 2 for those twice as long (own reading). */
const shapeCoefficient = (aspectRatio: number): number => 1.4 + 0.6 * Math.min(1, Math.max(0, aspectRatio - 1));

/** Hopper figures of a design. */
export function hopperState(design: Design): HopperState {
  const { hopper, material, barrel } = design;
  const { d10, d50, aspectRatio } = material.grain;
  const { length, width } = barrel.feedOpening;
  const shape = shapeCoefficient(aspectRatio);
  const outlet = beverlooDischarge(hopper.outletDiameter, material.bulkDensity, d50, shape);
  const opening = slotDischarge(length, width, material.bulkDensity, d50, shape);
  const largest = largestGrain(material);
  const kind = { aspectRatio, agitation: hopper.agitation };
  const outletArch = archingRisk({ width: hopper.outletDiameter, length: hopper.outletDiameter }, largest, kind);
  return {
    discharge: Math.min(outlet, opening),
    bottleneck: opening < outlet ? 'opening' : 'outlet',
    outletRatio: outletArch.ratio,
    outletRatioWanted: outletArch.wanted,
    outletArch,
    openingArch: archingRisk({ width, length }, largest, kind),
    gapRatio: hopper.gap / d10,
  };
}

/**
 * Gap that still holds the finest grains back, as a share of d10: a still hopper holds what is a whole grain wide, a
 * shaken one lets grains through down to their own size, so that half is wanted (common practice).
 */
export const tightGapShare = (agitation: Design['hopper']['agitation']): number =>
  agitation === 'vibration' ? 0.5 : 1;

/**
 * Why the discharge law is doubtful for a design; false where it is not. Hopper wider than 2.5 outlets and than the
 * outlet and 30 grains, filled deeper than 1.2 widths: Mankoc et al. 2007; compact grains: Mamtani 2011.
 */
export function dischargeDoubts({ hopper, material }: Design): (string | false)[] {
  const { d50, aspectRatio } = material.grain;
  const top = hopper.outletDiameter + 2 * hopper.height * Math.tan(hopper.wallHalfAngle);
  const narrow = top < Math.max(2.5 * hopper.outletDiameter, hopper.outletDiameter + 30 * d50);
  return [
    narrow && 'The hopper is too narrow for the discharge law: it wants 2.5 outlets and the outlet plus 30 granules.',
    hopper.outletDiameter < 5 * d50 && 'Through so few granules’ width the discharge is intermittent.',
    aspectRatio > 1.5 && 'Long granules run slower than the discharge law says.',
    archingShare(material) > 0.5 && 'Cohesive granulate runs slower than the discharge law says, or not at all.',
  ];
}
