/** Names, units and help of every value of the machine, keyed by its place in the project. Texts only. */

import type { FieldSpec } from '../fields/spec.ts';

/** The values of one flighted section, in the order of the table. */
export const sectionFields: readonly FieldSpec[] = [
  {
    key: 'lengthMm',
    label: 'Length',
    unit: 'mm',
    help: 'Axial length of this section. Sections follow each other from the feed end.',
  },
  {
    key: 'leadStartMm',
    label: 'Lead start',
    unit: 'mm',
    help: 'How far one flight advances in one turn where the section begins. For one start this is the distance from flight to flight.',
  },
  {
    key: 'leadEndMm',
    label: 'Lead end',
    unit: 'mm',
    help: 'Lead where the section ends. Different from the start: the lead changes evenly along the section.',
  },
  {
    key: 'rootDiameterStartMm',
    label: 'Root Ø start',
    unit: 'mm',
    help: 'Diameter of the screw’s core where the section begins. Channel depth is half the bore less half of this.',
  },
  {
    key: 'rootDiameterEndMm',
    label: 'Root Ø end',
    unit: 'mm',
    help: 'Diameter of the core where the section ends. Larger than at the start: the channel gets shallower and packs the granulate.',
  },
  {
    key: 'starts',
    label: 'Starts',
    unit: 'count',
    help: 'Number of flights side by side. One is usual; two halve the channel width for the same lead.',
    step: 1,
  },
  {
    key: 'flightWidthMm',
    label: 'Flight land',
    unit: 'mm',
    help: 'Axial width of the flight at its tip, the part that faces the barrel wall. About a tenth of the diameter is common practice.',
  },
  {
    key: 'flankAngleDeg',
    label: 'Flank angle',
    unit: '°',
    help: 'Lean of each flank from square. 0 is a square flight; V-shaped flights, as on wood screws, lean 15 to 30 degrees.',
    step: 1,
  },
  {
    key: 'rootFilletMm',
    label: 'Root fillet',
    unit: 'mm',
    help: 'Radius between root and flank. A sharp corner holds melt that hardly moves; about half the depth or more keeps it moving.',
  },
];

/** Screw-wide values. */
export const screwFields: readonly FieldSpec[] = [
  {
    key: 'screw.radialClearanceMm',
    label: 'Flight clearance',
    unit: 'mm',
    help: 'Gap between flight and barrel, on one side. Melt leaks back through it; too little and screw and barrel may touch when hot.',
    step: 0.01,
  },
];

/** The screw's steel. */
export const steelFields: readonly FieldSpec[] = [
  {
    key: 'screw.steel.yieldMPa',
    label: 'Yield strength',
    unit: 'MPa',
    help: 'Stress at which the steel gives way for good, at working temperature. Root shear is judged against it.',
    step: 10,
  },
  {
    key: 'screw.steel.youngGPa',
    label: 'Stiffness (Young)',
    unit: 'GPa',
    help: 'Elastic modulus, used for bending and twist.',
    step: 1,
  },
  {
    key: 'screw.steel.conductivityWPerMK',
    label: 'Heat conductivity',
    unit: 'W/(m·K)',
    help: 'How well the screw carries heat back towards the feed. Stainless steel about 15, plain steel about 45.',
    step: 1,
  },
  {
    key: 'screw.steel.expansionPerMK',
    label: 'Heat expansion',
    unit: 'µm/(m·K)',
    help: 'Growth per metre and kelvin. It eats into the flight clearance when the screw runs hot.',
    step: 0.5,
  },
];

/** Tip values; the included angle belongs to the cone alone. */
export const tipFields: readonly FieldSpec[] = [
  {
    key: 'screw.tip.includedAngleDeg',
    label: 'Included angle',
    unit: '°',
    help: 'Full angle of the cone at the screw’s end. Matching it to the nozzle’s entry keeps the gap even and the melt moving.',
    step: 5,
  },
  {
    key: 'screw.tip.pinDiameterMm',
    label: 'Pin Ø',
    unit: 'mm',
    help: 'Diameter of a plain pin ahead of the tip. 0 for none.',
  },
  {
    key: 'screw.tip.pinLengthMm',
    label: 'Pin length',
    unit: 'mm',
    help: 'Length of the pin ahead of the tip. 0 for none.',
  },
];

/** Shank values. */
export const shankFields: readonly FieldSpec[] = [
  { key: 'screw.shank.diameterMm', label: 'Shank Ø', unit: 'mm', help: 'Diameter of the driven end behind the feed.' },
  {
    key: 'screw.shank.lengthMm',
    label: 'Shank length',
    unit: 'mm',
    help: 'Length of the driven end behind the feed.',
    step: 1,
  },
];

/** Barrel values. */
export const barrelFields: readonly FieldSpec[] = [
  {
    key: 'barrel.boreDiameterMm',
    label: 'Bore Ø',
    unit: 'mm',
    help: 'Inner diameter of the barrel. The flight diameter is this less twice the clearance.',
  },
  {
    key: 'barrel.outerDiameterMm',
    label: 'Outer Ø',
    unit: 'mm',
    help: 'Outer diameter of the barrel; it decides heat conduction along the barrel and loss to the air.',
    step: 1,
  },
  {
    key: 'barrel.lengthMm',
    label: 'Barrel length',
    unit: 'mm',
    help: 'Length of the bore from the start of the first section to the nozzle’s first piece.',
    step: 1,
  },
  {
    key: 'barrel.conductivityWPerMK',
    label: 'Heat conductivity',
    unit: 'W/(m·K)',
    help: 'Of the barrel’s material. Stainless steel about 15, plain steel about 45, brass about 110.',
    step: 1,
  },
];

/** Feed opening values. */
export const feedOpeningFields: readonly FieldSpec[] = [
  {
    key: 'barrel.feedOpening.startMm',
    label: 'Starts at',
    unit: 'mm',
    help: 'Distance from the start of the bore to the near edge of the opening.',
    step: 0.5,
  },
  {
    key: 'barrel.feedOpening.lengthMm',
    label: 'Length along axis',
    unit: 'mm',
    help: 'Axial length of the opening. Longer than one lead lets every turn of the channel pass under grains.',
    step: 0.5,
  },
  { key: 'barrel.feedOpening.widthMm', label: 'Width across', unit: 'mm', help: 'Width across the bore.', step: 0.5 },
];

/** Heat break values. */
export const heatBreakFields: readonly FieldSpec[] = [
  {
    key: 'barrel.heatBreak.startMm',
    label: 'Starts at',
    unit: 'mm',
    help: 'Distance from the start of the bore to the thinned part that holds heat back from the feed.',
    step: 0.5,
  },
  { key: 'barrel.heatBreak.lengthMm', label: 'Length', unit: 'mm', help: 'Length of the thinned part.', step: 0.5 },
  {
    key: 'barrel.heatBreak.wallMm',
    label: 'Wall',
    unit: 'mm',
    help: 'Wall left in the thinned part. Thinner holds heat back better and is weaker.',
  },
  {
    key: 'barrel.heatBreak.conductivityWPerMK',
    label: 'Heat conductivity',
    unit: 'W/(m·K)',
    help: 'Of the heat break’s material.',
    step: 1,
  },
];

/** Values of one zone; which of them apply depends on its kind. */
export const zoneFields = {
  startMm: {
    key: 'startMm',
    label: 'From',
    unit: 'mm',
    help: 'Where the zone begins, from the start of the bore.',
    step: 1,
  },
  endMm: { key: 'endMm', label: 'To', unit: 'mm', help: 'Where the zone ends, from the start of the bore.', step: 1 },
  setTempC: {
    key: 'setTempC',
    label: 'Set',
    unit: '°C',
    help: 'Temperature the controller holds in this zone.',
    step: 1,
  },
  maxPowerW: { key: 'maxPowerW', label: 'Heater', unit: 'W', help: 'Power of the zone’s heater.', step: 1 },
  coolantTempC: {
    key: 'coolantTempC',
    label: 'Coolant',
    unit: '°C',
    help: 'Temperature of the air or water that cools this zone.',
    step: 1,
  },
} satisfies Record<string, FieldSpec>;

/** Nozzle values apart from its pieces. */
export const nozzleFields: readonly FieldSpec[] = [
  { key: 'nozzle.outerDiameterMm', label: 'Outer Ø', unit: 'mm', help: 'Outer diameter of the nozzle.', step: 0.5 },
  {
    key: 'nozzle.setTempC',
    label: 'Set temperature',
    unit: '°C',
    help: 'Temperature the controller holds at the nozzle.',
    step: 1,
  },
  { key: 'nozzle.maxPowerW', label: 'Heater power', unit: 'W', help: 'Power of the nozzle’s heater.', step: 1 },
];

/** Values of one nozzle piece. */
export const pieceFields: readonly FieldSpec[] = [
  { key: 'startDiameterMm', label: 'Ø in', unit: 'mm', help: 'Bore where the piece begins, in the direction of flow.' },
  {
    key: 'endDiameterMm',
    label: 'Ø out',
    unit: 'mm',
    help: 'Bore where the piece ends. The last piece ends at the orifice.',
  },
  { key: 'lengthMm', label: 'Length', unit: 'mm', help: 'Axial length of the piece. 0 is a flat shoulder or a ledge.' },
];

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

/** How the machine is run. */
export const runningFields: readonly FieldSpec[] = [
  {
    key: 'process.screwSpeedRpm',
    label: 'Screw speed',
    unit: 'rpm',
    help: 'Turns of the screw per minute, after the gear.',
    step: 1,
  },
  {
    key: 'process.feed.rateGPerMin',
    label: 'Feeder rate',
    unit: 'g/min',
    help: 'What the feeder meters into the opening.',
    step: 0.1,
  },
  {
    key: 'process.feedC',
    label: 'Granulate temperature',
    unit: '°C',
    help: 'Temperature of the granulate as it enters, after any drying.',
    step: 1,
  },
  { key: 'process.ambientC', label: 'Room temperature', unit: '°C', help: 'Air around the machine.', step: 1 },
  {
    key: 'process.backPressureMPa',
    label: 'Pressure after the orifice',
    unit: 'MPa',
    help: 'Pressure where the melt leaves, above the air’s. 0 for printing into the open.',
    step: 0.1,
  },
  {
    key: 'process.acceptableDeltaE',
    label: 'Accepted colour change',
    unit: 'ΔE00',
    help: 'Largest colour difference (CIE DE2000) that still passes. Below 1 is hardly seen, 2 to 3 is seen side by side.',
    step: 0.5,
  },
];

/** What the print asks for. */
export const printFields: readonly FieldSpec[] = [
  { key: 'print.lineWidthMm', label: 'Line width', unit: 'mm', help: 'Width of one laid line.' },
  { key: 'print.layerHeightMm', label: 'Layer height', unit: 'mm', help: 'Height of one layer.', step: 0.05 },
  {
    key: 'print.speedMmPerS',
    label: 'Laying speed',
    unit: 'mm/s',
    help: 'Speed of the nozzle over the work while laying.',
    step: 1,
  },
  {
    key: 'print.wallThicknessMm',
    label: 'Wall thickness',
    unit: 'mm',
    help: 'Thickness of the walls of the part, for passes per wall.',
    step: 0.5,
  },
  {
    key: 'print.travelShare',
    label: 'Travel share',
    unit: 'ratio',
    help: 'Share of time spent moving without laying, 0 to 0.95.',
    step: 0.05,
  },
  {
    key: 'print.idleShare',
    label: 'Idle share',
    unit: 'ratio',
    help: 'Share of time standing still with melt inside, 0 to 0.95.',
    step: 0.05,
  },
  {
    key: 'print.nozzleHeightMm',
    label: 'Nozzle height',
    unit: 'mm',
    help: 'Height of the orifice above the layer below.',
    step: 0.05,
  },
];
