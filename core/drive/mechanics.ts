/** Strength, bearing and walls under the loads of a working point. */

import type { Design } from '../design/types.ts';
import { sectionsLength } from '../geometry/profile.ts';
import { bearingLoad } from './bearing.ts';
import { fullTorque } from './motor.ts';
import { wallStresses } from './pressureWall.ts';
import { rootStresses, worstRoot } from './rootStress.ts';
import { bowing, bucklingLoad, type ShaftPiece, thrustOf, twistOf } from './strength.ts';
import type { MechanicalState } from './types.ts';

/** Loads of a working point. */
export interface MechanicalLoads {
  /** N m at the screw */
  readonly torque: number;
  /** Pa at the end of the screw: running, and the most that screw and motor can build */
  readonly pressure: number;
  readonly mostPressure: number;
  /** rev/s */
  readonly screwSpeed: number;
}

/** Shank and sections as straight pieces. */
function shaftPieces({ screw }: Design): ShaftPiece[] {
  const { shankDiameter, shankLength, sections } = screw;
  const shank = { length: shankLength, start: shankDiameter, end: shankDiameter };
  const roots = sections.map(({ length, rootDiameterStart, rootDiameterEnd }) => {
    return { length, start: rootDiameterStart, end: rootDiameterEnd };
  });
  return shankLength > 0 ? [shank, ...roots] : roots;
}

/**
 * Everything that follows from torque, thrust and pressure.
 * @returns plain data, SI. Buckling takes the least root all along the sections.
 */
export function mechanicalState(design: Design, loads: MechanicalLoads): MechanicalState {
  const { screw, barrel, nozzle, drive } = design;
  const { young, yieldStress } = screw.steel;
  const full = fullTorque(drive);
  const most = Math.max(loads.mostPressure, loads.pressure);
  const thrustBlocked = thrustOf(most, barrel.boreDiameter);
  const roots = rootStresses(screw, { torque: loads.torque, fullTorque: full, thrust: thrustBlocked, yieldStress });
  const pieces = shaftPieces(design);
  const least = Math.min(
    ...screw.sections.flatMap(({ rootDiameterStart, rootDiameterEnd }) => [rootDiameterStart, rootDiameterEnd]),
  );
  const bow = (factor: number) => bucklingLoad(young, least, sectionsLength(screw), factor);
  return {
    roots,
    worstRoot: worstRoot(roots),
    twist: twistOf(loads.torque, young, pieces),
    twistFull: twistOf(full, young, pieces),
    thrustBlocked,
    mostPressure: most,
    bearing:
      drive.bearing &&
      bearingLoad(drive.bearing, thrustOf(loads.pressure, barrel.boreDiameter), thrustBlocked, loads.screwSpeed),
    bucklingFree: bow(bowing.free),
    bucklingHeld: bow(bowing.held),
    walls: wallStresses(barrel, nozzle, most),
    pressureLimit: barrel.pressureLimit,
  };
}
