/** Torque, power and strength at the working point. */

import { fullTorque, highestScrewSpeed, usableTorque } from '../drive/motor.ts';
import { thrustOf, torsionStress } from '../drive/strength.ts';
import { marchChannel } from '../flow/channel.ts';
import type { GeometrySummary } from '../geometry/types.ts';
import { driveBasis, withDoubt } from './bases.ts';
import { type FlowState, flowingTemperature } from './flowState.ts';
import type { Machine } from './machine.ts';
import type { WorkingPoint } from './operating.ts';
import { trickle } from './pumping.ts';
import type { Basis, DriveLoad } from './types.ts';

/** Pressure at which the march starts when looking for the most a screw can build, Pa: above any real one. */
const beyondAny = 1e11;

/**
 * Pressure at the head with the discharge closed at a speed, Pa: what all molten reaches build together without flow.
 * Melt temperatures are those of the state; the viscosity's rise with pressure is left out.
 */
export function blockedPressure(machine: Machine, state: FlowState, screwSpeed: number): number {
  const { design, channel, sweptPerTurn } = machine;
  const { temperature, start } = state.melt;
  const lawAt = (i: number) =>
    design.material.viscosityLaw(flowingTemperature(design.material, (temperature[i] + temperature[i + 1]) / 2), 0);
  const still = trickle * sweptPerTurn * screwSpeed;
  const march = marchChannel(channel, lawAt, start, screwSpeed, still, beyondAny);
  return Math.max(0, beyondAny - march.startPressure);
}

/** Loads of drive, root and bearing. */
export function driveStage(
  machine: Machine,
  geometry: GeometrySummary,
  point: WorkingPoint,
): DriveLoad & { readonly basis: Basis } {
  const { drive, barrel, screw } = machine.design;
  const { torqueChannel, torqueClearance, screwSpeed } = point;
  const torque = torqueChannel + torqueClearance;
  const pressure = point.volumeFlow > 0 ? point.state.headPressure : 0;
  return {
    torqueChannel,
    torqueClearance,
    torque,
    torqueUsable: usableTorque(drive, screwSpeed),
    power: 2 * Math.PI * screwSpeed * torque,
    motorSpeed: screwSpeed * drive.gearRatio,
    motorSpeedMax: highestScrewSpeed(drive) * drive.gearRatio,
    rootShear: torsionStress(torque, geometry.leastRootDiameter),
    rootShearFull: torsionStress(fullTorque(drive), geometry.leastRootDiameter),
    thrust: thrustOf(pressure, barrel.boreDiameter),
    blockedPressure: blockedPressure(machine, point.state, screwSpeed),
    basis: withDoubt(driveBasis, [
      screw.radialClearance === 0 && 'Without clearance the flight rubs on the barrel; that friction is not counted.',
    ]),
  };
}
