/** Names, units and help of every value of screw, tip and shank, keyed by its place in the project. Texts only. */

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
