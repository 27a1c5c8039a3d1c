/** A textbook screw as the reach solver sees it: thin flights, no clearance, infinitely wide, all angles at the barrel. */

import { createReach, type Reach, solveReach } from '../flow/reach.ts';
import type { ViscosityLaw } from '../material/viscosityLaw.ts';
import { bracketedRoot } from '../math/roots.ts';

/** Inputs as textbooks give them. SI, rad. */
export interface TextbookScrew {
  readonly diameter: number;
  readonly depth: number;
  readonly helix: number;
  /** axial width of the flight's land, default 0 */
  readonly flight?: number;
}

/** m */
export const inch = 0.0254;
/** Pa, from N per lb and m per in */
export const psi = 4.4482216152605 / 0.0254 ** 2;

/** Helix angle at the barrel of a lead, rad. */
export const helixOf = (lead: number, diameter: number): number => Math.atan(lead / (Math.PI * diameter));

/** The reach of a textbook screw. */
export function textbookReach({ diameter, depth, helix, flight = 0 }: TextbookScrew): Reach {
  const width = (Math.PI * diameter * Math.tan(helix) - flight) * Math.cos(helix);
  return createReach(
    {
      flighted: true,
      rootRadius: diameter / 2 - depth,
      barrelRadius: diameter / 2,
      depth,
      starts: 1,
      helixBarrel: helix,
      helixMean: helix,
      widthBarrel: width,
      widthMean: width,
      land: flight * Math.cos(helix),
      clearance: 0,
    },
    true,
  );
}

/** Newtonian law, Pa s. */
export const newtonian = (viscosity: number): ViscosityLaw => ({ model: 'newtonian', viscosity });

/** Power law without regularisation. */
export const powerLaw = (consistency: number, index: number): ViscosityLaw => ({
  model: 'powerLaw',
  consistency,
  index,
  regularisingRate: 0,
});

/** Flow against a pressure over an axial length, m³/s. */
export function flowAgainst(
  screw: TextbookScrew,
  viscosity: number,
  speed: number,
  pressure: number,
  length: number,
): number {
  const reach = textbookReach(screw);
  const law = newtonian(viscosity);
  const open = solveReach(reach, law, speed, 0).openFlow;
  const excess = (flow: number) => solveReach(reach, law, speed, flow).gradient * length - pressure;
  return bracketedRoot(excess, -20 * open, 20 * open, { tolerance: 1e-9 * open }).x;
}

/** Closed-discharge pressure, Pa. */
export const closedPressure = (screw: TextbookScrew, viscosity: number, speed: number, length: number): number =>
  solveReach(textbookReach(screw), newtonian(viscosity), speed, 0).gradient * length;
