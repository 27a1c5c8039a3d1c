/** The machine-readable verdict. */

import type { Design } from '../design/types.ts';
import type { Prediction } from '../prediction/types.ts';
import { calibrationNote, fieldsNote, fieldsOf } from './foundation.ts';
import { colourJson } from './jsonColour.ts';
import { contentJson } from './jsonContent.ts';
import { strengthJson } from './jsonDrive.ts';
import { printSideJson } from './jsonPrint.ts';
import type {
  DeadJson,
  DriveJson,
  FindingJson,
  HeatJson,
  PredictionJson,
  PrintJson,
  ResidenceJson,
} from './jsonTypes.ts';
import { displayedValue, orNull, rounded, shown } from './shown.ts';
import { stepsPerCubicMm } from './steps.ts';

/**
 * The verdict of a prediction as plain JSON: every number finite, units in the names or beside the numbers.
 * @param design tells whether project and material are invented
 */
export function predictionJson(prediction: Prediction, design?: Design): PredictionJson {
  const { drive, output } = prediction;
  const driveFigures = driveJson(prediction);
  return {
    revision: prediction.revisionId,
    name: prediction.revisionName,
    designHash: prediction.designHash,
    coreVersion: prediction.coreVersion,
    fields: fieldsOf(prediction),
    fieldsNote: fieldsNote(prediction),
    calibrationNote: calibrationNote(prediction),
    converged: prediction.converged,
    flows: output.flows,
    projectInvented: design ? design.invented : null,
    material: design ? materialJson(design) : null,
    limit: prediction.limit,
    capacities: capacitiesJson(prediction),
    output: outputJson(prediction),
    pressure: {
      head_MPa: shown(output.headPressure, 'MPa'),
      blocked_MPa: shown(drive.blockedPressure, 'MPa'),
      stall_MPa: orNull(drive.stallPressure, (value) => shown(value, 'MPa')),
    },
    torque_Nm: driveFigures.torque_Nm,
    torqueUsable_Nm: driveFigures.torqueUsable_Nm,
    power_W: driveFigures.power_W,
    heater_W: rounded(prediction.heat.heater),
    drive: driveFigures,
    heat: heatJson(prediction),
    residence: residenceJson(prediction),
    dead: deadJson(prediction),
    colour: colourJson(prediction),
    print: printJson(prediction),
    ...contentJson(prediction),
    findings: findingsJson(prediction),
  };
}

/** Writes a number only where melt flows: elsewhere it is a zero that says nothing. */
const ifFlowing =
  ({ output }: Prediction) =>
  (value: number, show: (value: number) => number = rounded): number | null =>
    output.flows ? orNull(value, show) : null;

const materialJson = ({ material: { id, name, invented } }: Design) => ({ id, name, invented });

function capacitiesJson({ capacities }: Prediction): PredictionJson['capacities'] {
  return capacities.map(({ kind, volumeFlow, reserve, basis }) => ({
    kind,
    volumeFlow_mm3_s: orNull(volumeFlow, (value) => shown(value, 'mm³/s')),
    reserve: orNull(reserve),
    basis,
  }));
}

function outputJson(prediction: Prediction): PredictionJson['output'] {
  const { output } = prediction;
  const flowing = ifFlowing(prediction);
  return {
    volumeFlow_mm3_s: shown(output.volumeFlow, 'mm³/s'),
    massFlow_g_min: shown(output.massFlow, 'g/min'),
    screwSpeed_rpm: shown(output.screwSpeed, 'rpm'),
    leakFlow_mm3_s: flowing(output.leakFlow, (value) => shown(value, 'mm³/s')),
    filledLength_mm: flowing(output.filledLength, (value) => shown(value, 'mm')),
    basis: output.basis,
  };
}

function driveJson(prediction: Prediction): DriveJson {
  const { drive } = prediction;
  const flowing = ifFlowing(prediction);
  return {
    torque_Nm: flowing(drive.torque),
    torqueLand_Nm: flowing(drive.torqueClearance),
    torqueUsable_Nm: rounded(drive.torqueUsable),
    power_W: flowing(drive.power),
    motorSpeed_rpm: shown(drive.motorSpeed, 'rpm'),
    rootShear_MPa: flowing(drive.rootShear, (value) => shown(value, 'MPa')),
    rootShearFull_MPa: shown(drive.rootShearFull, 'MPa'),
    thrust_N: flowing(drive.thrust),
    ...strengthJson(drive, prediction.output.flows),
    basis: drive.basis,
  };
}

function heatJson({ heat }: Prediction): HeatJson {
  return {
    product_W: rounded(heat.product),
    dissipation_W: rounded(heat.dissipation),
    loss_W: rounded(heat.loss),
    ambient_W: rounded(heat.ambient),
    coolant_W: rounded(heat.coolant),
    driveEnd_W: rounded(heat.driveEnd),
    heater_W: rounded(heat.heater),
    given_W: rounded(heat.given),
    outlet_C: shown(heat.outlet, '°C'),
    zones: heat.zones.map((zone) => ({
      name: zone.name,
      part: zone.part,
      setTemperature_C: shown(zone.setTemperature, '°C'),
      reached_C: shown(zone.reached, '°C'),
      given_W: rounded(zone.power),
      needed_W: rounded(zone.needed),
      installed_W: rounded(zone.maxPower),
      duty: zone.duty,
    })),
    installed_W: rounded(heat.installed),
    basis: heat.basis,
  };
}

function residenceJson(prediction: Prediction): ResidenceJson {
  const { residence } = prediction;
  const flowing = ifFlowing(prediction);
  return {
    mean_s: flowing(residence.mean),
    min_s: flowing(residence.min),
    t50_s: flowing(residence.t50),
    t95_s: flowing(residence.t95),
    t99_s: flowing(residence.t99),
    washout99_s: flowing(residence.washout99),
    washout999_s: flowing(residence.washout999),
    parts: residence.parts.map(({ part, mean, volume }) => ({
      part,
      mean_s: flowing(mean),
      volume_mm3: shown(volume, 'mm³'),
    })),
    basis: residence.basis,
  };
}

function deadJson(prediction: Prediction): DeadJson {
  const { dead } = prediction;
  const flowing = ifFlowing(prediction);
  return {
    fractionOver3: flowing(dead.fractionOver3),
    fractionOver5: flowing(dead.fractionOver5),
    spots: dead.spots.map((spot) => ({
      part: spot.part,
      where: spot.where,
      z_mm: shown(spot.z, 'mm'),
      zFrom_mm: shown(spot.zFrom, 'mm'),
      zTo_mm: shown(spot.zTo, 'mm'),
      r_mm: shown(spot.r, 'mm'),
      volume_mm3: shown(spot.volume, 'mm³'),
      meanAge_s: rounded(spot.meanAge),
      cause: spot.cause,
      remedy: spot.remedy,
      dE00: orNull(spot.dE00),
      srgb: spot.srgb ?? null,
    })),
    basis: dead.basis,
  };
}

function printJson(prediction: Prediction): PrintJson {
  const { print } = prediction;
  const flowing = ifFlowing(prediction);
  return {
    demand_mm3_s: shown(print.demand, 'mm³/s'),
    meanDemand_mm3_s: shown(print.meanDemand, 'mm³/s'),
    margin: rounded(print.margin),
    passesPerWall: rounded(print.passesPerWall),
    stepsPerMm3: flowing(stepsPerCubicMm(print.stepsPerVolume)),
    pressureTime_s: flowing(print.pressureTime),
    highestSpeed_mm_s: shown(print.highestSpeed, 'mm/s'),
    speedForDemand_rpm: orNull(print.speedForDemand, (value) => shown(value, 'rpm')),
    ...printSideJson(print, prediction.output.flows),
    basis: print.basis,
  };
}

function findingsJson({ findings }: Prediction): readonly FindingJson[] {
  return findings.map(({ code, severity, where, saw, why, change, z, value, limit, unit }) => ({
    code,
    severity,
    where,
    saw,
    why,
    change,
    z_mm: orNull(z, (at) => shown(at, 'mm')),
    ...displayedValue(value, unit),
    limit: displayedValue(limit, unit).value,
  }));
}
