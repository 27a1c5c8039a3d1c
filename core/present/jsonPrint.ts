/** Line, firmware, ooze, strand, cooling and cooling stress in the machine-readable verdict. */

import type { PrintMatch } from '../prediction/types.ts';
import type { FirmwareNumbers } from '../print/types.ts';
import { orNull, rounded, shown } from './shown.ts';
import { stepsPerCubicMm } from './steps.ts';

type Maybe = number | null;

/** Numbers for firmware; steps are motor microsteps. Null where nothing flows. */
interface FirmwareJson {
  readonly stepsPerScrewTurn: number;
  readonly stepsPerMm3: Maybe;
  readonly filamentDiameter_mm: number;
  readonly lengthIsVolume: boolean;
  readonly stepsPerMm: Maybe;
  readonly fullStep_mm3: Maybe;
  readonly microstep_mm3: Maybe;
  readonly demandMicrosteps_per_s: Maybe;
  readonly demandScrewSpeed_rpm: Maybe;
  readonly releaseAngle_deg: Maybe;
  readonly releaseLength_mm: Maybe;
  readonly pressureTime_s: Maybe;
}

/** The print side beyond demand and supply. Null where unknown or nothing flows. */
export interface PrintSideJson {
  readonly lineArea_mm2: number;
  readonly rectangleArea_mm2: number;
  readonly fittedWidth_mm: number;
  readonly widthOverBore: number;
  readonly heightOverBore: number;
  readonly outlet_C: number;
  readonly firmware: FirmwareJson;
  readonly ooze: {
    readonly volume_mm3: Maybe;
    readonly low_mm3: Maybe;
    readonly high_mm3: Maybe;
    readonly time90_s: Maybe;
    readonly forwardShare: Maybe;
  };
  readonly drip: { readonly drips: boolean | null; readonly rate_mm3_s: number; readonly drop_mg: Maybe };
  readonly strand: {
    readonly verdict: string | null;
    readonly number: Maybe;
    readonly capillary: Maybe;
    readonly ohnesorge: Maybe;
    readonly breakup_s: Maybe;
    readonly gap_s: Maybe;
  };
  readonly cooling: { readonly setTime_s: Maybe; readonly biot: number; readonly reason: string | null };
  readonly coolingStress: {
    readonly verdict: string | null;
    readonly bed_MPa: Maybe;
    readonly chamber_MPa: Maybe;
    readonly strength_MPa: Maybe;
    readonly wantedTemperature_C: Maybe;
  };
}

const mm = (value: number) => shown(value, 'mm');
const mm3 = (value: number) => shown(value, 'mm³');
const megapascal = (value: number) => shown(value, 'MPa');

/** Firmware's numbers in their usual units. */
const firmwareJson = (firmware: FirmwareNumbers): FirmwareJson => ({
  stepsPerScrewTurn: rounded(firmware.stepsPerScrewTurn),
  stepsPerMm3: orNull(firmware.stepsPerVolume, (value) => rounded(stepsPerCubicMm(value))),
  filamentDiameter_mm: mm(firmware.filamentDiameter),
  lengthIsVolume: firmware.lengthIsVolume,
  stepsPerMm: orNull(firmware.stepsPerLength, (value) => rounded(value / 1000)),
  fullStep_mm3: orNull(firmware.fullStepVolume, mm3),
  microstep_mm3: orNull(firmware.microstepVolume, mm3),
  demandMicrosteps_per_s: orNull(firmware.demandStepRate),
  demandScrewSpeed_rpm: orNull(firmware.demandScrewSpeed, (value) => shown(value, 'rpm')),
  releaseAngle_deg: orNull(firmware.releaseAngle, (value) => shown(value, '°')),
  releaseLength_mm: orNull(firmware.releaseLength, mm),
  pressureTime_s: orNull(firmware.advanceTime),
});

const strandJson = (strand: PrintMatch['strand']): PrintSideJson['strand'] => ({
  verdict: strand.verdict,
  number: orNull(strand.number),
  capillary: orNull(strand.capillary),
  ohnesorge: orNull(strand.ohnesorge),
  breakup_s: orNull(strand.breakupTime),
  gap_s: orNull(strand.gapTime),
});

/** Writes what the print side adds to demand and supply. */
export function printSideJson(print: PrintMatch, flows: boolean): PrintSideJson {
  const { line, release, drip, strand, cooling, crack } = print;
  const moving = (value: number | null, show: (value: number) => number = rounded): Maybe =>
    flows ? orNull(value, show) : null;
  return {
    lineArea_mm2: shown(line.area, 'mm²'),
    rectangleArea_mm2: shown(line.rectangleArea, 'mm²'),
    fittedWidth_mm: mm(line.fittedWidth),
    widthOverBore: rounded(line.widthOverBore),
    heightOverBore: rounded(line.heightOverBore),
    outlet_C: shown(print.outlet, '°C'),
    firmware: firmwareJson(print.firmware),
    ooze: {
      volume_mm3: moving(release.ooze.value, mm3),
      low_mm3: moving(release.ooze.low, mm3),
      high_mm3: moving(release.ooze.high, mm3),
      time90_s: moving(release.time90.value),
      forwardShare: moving(release.nozzleShare),
    },
    drip: {
      drips: drip.drips,
      rate_mm3_s: shown(drip.rate, 'mm³/s'),
      drop_mg: orNull(drip.dropMass, (value) => shown(value, 'mg')),
    },
    strand: strandJson(strand),
    cooling: { setTime_s: orNull(cooling.setTime), biot: rounded(cooling.biot), reason: cooling.reason },
    coolingStress: {
      verdict: crack.verdict,
      bed_MPa: orNull(crack.bedStress, megapascal),
      chamber_MPa: orNull(crack.chamberStress, megapascal),
      strength_MPa: orNull(crack.strength, megapascal),
      wantedTemperature_C: orNull(crack.wantedTemperature, (value) => shown(value, '°C')),
    },
  };
}
