/** Numbers that printer firmware wants to be told, in open conventions. */

import type { Drive } from '../design/types.ts';
import { stepsPerScrewTurn } from '../drive/motor.ts';
import { stepsPerFilamentLength } from './bead.ts';
import type { FirmwareNumbers } from './types.ts';

/** Diameter of a virtual filament of which 1 mm is 1 mm³, m: 2/sqrt(pi) mm. */
export const unitFilament = 2e-3 / Math.sqrt(Math.PI);

/** A length of filament counts as its volume within this share. */
const unitShare = 1e-4;

/** What the numbers rest on. */
export interface FirmwareInputs {
  /** rev/s and the m³/s that come out at it */
  readonly screwSpeed: number;
  readonly volumeFlow: number;
  /** m³/s while a line is laid */
  readonly demand: number;
  /** m; null takes `unitFilament` */
  readonly filamentDiameter: number | null;
  /** m³ stored under pressure, s of its time constant */
  readonly storedVolume: number;
  readonly advanceTime: number;
}

/**
 * Steps, volumes and retraction.
 * A reversing screw does not pull back a fixed volume: it lowers the pressure until the stored melt is taken up, so the
 * release is that volume as an angle (no slip) and as a length of virtual filament. Output per turn falls with back
 * pressure and wear: measure, and correct the steps by asked over delivered.
 */
export function firmwareNumbers(drive: Drive, inputs: FirmwareInputs): FirmwareNumbers {
  const { screwSpeed, volumeFlow, demand } = inputs;
  const filamentDiameter = inputs.filamentDiameter ?? unitFilament;
  const filamentArea = (Math.PI / 4) * filamentDiameter ** 2;
  const perTurn = stepsPerScrewTurn(drive);
  const turn = screwSpeed > 0 && volumeFlow > 0 ? volumeFlow / screwSpeed : null;
  const ofTurn = <T>(answer: (volume: number) => T): T | null => (turn === null ? null : answer(turn));
  return {
    stepsPerScrewTurn: perTurn,
    stepsPerVolume: ofTurn((volume) => perTurn / volume),
    filamentDiameter,
    filamentArea,
    lengthIsVolume: Math.abs(filamentArea * 1e6 - 1) < unitShare,
    stepsPerLength: ofTurn((volume) => stepsPerFilamentLength(perTurn / volume, filamentDiameter)),
    fullStepVolume: ofTurn((volume) => (volume * drive.microsteps) / perTurn),
    microstepVolume: ofTurn((volume) => volume / perTurn),
    demandScrewSpeed: ofTurn((volume) => demand / volume),
    demandStepRate: ofTurn((volume) => (demand / volume) * perTurn),
    releaseAngle: ofTurn((volume) => (2 * Math.PI * inputs.storedVolume) / volume),
    releaseLength: ofTurn(() => inputs.storedVolume / filamentArea),
    advanceTime: ofTurn(() => inputs.advanceTime),
  };
}
