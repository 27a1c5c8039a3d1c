/** The machine-readable verdict. */

import type { Prediction } from '../prediction/types.ts';
import { fromSi, type Unit } from '../units.ts';
import type { PredictionJson } from './types.ts';

/** Significant digits that are written: more than any model is good for. */
const digits = 7;

const rounded = (value: number): number => Number(value.toPrecision(digits));
const shown = (si: number, unit: Unit): number => rounded(fromSi(si, unit));
const orNull = (value: number | null, show: (value: number) => number): number | null =>
  value !== null && Number.isFinite(value) ? show(value) : null;

/**
 * The verdict of a prediction as plain JSON: every number finite, units in the names.
 * Steps per mm³ are motor microsteps.
 */
export function predictionJson(prediction: Prediction): PredictionJson {
  const { output, drive, colour, print } = prediction;
  return {
    revision: prediction.revisionId,
    name: prediction.revisionName,
    designHash: prediction.designHash,
    coreVersion: prediction.coreVersion,
    converged: prediction.converged,
    limit: prediction.limit,
    capacities: capacitiesJson(prediction),
    output: outputJson(prediction),
    pressure: {
      head_MPa: shown(output.headPressure, 'MPa'),
      blocked_MPa: shown(drive.blockedPressure, 'MPa'),
      stall_MPa: shown(drive.stallPressure, 'MPa'),
    },
    torque_Nm: rounded(drive.torque),
    torqueUsable_Nm: rounded(drive.torqueUsable),
    power_W: rounded(drive.power),
    heater_W: rounded(prediction.heat.heater),
    residence: residenceJson(prediction),
    dead: deadJson(prediction),
    colour: {
      dE00_mean: orNull(colour.dE00Mean, rounded),
      dE00_worst: orNull(colour.dE00Worst, rounded),
      srgb: colour.srgb,
      reason: colour.reason,
    },
    print: {
      demand_mm3_s: shown(print.demand, 'mm³/s'),
      margin: rounded(print.margin),
      stepsPerMm3: rounded(print.stepsPerVolume * 1e-9),
      pressureTime_s: rounded(print.pressureTime),
      highestSpeed_mm_s: shown(print.highestSpeed, 'mm/s'),
      speedForDemand_rpm: orNull(print.speedForDemand, (value) => shown(value, 'rpm')),
    },
    findings: findingsJson(prediction),
  };
}

function capacitiesJson({ capacities }: Prediction): PredictionJson['capacities'] {
  return capacities.map(({ kind, volumeFlow, reserve }) => ({
    kind,
    volumeFlow_mm3_s: orNull(volumeFlow, (value) => shown(value, 'mm³/s')),
    reserve: orNull(reserve, rounded),
  }));
}

function outputJson({ output }: Prediction): PredictionJson['output'] {
  return {
    volumeFlow_mm3_s: shown(output.volumeFlow, 'mm³/s'),
    massFlow_g_min: shown(output.massFlow, 'g/min'),
    screwSpeed_rpm: shown(output.screwSpeed, 'rpm'),
    leakFlow_mm3_s: shown(output.leakFlow, 'mm³/s'),
    filledLength_mm: shown(output.filledLength, 'mm'),
  };
}

function residenceJson({ residence }: Prediction): PredictionJson['residence'] {
  return {
    mean_s: rounded(residence.mean),
    min_s: rounded(residence.min),
    t50_s: rounded(residence.t50),
    t95_s: rounded(residence.t95),
    t99_s: rounded(residence.t99),
  };
}

function deadJson({ dead }: Prediction): PredictionJson['dead'] {
  return {
    fractionOver3: rounded(dead.fractionOver3),
    fractionOver5: rounded(dead.fractionOver5),
    spots: dead.spots.map((spot) => ({
      part: spot.part,
      where: spot.where,
      z_mm: shown(spot.z, 'mm'),
      r_mm: shown(spot.r, 'mm'),
      volume_mm3: shown(spot.volume, 'mm³'),
      meanAge_s: rounded(spot.meanAge),
      cause: spot.cause,
      remedy: spot.remedy,
    })),
  };
}

function findingsJson({ findings }: Prediction): PredictionJson['findings'] {
  return findings.map(({ code, severity, where, saw, why, change, z, value, limit, unit }) => ({
    code,
    severity,
    where,
    saw,
    why,
    change,
    z_mm: orNull(z, (at) => shown(at, 'mm')),
    value: orNull(value, rounded),
    limit: orNull(limit, rounded),
    unit,
  }));
}
