/** Names, units and help of material values. Texts only. */

import type { FieldSpec } from '../fields/spec.ts';

export * from './materialParts.ts';

/** Values of each viscosity law, by its model name. */
export const rheologyFields: Readonly<Record<string, readonly FieldSpec[]>> = {
  newtonian: [
    {
      key: 'rheology.viscosityPaS',
      label: 'Viscosity',
      unit: 'Pa·s',
      help: 'At the reference temperature, the same at every shear rate.',
    },
  ],
  powerLaw: [
    {
      key: 'rheology.consistencyPaSn',
      label: 'Consistency K',
      unit: 'Pa·sⁿ',
      help: 'Viscosity at a shear rate of 1 per second.',
    },
    {
      key: 'rheology.index',
      label: 'Flow index n',
      unit: 'ratio',
      help: '1 is Newtonian; smaller thins more with shear.',
    },
  ],
  carreauYasuda: [
    {
      key: 'rheology.zeroShearViscosityPaS',
      label: 'Viscosity at rest',
      unit: 'Pa·s',
      help: 'Level at very low shear rates.',
    },
    {
      key: 'rheology.infiniteShearViscosityPaS',
      label: 'Viscosity at high shear',
      unit: 'Pa·s',
      help: 'Level at very high shear rates, usually 0.',
    },
    {
      key: 'rheology.timeConstantS',
      label: 'Time constant',
      unit: 's',
      help: 'Its inverse is the shear rate where thinning sets in.',
    },
    {
      key: 'rheology.transition',
      label: 'Transition a',
      unit: 'ratio',
      help: 'Sharpness of the change to thinning; 2 is Carreau’s.',
    },
    {
      key: 'rheology.index',
      label: 'Flow index n',
      unit: 'ratio',
      help: '1 is Newtonian; smaller thins more with shear.',
    },
  ],
  crossWlf: [
    { key: 'rheology.d1PaS', label: 'D1', unit: 'Pa·s', help: 'Viscosity at rest at the temperature D2.' },
    { key: 'rheology.d2K', label: 'D2', unit: 'K', help: 'Reference temperature, near the glass transition.' },
    { key: 'rheology.d3KPerPa', label: 'D3', unit: 'K/Pa', help: 'Shift of the reference with pressure, often 0.' },
    { key: 'rheology.a1', label: 'A1', unit: 'ratio', help: 'First WLF constant.' },
    { key: 'rheology.a2K', label: 'A2', unit: 'K', help: 'Second WLF constant.' },
    {
      key: 'rheology.criticalStressPa',
      label: 'Critical stress',
      unit: 'Pa',
      help: 'Shear stress where thinning sets in.',
    },
    {
      key: 'rheology.index',
      label: 'Flow index n',
      unit: 'ratio',
      help: '1 is Newtonian; smaller thins more with shear.',
    },
  ],
};

/** Values of the temperature shift, by its kind. */
export const shiftFields: Readonly<Record<string, readonly FieldSpec[]>> = {
  none: [],
  arrhenius: [
    {
      key: 'rheology.shift.activationKJPerMol',
      label: 'Flow activation',
      unit: 'kJ/mol',
      help: 'How strongly viscosity falls with temperature (Arrhenius).',
    },
  ],
  exponential: [
    {
      key: 'rheology.shift.coefficientPerK',
      label: 'Temperature coefficient',
      unit: '1/K',
      help: 'Viscosity falls by this share for each kelvin.',
    },
  ],
};

/** Grain values. */
export const grainFields: readonly FieldSpec[] = [
  {
    key: 'grain.d10Mm',
    label: 'Grain d10',
    unit: 'mm',
    help: 'A tenth of the grains by mass is smaller. Small grains trickle through gaps.',
  },
  { key: 'grain.d50Mm', label: 'Grain d50', unit: 'mm', help: 'Half of the grains by mass is smaller.' },
  {
    key: 'grain.d90Mm',
    label: 'Grain d90',
    unit: 'mm',
    help: 'Nine tenths are smaller. Judged against the channel depth at the feed.',
  },
  {
    key: 'grain.aspectRatio',
    label: 'Length to width',
    unit: 'ratio',
    help: '1 is round; flakes and rods are higher and bridge more easily.',
  },
  {
    key: 'frictionOnBarrel',
    label: 'Friction on barrel',
    unit: 'ratio',
    help: 'Of solid grains on the barrel wall. This is what moves them forward.',
  },
  {
    key: 'frictionOnScrew',
    label: 'Friction on screw',
    unit: 'ratio',
    help: 'Of solid grains on the screw. Lower than on the barrel, or the plug turns with the screw.',
  },
  {
    key: 'angleOfReposeDeg',
    label: 'Angle of repose',
    unit: '°',
    help: 'Of a heap of granulate; stands for how freely it flows.',
  },
  {
    key: 'internalFrictionDeg',
    label: 'Inner friction',
    unit: '°',
    help: 'Effective angle of friction inside the bulk, from a shear test. Decides whether the hopper empties evenly.',
  },
  {
    key: 'unconfinedStrengthPa',
    label: 'Cohesion',
    unit: 'Pa',
    help: 'Strength of a free face of the bulk as pressed in the hopper. 0 for dry pellets; damp or sticky granules have more and arch.',
  },
];

/** Density and heat values. */
export const thermalFields: readonly FieldSpec[] = [
  { key: 'meltDensityKgM3', label: 'Melt density', unit: 'kg/m³', help: 'At working temperature.' },
  { key: 'solidDensityKgM3', label: 'Solid density', unit: 'kg/m³', help: 'Of a grain.' },
  {
    key: 'bulkDensityKgM3',
    label: 'Bulk density',
    unit: 'kg/m³',
    help: 'Of loose granulate; decides how much one turn takes in.',
  },
  { key: 'conductivityWPerMK', label: 'Heat conductivity', unit: 'W/(m·K)', help: 'Of melt and grain.' },
  {
    key: 'heatCapacitySolidJPerKgK',
    label: 'Heat capacity, solid',
    unit: 'J/(kg·K)',
    help: 'Heat to warm the grains.',
  },
  { key: 'heatCapacityMeltJPerKgK', label: 'Heat capacity, melt', unit: 'J/(kg·K)', help: 'Heat to warm the melt.' },
  {
    key: 'heatOfFusionJPerKg',
    label: 'Heat of fusion',
    unit: 'J/kg',
    help: 'Heat to melt crystals; 0 for glassy materials.',
  },
  {
    key: 'softeningC',
    label: 'Softens at',
    unit: '°C',
    help: 'Where grains begin to stick. The feed must stay below.',
  },
  { key: 'meltingC', label: 'Flows at', unit: '°C', help: 'Where the material is melt.' },
  { key: 'windowLowC', label: 'Work from', unit: '°C', help: 'Lower end of the working temperatures.' },
  { key: 'windowHighC', label: 'Work to', unit: '°C', help: 'Upper end of the working temperatures.' },
  { key: 'maxSafeC', label: 'Never above', unit: '°C', help: 'Above this it breaks down fast or gives off fumes.' },
  {
    key: 'surfaceTensionNPerM',
    label: 'Surface tension',
    unit: 'N/m',
    help: 'Decides whether a thin strand holds or drips.',
  },
  {
    key: 'meltCompressibilityPerGPa',
    label: 'Compressibility of the melt',
    unit: '1/GPa',
    help: 'How much melt the pressure stores ahead of the nozzle; about 1 for plastics.',
  },
];

/** Values of the cooled print. */
export const mechanicalFields: readonly FieldSpec[] = [
  {
    key: 'mechanical.youngGPa',
    label: 'Stiffness (Young)',
    unit: 'GPa',
    help: 'Of the cooled print; decides the stress that cooling leaves.',
  },
  {
    key: 'mechanical.strengthMPa',
    label: 'Strength',
    unit: 'MPa',
    help: 'Stress at which the cooled print cracks.',
    step: 1,
  },
  {
    key: 'mechanical.expansionPerMK',
    label: 'Heat expansion',
    unit: 'µm/(m·K)',
    help: 'Shrinkage per metre and kelvin of cooling.',
    step: 1,
  },
  {
    key: 'mechanical.poisson',
    label: 'Poisson ratio',
    unit: 'ratio',
    help: 'Sideways strain per lengthwise strain, 0 to 0.499.',
    step: 0.01,
  },
  {
    key: 'mechanical.setC',
    label: 'Sets at',
    unit: '°C',
    help: 'Below this the print no longer yields, and stress builds up.',
    step: 1,
  },
];
