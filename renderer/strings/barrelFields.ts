/** Names, units and help of every value of barrel and nozzle, keyed by its place in the project. Texts only. */

import type { FieldSpec } from '../fields/spec.ts';

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
