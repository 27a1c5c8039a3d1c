/** Torque, power and strength at the working point. */

import { fullTorque, highestScrewSpeed, pulloutTorque, usableTorque } from '../drive/motor.ts';
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

/** Closed discharge at a speed. */
interface Blocked {
  /** Pa at the head, if the drive could hold the speed */
  readonly pressure: number;
  /** N m at the screw */
  readonly torque: number;
}

/**
 * Pressure and torque with the discharge closed at a speed: what all molten reaches build together without flow.
 * Melt temperatures are those of the state; the viscosity's rise with pressure is left out.
 */
function blockedAt(machine: Machine, state: FlowState, screwSpeed: number): Blocked {
  const { design, channel, sweptPerTurn, stations } = machine;
  const { temperature, start } = state.melt;
  const lawAt = (i: number) =>
    design.material.viscosityLaw(flowingTemperature(design.material, (temperature[i] + temperature[i + 1]) / 2), 0);
  const still = trickle * sweptPerTurn * screwSpeed;
  const march = marchChannel(channel, lawAt, start, screwSpeed, still, beyondAny);
  const power = march.flows.reduce((sum, flow, i) => {
    const length = (stations.z[i + 1] - stations.z[i]) * (i === start.reach ? start.share : 1);
    return flow ? sum + (flow.channelPower + flow.landPower) * length : sum;
  }, 0);
  return {
    pressure: Math.max(0, beyondAny - march.startPressure),
    torque: Math.max(0, power / (2 * Math.PI * screwSpeed)),
  };
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
  const blocked = blockedAt(machine, point.state, screwSpeed);
  const pullout = pulloutTorque(drive, screwSpeed);
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
    blockedPressure: blocked.pressure,
    blockedTorque: blocked.torque,
    // pressure and torque grow together, so the motor stalls at about this share
    stallPressure: blocked.pressure * Math.min(1, blocked.torque > 0 ? pullout / blocked.torque : 1),
    basis: withDoubt(driveBasis, [
      screw.radialClearance === 0 && 'Without clearance the flight rubs on the barrel; that friction is not counted.',
    ]),
  };
}
