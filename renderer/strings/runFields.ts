/** Names, units and help of the numbers of running and printing. */

import type { FieldSpec } from '../fields/spec.ts';

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
    help: 'Speed of the nozzle over the work while laying. It changes what the print asks for, not the melt: the screw keeps its set speed.',
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
  {
    key: 'print.filamentDiameterMm',
    label: 'Virtual filament Ø',
    unit: 'mm',
    help: 'Filament that the controller thinks it feeds. Left empty: 1.128 mm, of which 1 mm is 1 mm³.',
    step: 0.05,
    optional: true,
  },
  {
    key: 'print.bedC',
    label: 'Bed temperature',
    unit: '°C',
    help: 'Of the plate under the print; for cooling and for stress. Leave empty where it is not known.',
    step: 1,
    optional: true,
  },
  {
    key: 'print.chamberC',
    label: 'Air at the print',
    unit: '°C',
    help: 'Temperature of the air that the laid line cools in. Leave empty where it is not known.',
    step: 1,
    optional: true,
  },
  {
    key: 'print.coolingWPerM2K',
    label: 'Cooling by the air',
    unit: 'W/(m²·K)',
    help: 'Heat transfer from the laid line: about 10 to 30 in still air, 30 to 100 under a fan (common practice).',
    step: 5,
    optional: true,
  },
];
