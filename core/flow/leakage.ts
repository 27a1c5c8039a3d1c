/** Flow over the flight's land, from the pushing side to the trailing side. */

import type { PlateFlow } from './plate.ts';
import type { ReachShape } from './reach.ts';

/** A land with its speeds, at one screw speed. */
export interface Land {
  /** flow dragged over the land per length of flight, m²/s */
  readonly dragged: number;
  /** flow pressed over it per Pa between the flight's sides, m²/(s Pa) */
  readonly conductance: number;
  /** channel length from one side of the flight to the other once round, m */
  readonly turn: number;
  /** axial leak per dragged and per pressed flow per length, m */
  readonly dragLength: number;
}

/**
 * Prepares a land.
 * @param crossSpeed barrel speed across the flight, m/s; @param viscosity in the gap, Pa s
 * A flight sharper than its clearance counts as wide as the clearance.
 */
export function landOf(shape: ReachShape, crossSpeed: number, viscosity: number): Land {
  const turn = (2 * Math.PI * shape.barrelRadius * Math.cos(shape.helixBarrel)) / shape.starts;
  const width = Math.max(shape.land, shape.clearance);
  return {
    dragged: (crossSpeed * shape.clearance) / 2,
    conductance: viscosity > 0 ? shape.clearance ** 3 / (12 * viscosity * width) : 0,
    turn,
    dragLength: (shape.starts * shape.widthBarrel) / Math.tan(shape.helixBarrel),
  };
}

/** Leak per length of flight that a channel flow presses over the land, m²/s: cross-channel rise plus one turn's rise. */
export function leakPressed(shape: ReachShape, land: Land, loaded: PlateFlow): number {
  const rise = loaded.cross.gradient * shape.widthBarrel + loaded.down.gradient * land.turn;
  return land.dragged + land.conductance * rise;
}

/** Axial flow lost, m³/s, for a leak per length of flight (m²/s). Drag on the land itself moves nothing along the axis. */
export function axialLeak(shape: ReachShape, land: Land, perLength: number): number {
  return land.dragged * land.dragLength + (perLength - land.dragged) * land.turn * shape.starts;
}

/**
 * How strongly the leak holds itself back, dimensionless: leak that a unit of leak takes away by letting the pressure
 * between the flight's sides fall. Exact for Newtonian melt of this viscosity.
 */
export function leakStiffness(shape: ReachShape, land: Land, viscosity: number, pressureFactor: number): number {
  const perFlow = (12 * viscosity) / shape.depth ** 3;
  return land.conductance * perFlow * (shape.widthBarrel + land.turn ** 2 / (pressureFactor * shape.widthMean));
}
