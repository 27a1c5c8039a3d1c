/** Checks of the solved channel field against an independent general finite-element package, and of its cross flow. */

import type { FlatSection } from '../flow/field/channelSection.ts';
import { solveChannel } from '../flow/field/channelSolver.ts';
import { caseA } from './data/caseA.ts';
import { caseD } from './data/caseD.ts';
import { channelEntry, elementSource, stored } from './referenceRows.ts';
import { newtonian } from './textbookScrew.ts';
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

/** Flow that a pressure gradient presses through a section, times viscosity, over the gradient and a length⁴. */
function pressed(section: Partial<FlatSection>, unit: number): number {
  const plain: FlatSection = { kind: 'flat', depth: 1e-3, width: 2e-3, helixAngle: 0.3, rootFillet: 0, flankAngle: 0 };
  const { flowSlope } = solveChannel({ ...plain, ...section }, newtonian(1000), { barrelSpeed: 0.0125 }, 0);
  return (-flowSlope * 1000) / unit ** 4;
}

const side = 2e-3 / Math.sqrt(3);
const exact = { stage: 'channel', measure: 'relative', kind: 'exact', unit: '', limit: 5e-3 } as const;

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
    quantity: 'Flow without pressure of an 8 mm screw with a 4 mm root at 30 rpm, helix not unwrapped',
    unit: 'mm³/s',
    expected: stored(caseD[1].rows[2].Q_m3_per_s, 1e9),
    limit: 0.002,
    source: elementSource('D', 1),
    got: () => deep('flow at 0 of') * 1e9,
  },
  {
    ...base,
    slow: true,
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
    slow: true,
    id: 'channel.flowOfThinningHelix',
    quantity: 'Flow at half the closed gradient of an 8 mm screw with a 4.5 mm root at 30 rpm, n = 0.5',
    unit: 'mm³/s',
    expected: stored(caseD[3].rows[1].Q_m3_per_s, 1e9),
    limit: 0.002,
    source: elementSource('D', 3),
    got: () => thinningHelix('flow at 0.5') * 1e9,
  },
  {
    ...exact,
    id: 'channel.halfPipe',
    quantity: 'Pressure flow through a channel with a full round root, over G R⁴/η',
    // pi/8 - 1/pi
    expected: 0.0743892,
    source: 'Half of a round bar in torsion by the membrane analogy, Timoshenko & Goodier (from memory)',
    got: () => pressed({ rootFillet: 1e-3 }, 1e-3),
  },
  {
    ...exact,
    id: 'channel.triangularDuct',
    quantity: 'Pressure flow through a channel whose flanks meet at 60°, over G a⁴/η',
    // sqrt(3)/320
    expected: 0.00541266,
    source: 'Equilateral duct, √3 G a⁴/(320 η), White, Viscous Fluid Flow (from memory)',
    got: () => pressed({ width: side + 1e-7, flankAngle: Math.PI / 6 }, side),
  },
];
