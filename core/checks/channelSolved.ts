/** Checks of the solved channel field against an independent general finite-element package, and of its cross flow. */

import { caseA } from './data/caseA.ts';
import { caseD } from './data/caseD.ts';
import { channelEntry, elementSource, stored } from './referenceRows.ts';
import type { Check } from './types.ts';

const thinning = channelEntry('A', caseA[8]);
const square = channelEntry('A', caseA[17]);
const deep = channelEntry('D', caseD[1]);
const thinningHelix = channelEntry('D', caseD[3]);
const [, half] = caseA[8].rows;
/** speed across the square channel times its depth, m²/s: unit of its stream function */
const crossUnit = caseA[17].inputs.V_bx * caseA[17].inputs.H_m;

const base = { stage: 'channel', measure: 'relative', kind: 'independent' } as const;
const thin = 'of a thinning melt (n = 0.5), channel 0.3 as deep as wide';

/** Checks of solved sections. */
export const solvedChannelChecks: readonly Check[] = [
  {
    ...base,
    id: 'channel.closedGradientThinning',
    quantity: `Pressure gradient at no flow ${thin}`,
    unit: 'MPa/m',
    expected: stored(caseA[8].rows[0].G_Pa_per_m, 1e-6),
    limit: 0.002,
    source: elementSource('A', 8),
    got: () => thinning('closed-discharge gradient') / 1e6,
  },
  {
    ...base,
    id: 'channel.flowAtHalfGradientThinning',
    quantity: `Flow at half the closed gradient ${thin}`,
    unit: 'mm³/s',
    expected: stored(half.Q_m3_per_s, 1e9),
    limit: 0.002,
    source: elementSource('A', 8),
    got: () => thinning('flow at 0.5') * 1e9,
  },
  {
    ...base,
    id: 'channel.crossStreamThinning',
    quantity: `Circulation across the channel ${thin}`,
    unit: 'mm²/s',
    expected: stored(half.stream_extremum_abs_m2_per_s, 1e6),
    limit: 0.002,
    source: elementSource('A', 8),
    got: () => thinning('stream function extremum at 0.5') * 1e6,
  },
  {
    ...base,
    id: 'channel.heatThinning',
    quantity: `Heat made per length ${thin}`,
    unit: 'W/m',
    expected: stored(half.total_dissipation_W_per_m ?? Number.NaN),
    limit: 0.01,
    source: elementSource('A', 8),
    got: () => thinning('dissipation, W/m, at 0.5'),
  },
  {
    ...base,
    id: 'channel.barrelStressThinning',
    quantity: `Shear stress on the barrel, mid-channel, ${thin}`,
    unit: 'kPa',
    expected: stored(half.lid_shear_down_mid_Pa, 1e-3),
    limit: 0.01,
    source: elementSource('A', 8),
    got: () => thinning('barrel stress down mid-channel, Pa, at 0.5') / 1e3,
  },
  {
    ...base,
    id: 'channel.closedGradientSquare',
    quantity: 'Pressure gradient at no flow of a Newtonian melt in a square channel',
    unit: 'MPa/m',
    expected: stored(caseA[17].rows[0].G_Pa_per_m, 1e-6),
    limit: 0.002,
    source: elementSource('A', 17),
    got: () => square('closed-discharge gradient') / 1e6,
  },
  {
    ...base,
    kind: 'published',
    id: 'channel.circulationOfSquareCavity',
    quantity: 'Circulation of creeping flow in a square cavity under a moving lid, over lid speed and depth',
    unit: '',
    expected: 0.10007,
    limit: 1e-3,
    source:
      'Gallery page of a general-purpose multiphysics code, “Moffatt eddies”: stream function −1.0007e−1 at the main vortex',
    got: () => square('stream function extremum at 0') / crossUnit,
  },
  {
    ...base,
    id: 'channel.closedGradientOfDeepHelix',
    quantity: 'Pressure gradient at no flow of an 8 mm screw with a 4 mm root, Newtonian, helix not unwrapped',
    unit: 'MPa/m',
    expected: stored(caseD[1].rows[0].dpdz_axial_Pa_per_m, 1e-6),
    limit: 0.002,
    source: elementSource('D', 1),
    got: () => deep('closed-discharge gradient') / 1e6,
  },
  {
    ...base,
    id: 'channel.openFlowOfDeepHelix',
    quantity: 'Flow without pressure of the same 8 mm screw at 30 rpm',
    unit: 'mm³/s',
    expected: stored(caseD[1].rows[2].Q_m3_per_s, 1e9),
    limit: 0.002,
    source: elementSource('D', 1),
    got: () => deep('flow at 0 of') * 1e9,
  },
  {
    ...base,
    id: 'channel.closedGradientOfThinningHelix',
    quantity: 'Pressure gradient at no flow of an 8 mm screw with a 4.5 mm root, n = 0.5, helix not unwrapped',
    unit: 'MPa/m',
    expected: stored(caseD[3].rows[0].dpdz_axial_Pa_per_m, 1e-6),
    limit: 0.002,
    source: elementSource('D', 3),
    got: () => thinningHelix('closed-discharge gradient') / 1e6,
  },
  {
    ...base,
    id: 'channel.flowOfThinningHelix',
    quantity: 'Flow at half the closed gradient of the same screw',
    unit: 'mm³/s',
    expected: stored(caseD[3].rows[1].Q_m3_per_s, 1e9),
    limit: 0.002,
    source: elementSource('D', 3),
    got: () => thinningHelix('flow at 0.5') * 1e9,
  },
];
