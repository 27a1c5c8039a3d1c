/** Names, units and help of the numbers of hopper and drive. */

import type { FieldSpec } from '../fields/spec.ts';

/** Hopper values. */
export const hopperFields: readonly FieldSpec[] = [
  {
    key: 'hopper.outletDiameterMm',
    label: 'Outlet Ø',
    unit: 'mm',
    help: 'Opening at the bottom of the hopper. Wider than several grains, or the grains bridge over it.',
    step: 1,
  },
  {
    key: 'hopper.wallHalfAngleDeg',
    label: 'Wall angle from vertical',
    unit: '°',
    help: 'Lean of the hopper’s wall from vertical. Steep walls (small angle) keep all grains moving.',
    step: 1,
  },
  { key: 'hopper.heightMm', label: 'Height', unit: 'mm', help: 'Height of the fill above the outlet.', step: 5 },
  {
    key: 'hopper.wallFriction',
    label: 'Wall friction',
    unit: 'ratio',
    help: 'Friction coefficient of grains on the hopper’s wall.',
    step: 0.01,
  },
  {
    key: 'hopper.gapMm',
    label: 'Widest gap',
    unit: 'mm',
    help: 'Widest gap in the feed through which small grains could trickle out.',
  },
];

/** Drive values apart from the motor curve. */
export const driveFields: readonly FieldSpec[] = [
  { key: 'drive.gearRatio', label: 'Gear ratio', unit: 'ratio', help: 'Motor turns per screw turn.', step: 0.5 },
  {
    key: 'drive.gearEfficiency',
    label: 'Gear efficiency',
    unit: 'ratio',
    help: 'Share of the motor’s power that reaches the screw, 0 to 1. Planetary gears about 0.9, worm gears 0.4 to 0.7.',
    step: 0.01,
  },
  {
    key: 'drive.usableTorqueShare',
    label: 'Usable share of torque',
    unit: 'ratio',
    help: 'Share of the pull-out torque that is used in continuous running, 0 to 1. About 0.5 keeps steppers from losing steps.',
    step: 0.05,
  },
  {
    key: 'drive.fullStepsPerTurn',
    label: 'Full steps per turn',
    unit: 'count',
    help: 'Of the motor: 200 for a 1.8 degree stepper.',
    step: 1,
  },
  { key: 'drive.microsteps', label: 'Microsteps', unit: 'count', help: 'Driver microsteps per full step.', step: 1 },
];

/** Values of one point of the motor curve. */
export const motorFields: readonly FieldSpec[] = [
  {
    key: 'speedRpm',
    label: 'Motor speed',
    unit: 'rpm',
    help: 'Speed of the motor’s shaft, before the gear.',
    step: 10,
  },
  {
    key: 'torqueNm',
    label: 'Pull-out torque',
    unit: 'N·m',
    help: 'Torque at which the motor loses its place at this speed.',
    step: 0.01,
  },
];

/** Loads of the axial bearing, where one is described. */
export const bearingFields: readonly FieldSpec[] = [
  {
    key: 'drive.bearing.staticLoadN',
    label: 'Static axial load',
    unit: 'N',
    help: 'Static axial rating of the bearing, from its data sheet. A screw turns slowly, so this one counts first.',
    step: 100,
  },
  {
    key: 'drive.bearing.dynamicLoadN',
    label: 'Dynamic axial load',
    unit: 'N',
    help: 'Dynamic axial rating, for the life in turns. Leave empty where it is not known.',
    step: 100,
    optional: true,
  },
];
