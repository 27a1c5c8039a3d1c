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
  {
    key: 'screw.shank.filletMm',
    label: 'Shoulder fillet',
    unit: 'mm',
    help: 'Rounding between shank and screw. Torque breaks a sharp shoulder first. Left empty: taken as sharp.',
    step: 0.1,
    optional: true,
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
  {
    key: 'barrel.heatCapacityMJPerM3K',
    label: 'Heat capacity',
    unit: 'MJ/(m³·K)',
    help: 'By volume, for the time of warming up: steel about 3.7, brass 3.2, aluminium 2.4. Left empty: taken as steel.',
    optional: true,
  },
  {
    key: 'barrel.pressureLimitMPa',
    label: 'Allowed pressure',
    unit: 'MPa',
    help: 'Highest pressure that barrel, nozzle and joints are approved for by a competent person. Leave empty where none is.',
    step: 1,
    optional: true,
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
