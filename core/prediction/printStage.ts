/** Print demand against supply. */

import type { Design } from '../design/types.ts';
import { highestScrewSpeed, stepsPerScrewTurn } from '../drive/motor.ts';
import { lineArea, passesPerWall } from '../print/bead.ts';
import { pressureTime } from '../print/ooze.ts';
import { printBasis, withDoubt } from './bases.ts';
import type { Basis, OutputCurve, PrintMatch } from './types.ts';

/** What the printer gets. */
export interface Supply {
  /** m³/s */
  readonly volumeFlow: number;
  /** rev/s */
  readonly screwSpeed: number;
  /** melt between the last flight and the orifice, m³, and the slope of its pressure over flow, Pa s/m³ */
  readonly headVolume: number;
  readonly headResistance: number;
}

/** Compares what the print asks for with what comes out. */
export function printStage(design: Design, supply: Supply, curve: OutputCurve): PrintMatch & { readonly basis: Basis } {
  const { lineWidth, layerHeight, speed, wallThickness, travelShare, idleShare } = design.print;
  const area = lineArea(lineWidth, layerHeight);
  const demand = area * speed;
  const working = Math.max(0, 1 - travelShare - idleShare);
  const perTurn = supply.screwSpeed > 0 ? supply.volumeFlow / supply.screwSpeed : 0;
  return {
    lineArea: area,
    demand,
    meanDemand: demand * working,
    margin: supply.volumeFlow / demand,
    highestSpeed: supply.volumeFlow / area,
    passesPerWall: passesPerWall(wallThickness, lineWidth, layerHeight),
    stepsPerVolume: perTurn > 0 ? stepsPerScrewTurn(design.drive) / perTurn : 0,
    pressureTime: supply.volumeFlow > 0 ? pressureTime(supply.headVolume, supply.headResistance) : 0,
    speedForDemand: speedFor(design, demand, supply, curve),
    basis: withDoubt(printBasis, [
      lineWidth < layerHeight && 'The line is narrower than high; its section is taken as an ellipse.',
    ]),
  };
}

/** Screw speed that would meet a flow, rev/s, by the curve where there is one; null where no speed of the drive does. */
function speedFor(design: Design, demand: number, supply: Supply, curve: OutputCurve): number | null {
  if (curve.screwSpeed.length === 0) {
    if (!(supply.volumeFlow > 0)) return null;
    const speed = (supply.screwSpeed * demand) / supply.volumeFlow;
    return speed <= highestScrewSpeed(design.drive) ? speed : null;
  }
  let fromSpeed = 0;
  let fromFlow = 0;
  for (let i = 0; i < curve.screwSpeed.length; i++) {
    if (curve.torque[i] > curve.torqueAvailable[i]) return null;
    if (curve.volumeFlow[i] >= demand) {
      const share = (demand - fromFlow) / (curve.volumeFlow[i] - fromFlow);
      return fromSpeed + (curve.screwSpeed[i] - fromSpeed) * share;
    }
    fromSpeed = curve.screwSpeed[i];
    fromFlow = curve.volumeFlow[i];
  }
  return null;
}
