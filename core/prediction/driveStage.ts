/** Torque, power and strength at the working point. */

import type { Design } from '../design/types.ts';
import { mechanicsBasis } from '../drive/basis.ts';
import { mechanicalState } from '../drive/mechanics.ts';
import {
  fullTorque,
  highestScrewSpeed,
  pulloutTorque,
  steppingRate,
  torqueOfPower,
  usableTorque,
} from '../drive/motor.ts';
import { thrustOf, torsionStress } from '../drive/strength.ts';
import { unknownParts } from '../drive/torqueParts.ts';
import type { MechanicalState, TorqueParts } from '../drive/types.ts';
import { marchChannel } from '../flow/channel.ts';
import type { GeometrySummary } from '../geometry/types.ts';
import { withDoubt } from './bases.ts';
import { type DrivenPoint, torqueOf } from './drivenPoint.ts';
import { type FlowState, flowingTemperature } from './flowState.ts';
import type { Machine } from './machine.ts';
import type { WorkingPoint } from './operating.ts';
import { trickle } from './pumping.ts';
import type { Basis, DriveLoad } from './types.ts';

/** Pressure at which the march starts when looking for the most a screw can build, Pa: above any real one. */
const beyondAny = 1e11;

/** Head pressure and torque of one state of a screw at a speed. */
interface Load {
  /** Pa at the head */
  readonly pressure: number;
  /** N m at the screw */
  readonly torque: number;
}

/**
 * Pressure and torque with the discharge closed at a speed: what all molten reaches build together without flow.
 * Melt temperatures and the film on the bed are those of the state; the viscosity's rise with pressure is left out.
 */
function blockedAt(machine: Machine, state: FlowState, screwSpeed: number): Load {
  const { design, channel, sweptPerTurn, stations } = machine;
  const { temperature, start } = state.melt;
  const lawAt = (i: number) =>
    design.material.viscosityLaw(flowingTemperature(design.material, (temperature[i] + temperature[i + 1]) / 2), 0);
  const still = trickle * sweptPerTurn * screwSpeed;
  const march = marchChannel(channel, lawAt, start, screwSpeed, still, beyondAny);
  const power = march.flows.reduce((sum, flow, i) => {
    const length = (stations.z[i + 1] - stations.z[i]) * (i === start.reach ? start.share : 1);
    const film = state.melt.filmPower[i] * (stations.z[i + 1] - stations.z[i]);
    return flow ? sum + film + (flow.channelPower + flow.landPower) * length : sum + film;
  }, 0);
  return {
    pressure: Math.max(0, beyondAny - march.startPressure),
    torque: Math.max(0, power / (2 * Math.PI * screwSpeed)),
  };
}

/** Pressure at the end of the screw, Pa above ambient: what stands outside the orifice where nothing flows. */
export const headPressureOf = (machine: Machine, point: WorkingPoint): number =>
  point.volumeFlow > 0 ? point.state.headPressure : machine.design.process.backPressure;

/**
 * Pressure at which the motor stalls as the discharge closes: pressure and torque grow together from running to
 * blocked, taken as a straight line.
 * @param pullout N m at the screw
 * @returns Pa, never below running; null where the motor holds the blocked pressure
 */
function stallPressure(running: Load, blocked: Load, pullout: number): number | null {
  if (pullout >= Math.max(blocked.torque, running.torque)) return null;
  const climb = blocked.torque - running.torque;
  const share = climb > 0 ? Math.max(0, (pullout - running.torque) / climb) : 0;
  return running.pressure + share * Math.max(0, blocked.pressure - running.pressure);
}

/** Torque of the working point by what causes it. */
function partsOf({ z }: Machine['stations'], point: WorkingPoint): TorqueParts {
  const { torqueChannel, torqueClearance: clearance, state, screwSpeed } = point;
  const filmPower = state.melt.filmPower.reduce((sum, perLength, i) => sum + perLength * (z[i + 1] - z[i]), 0);
  const film = Math.min(torqueChannel, torqueOfPower(filmPower, screwSpeed));
  const tip = Math.min(torqueChannel - film, torqueOfPower(state.head.swirlPower, screwSpeed));
  return { solids: point.torqueSolids, film, channel: torqueChannel - film - tip, clearance, tip };
}

/** The closed discharge; granules rub on as they did: what they do behind a closed nozzle is not known. */
function blockedWithGranules(machine: Machine, point: WorkingPoint): Load {
  const closed = blockedAt(machine, point.state, point.screwSpeed);
  return { ...closed, torque: closed.torque + point.torqueSolids };
}

/** Loads of drive, root, bearing and walls. */
export function driveStage(
  machine: Machine,
  geometry: GeometrySummary,
  { point, stalled }: DrivenPoint,
): DriveLoad & { readonly basis: Basis } {
  const { drive, barrel } = machine.design;
  const { torqueChannel, torqueClearance, screwSpeed } = point;
  const torque = torqueOf(point);
  const pressure = headPressureOf(machine, point);
  const blocked = blockedWithGranules(machine, point);
  const pullout = pulloutTorque(drive, screwSpeed);
  const stall = stallPressure({ pressure, torque }, blocked, pullout);
  const turning = stalled ? 0 : screwSpeed;
  const parts = partsOf(machine.stations, point);
  const mechanics = mechanicalState(machine.design, {
    torque,
    pressure,
    mostPressure: stall ?? blocked.pressure,
    screwSpeed: turning,
  });
  return {
    ...mechanics,
    torqueChannel,
    torqueClearance,
    torque,
    parts,
    torquePullout: pullout,
    motorMargin: torque > 0 ? pullout / torque : null,
    stepping: steppingRate(drive, turning),
    torqueUsable: usableTorque(drive, screwSpeed),
    power: 2 * Math.PI * turning * torque,
    motorSpeed: turning * drive.gearRatio,
    motorSpeedMax: highestScrewSpeed(drive) * drive.gearRatio,
    rootShear: torsionStress(torque, geometry.leastRootDiameter),
    rootShearFull: torsionStress(fullTorque(drive), geometry.leastRootDiameter),
    thrust: thrustOf(pressure, barrel.boreDiameter),
    blockedPressure: blocked.pressure,
    blockedTorque: blocked.torque,
    stallPressure: stall,
    basis: withDoubt(mechanicsBasis, driveDoubts(machine.design, mechanics, parts)),
  };
}

/** What is doubtful about drive and strength of a case. */
function driveDoubts({ screw, drive }: Design, mechanics: MechanicalState, parts: TorqueParts): (string | false)[] {
  const unknown = unknownParts(parts);
  const sharp = mechanics.roots.some(({ factor, fillet }) => factor > 1 && fillet === null);
  return [
    screw.radialClearance === 0 && 'Without clearance the flight rubs on the barrel; that friction is not counted.',
    unknown.length > 0 && `Torque leaves out ${unknown.join(' and ')}.`,
    sharp && 'A step of the screw has no fillet in the design and counts as sharp, a factor of 2.2 (from memory).',
    drive.fullStepsPerTurn > 0 && 'Whether the motor shakes at some step rates, its curve does not tell.',
  ];
}
