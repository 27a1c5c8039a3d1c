/** Discharge, arching and trickle of the hopper. */

import type { Design } from '../design/types.ts';

const gravity = 9.81;

/**
 * Mass discharge of granules through a round outlet.
 * @param outlet diameter, m; @param bulkDensity kg/m³; @param grain diameter, m
 * @param shape k, 1.4 for round grains, up to about 3 for long or angular ones
 * @returns kg/s; 0 where the outlet is smaller than k grains
 * Source: Beverloo, Leniger & van de Velde 1961, C = 0.58 (from memory). Within about 10 % for compact grains;
 * over-predicts elongated ones. Needs a hopper wider than 2.5 outlets.
 */
export function beverlooDischarge(outlet: number, bulkDensity: number, grain: number, shape = 1.4): number {
  const open = outlet - shape * grain;
  return open > 0 ? 0.58 * bulkDensity * Math.sqrt(gravity) * open ** 2.5 : 0;
}

/** Wanted ratio of a still hopper, and of one that is stirred or shaken; common practice. */
export const archingRatioWanted = { still: 6, agitated: 3 } as const;

/** What the hopper does. */
export interface HopperState {
  /** kg/s that gravity alone would deliver */
  readonly discharge: number;
  /** outlet over largest grain dimension, and what is wanted */
  readonly outletRatio: number;
  readonly outletRatioWanted: number;
  /** widest gap over the finest grains; above 1 they trickle out (static), above 0.5 they may when shaken */
  readonly gapRatio: number;
}

/** Hopper figures of a design; largest grain dimension = d90, longer by the square root of the aspect ratio. */
export function hopperState(design: Design): HopperState {
  const { hopper, material } = design;
  const { d10, d50, d90, aspectRatio } = material.grain;
  const shape = 1.4 + 0.6 * Math.min(1, Math.max(0, aspectRatio - 1));
  return {
    discharge: beverlooDischarge(hopper.outletDiameter, material.bulkDensity, d50, shape),
    outletRatio: hopper.outletDiameter / (d90 * Math.sqrt(aspectRatio)),
    outletRatioWanted: hopper.agitation === 'none' ? archingRatioWanted.still : archingRatioWanted.agitated,
    gapRatio: hopper.gap / d10,
  };
}

/**
 * Volume rate of a screw conveyor that fills its trough only in part.
 * @param diameter, shaft m; @param pitch m per turn; @param screwSpeed rev/s; @param filling 0 to 1
 * @returns m³/s. Source: conveyor design guides quoting ANSI/CEMA 350, Q = (pi/4)(D² - d²) S n psi.
 */
export function conveyorVolumeFlow(
  diameter: number,
  shaft: number,
  pitch: number,
  screwSpeed: number,
  filling: number,
): number {
  return (Math.PI / 4) * (diameter ** 2 - shaft ** 2) * pitch * screwSpeed * filling;
}
