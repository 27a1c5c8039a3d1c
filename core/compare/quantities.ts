/** What is compared between predictions, which way is better, and how far each figure can be trusted. */

import type { Prediction } from '../prediction/types.ts';
import { formatNumber, formatQuantity, type Unit } from '../units.ts';

/** One compared figure. */
export interface ComparedQuantity {
  readonly id: string;
  readonly label: string;
  readonly unit: Unit | '';
  readonly better: 'more' | 'less' | 'neither';
  /**
   * relative error of the model between two similar designs: differences below it say nothing. Errors of inputs
   * (viscosity, friction) hit both designs alike and mostly cancel.
   */
  readonly modelError: number;
  /** SI, or null where there is no number or, for what only a flow has, nothing comes out */
  readonly value: (prediction: Prediction) => number | null;
}

/** Whether two values (SI) differ by less than the model's error, which then says nothing of either. */
export const withinError = ({ modelError }: ComparedQuantity, a: number, b: number): boolean =>
  a === b || Math.abs(a - b) < modelError * Math.max(Math.abs(a), Math.abs(b));

/** How numbers are written: units and decimal signs are the reader's choice. */
export interface NumberWriter {
  quantity(si: number, unit: Unit, digits: number): string;
  number(value: number, digits: number): string;
}

/** Metric, with a decimal point. */
export const plainWriter: NumberWriter = { quantity: formatQuantity, number: formatNumber };

/** A value (SI) as it is read, with its unit; a dash where there is none. */
export function comparedText(value: number | null, { unit }: { unit: Unit | '' }, write = plainWriter): string {
  if (value === null) return '–';
  return unit === '' ? write.number(value, 3) : write.quantity(value, unit, 3);
}

/** A figure that tells nothing where nothing comes out. */
const flowing =
  (value: (prediction: Prediction) => number | null) =>
  (prediction: Prediction): number | null =>
    prediction.output.flows ? value(prediction) : null;

/** Compared figures, the deciding ones first. */
export const comparedQuantities: readonly ComparedQuantity[] = [
  {
    id: 'volumeFlow',
    label: 'Melt output',
    unit: 'mm³/s',
    better: 'more',
    modelError: 0.05,
    value: (p) => p.output.volumeFlow,
  },
  {
    id: 'margin',
    label: 'Supply over demand',
    unit: '',
    better: 'more',
    modelError: 0.05,
    value: (p) => p.print.margin,
  },
  {
    id: 'mean',
    label: 'Mean residence',
    unit: 's',
    better: 'less',
    modelError: 0.05,
    value: flowing((p) => p.residence.mean),
  },
  {
    id: 't95',
    label: '95 % has left by',
    unit: 's',
    better: 'less',
    modelError: 0.1,
    value: flowing((p) => p.residence.t95),
  },
  {
    id: 't99',
    label: '99 % has left by',
    unit: 's',
    better: 'less',
    modelError: 0.2,
    value: flowing((p) => p.residence.t99),
  },
  {
    id: 'over3',
    label: 'Volume older than 3 × mean',
    unit: '%',
    better: 'less',
    modelError: 0.2,
    value: flowing((p) => p.dead.fractionOver3),
  },
  {
    id: 'dE00Mean',
    label: 'Mean colour shift, ΔE00',
    unit: '',
    better: 'less',
    modelError: 0.15,
    value: flowing((p) => p.colour.dE00Mean),
  },
  {
    id: 'dE00Worst',
    label: 'Worst streak, ΔE00',
    unit: '',
    better: 'less',
    modelError: 0.25,
    value: flowing((p) => p.colour.dE00Worst),
  },
  {
    id: 'torque',
    label: 'Torque',
    unit: 'N·m',
    better: 'less',
    modelError: 0.1,
    value: flowing((p) => p.drive.torque),
  },
  {
    id: 'motorMargin',
    label: 'Motor torque over what is needed',
    unit: '',
    better: 'more',
    modelError: 0.1,
    value: flowing((p) => p.drive.motorMargin),
  },
  {
    id: 'rootShearFull',
    label: 'Root shear, full motor torque',
    unit: 'MPa',
    better: 'less',
    modelError: 0.02,
    value: (p) => p.drive.rootShearFull,
  },
  {
    id: 'headPressure',
    label: 'Head pressure',
    unit: 'MPa',
    better: 'less',
    modelError: 0.05,
    value: flowing((p) => p.output.headPressure),
  },
  {
    id: 'blockedPressure',
    label: 'Pressure when blocked',
    unit: 'MPa',
    better: 'less',
    modelError: 0.1,
    value: flowing((p) => p.drive.blockedPressure),
  },
  {
    id: 'heater',
    label: 'Heaters must bring',
    unit: 'W',
    better: 'less',
    modelError: 0.2,
    value: flowing((p) => p.heat.heater),
  },
  {
    id: 'compressionRatio',
    label: 'Compression',
    unit: '',
    better: 'neither',
    modelError: 0.01,
    value: (p) => p.geometry.compressionRatio,
  },
  {
    // slender work bends away from the cutter and needs a steady: common practice
    id: 'slenderness',
    label: 'Screw length over thinnest root',
    unit: '',
    better: 'less',
    modelError: 0.01,
    value: ({ geometry }) =>
      geometry.leastRootDiameter > 0 ? geometry.sectionsLength / geometry.leastRootDiameter : null,
  },
  {
    id: 'grave',
    label: 'Findings that stop or warn',
    unit: '',
    better: 'less',
    modelError: 0,
    value: (p) => p.findings.filter((f) => f.severity === 'stop' || f.severity === 'warn').length,
  },
];
