/** What a controller wants to be told, as rows: steps, volumes, limits, pressure, temperatures. */

import type { Prediction } from '../../prediction/types.ts';
import { stepsPerFilamentLength } from '../../print/bead.ts';
import { unitFilament } from '../../print/firmware.ts';
import { formatNumber, type Unit } from '../../units.ts';
import type { Cell, DataTable } from '../data/table.ts';
import { cellIn as exactIn, cellOf as exactOf } from '../data/table.ts';
import type { HandoverSubject } from '../types.ts';
import { senseOf } from './direction.ts';
import { heatersOf } from './heaters.ts';

/** Virtual filaments for which steps are told, m: 1 mm of it is 1 mm³; and the two usual diameters. */
const usualFilaments: readonly number[] = [unitFilament, 1.75e-3, 2.85e-3];

/** Digits of a predicted figure, and of a step setting, which a person corrects by weighing but types as it stands. */
const figureDigits = 4;
const settingDigits = 6;

const rounded = (cell: Cell, digits = figureDigits): Cell =>
  typeof cell === 'number' ? Number(cell.toPrecision(digits)) : cell;

const cellOf = (value: number | null | undefined): Cell => rounded(exactOf(value));
const cellIn = (value: number | null | undefined, unit: Unit): Cell => rounded(exactIn(value, unit));

type Row = readonly [topic: string, name: string, value: Cell, unit: string, meaning: string];

/** Steps per mm and fastest feed for each virtual filament. */
function filamentRows({ print, output }: Prediction): Row[] {
  const { stepsPerVolume, filamentDiameter } = print.firmware;
  if (stepsPerVolume === null) return [];
  const diameters = [...new Set([...usualFilaments, filamentDiameter])];
  return diameters.flatMap((diameter): Row[] => {
    const name = `Ø ${formatNumber(1000 * diameter, 7)} mm`;
    const area = (Math.PI / 4) * diameter ** 2;
    const volumes = diameter === unitFilament ? '; 1 mm is 1 mm³, so lengths are volumes' : '';
    const own = diameter === filamentDiameter ? '; the one of the print settings' : '';
    const perMm = rounded(exactOf(stepsPerFilamentLength(stepsPerVolume, diameter) / 1000), settingDigits);
    return [
      [
        'Steps',
        `E steps per mm, ${name}`,
        perMm,
        'steps/mm',
        `M92 E${perMm} with filament diameter ${name}${volumes}${own}`,
      ],
      [
        'Limits',
        `Fastest feed, ${name}`,
        cellIn(output.volumeFlow / area, 'mm/s'),
        'mm/s',
        'Of that filament at the working point',
      ],
    ];
  });
}

function stepRows({ print }: Prediction): Row[] {
  const { firmware } = print;
  const perMm3 = firmware.stepsPerVolume === null ? null : firmware.stepsPerVolume * 1e-9;
  const perTurn = firmware.stepsPerVolume === null ? null : firmware.stepsPerScrewTurn / firmware.stepsPerVolume;
  return [
    [
      'Steps',
      'Microsteps per turn of the screw',
      exactOf(firmware.stepsPerScrewTurn),
      'steps',
      'Full steps × microsteps × gear',
    ],
    [
      'Steps',
      'Melt per turn of the screw',
      cellIn(perTurn, 'mm³'),
      'mm³',
      'At the working pressure; weigh and correct',
    ],
    ['Steps', 'Steps per volume', rounded(exactOf(perMm3), settingDigits), 'steps/mm³', 'Volumetric setting'],
    ['Steps', 'Melt per full step', cellIn(firmware.fullStepVolume, 'mm³'), 'mm³', 'Grain in which the motor meters'],
  ];
}

function limitRows({ print, output, drive, heat }: Prediction): Row[] {
  return [
    ['Limits', 'Most volume flow', cellIn(output.volumeFlow, 'mm³/s'), 'mm³/s', 'At the set speed; a volumetric limit'],
    [
      'Limits',
      'Flow that all heaters hold',
      cellIn(heat.holdingFlow, 'mm³/s'),
      'mm³/s',
      'Above it a heater falls behind',
    ],
    ['Limits', 'Demand of the print', cellIn(print.demand, 'mm³/s'), 'mm³/s', 'While a line is laid'],
    ['Limits', 'Highest print speed', cellIn(print.highestSpeed, 'mm/s'), 'mm/s', 'At the line and layer of the print'],
    ['Limits', 'Screw speed', cellIn(output.screwSpeed, 'rpm'), 'rpm', 'At the working point'],
    ['Limits', 'Motor speed', cellIn(drive.motorSpeed, 'rpm'), 'rpm', 'At the working point'],
    ['Limits', 'Torque asked at the screw', cellOf(drive.torque), 'N·m', 'At the working point'],
    ['Limits', 'Torque the drive may give', cellOf(drive.torqueUsable), 'N·m', 'At this speed'],
  ];
}

function pressureRows({ print, output }: Prediction): Row[] {
  const { firmware } = print;
  return [
    ['Pressure', 'Head pressure', cellIn(output.headPressure, 'MPa'), 'MPa', 'At the working point'],
    [
      'Pressure',
      'Time constant',
      cellOf(firmware.advanceTime),
      's',
      'For a controller that feeds ahead by the pressure: start from it, then tune',
    ],
    ['Pressure', 'Turn back to release', cellIn(firmware.releaseAngle, '°'), '°', 'Of the screw, without slip'],
    [
      'Pressure',
      'Retract length',
      cellIn(firmware.releaseLength, 'mm'),
      'mm',
      'Of the virtual filament of the print settings',
    ],
  ];
}

function directionRow({ screw }: HandoverSubject['design']): Row {
  const meaning = `Looking towards the nozzle; the flight is ${screw.hand}-hand`;
  return ['Direction', 'The screw turns, seen from the drive', senseOf(screw.hand), '', meaning];
}

/** The numbers of one revision as a table. Needs a prediction. */
export function controllerTable({ design, prediction }: HandoverSubject): DataTable {
  if (prediction === null) throw new Error('the controller’s numbers need a prediction');
  const heaters = heatersOf(design).map(
    ({ name, celsius }): Row => [
      'Heaters',
      `Start temperature, ${name}`,
      celsius,
      '°C',
      'As described; wait until hot, then soak',
    ],
  );
  const rows = [
    directionRow(design),
    ...stepRows(prediction),
    ...filamentRows(prediction),
    ...limitRows(prediction),
    ...pressureRows(prediction),
    ...heaters,
  ];
  const columns = ['Topic', 'Number', 'Value', 'Unit', 'Meaning'].map((label) => ({ label, unit: '' }));
  return { id: 'controller', title: 'Numbers for the controller', columns, rows };
}
