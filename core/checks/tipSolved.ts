/** Checks of the solved field between screw tip and nozzle. */

import { contractionProfile, type TipRegion } from '../flow/tip/region.ts';
import { solveTipFully, type TipFlow } from '../flow/tip/solveTip.ts';
import type { ViscosityLaw } from '../material/viscosityLaw.ts';
import { caseC } from './data/caseC.ts';
import { orThrow } from './orThrow.ts';
import { elementSource, stored, tipEntry } from './referenceRows.ts';
import { newtonian } from './textbookScrew.ts';
import type { Check } from './types.ts';

const blunt = tipEntry(caseC[9]);
const flat = tipEntry(caseC[13]);
const flatThin = tipEntry(caseC[14]);

const base = { stage: 'tip', measure: 'relative', kind: 'independent' } as const;
const flatHead = 'flat shoulder, 8 mm bore to 0.8 mm, Newtonian';
const bluntHead = '120° entry, 8 mm bore to 1.2 mm, Newtonian';
const thinHead = 'flat shoulder, 8 mm bore to 1.2 mm, n = 0.5';

const drop = (name: string, entry: 9 | 13 | 14, got: () => number, head: string): Check => ({
  ...base,
  id: `tip.drop${name}`,
  quantity: `Pressure from screw tip to orifice: ${head}, 10 mm³/s`,
  unit: 'MPa',
  expected: stored(caseC[entry].outputs.dp_total_Pa, 1e-6),
  limit: 5e-3,
  source: elementSource('C', entry),
  got: () => got() / 1e6,
});

const old = (name: string, entry: 9 | 13 | 14, got: () => number, head: string): Check => ({
  ...base,
  id: `tip.old${name}`,
  quantity: `Share of the melt between tip and orifice older than three mean times: ${head}`,
  unit: '%',
  expected: stored(caseC[entry].outputs.age_Pe1e5.vol_frac_age_gt_3, 100),
  limit: 0.8,
  measure: 'absolute',
  source: elementSource('C', entry),
  got: () => 100 * got(),
});

const eddy = (name: string, entry: 9 | 13 | 14, got: () => number, head: string): Check => ({
  ...base,
  id: `tip.eddy${name}`,
  quantity: `Reach of the eddy in the corner of the bore: ${head}`,
  unit: 'mm',
  expected: stored(caseC[entry].outputs.barrel_corner_eddy_length_m, 1e3),
  limit: 0.05,
  measure: 'absolute',
  source: elementSource('C', entry),
  got: () => 1e3 * got(),
});

const pressure = 'dp_total_Pa';
const share = 'age_Pe1e5.vol_frac_age_gt_3';
const reach = 'barrel_corner_eddy_length_m';

const plainPipe = { screwRadius: 0, annulusLength: 0, tip: { kind: 'flat' } } as const;

function solved(region: TipRegion, law: ViscosityLaw, flow: TipFlow, fineness = 1) {
  const result = orThrow(solveTipFully(region, law, flow, { withAge: false, fineness }));
  return result.field;
}

/** Reach of the corner eddy in front of a sudden narrowing of 4 to 1, over the wide radius. */
function eddyOfContraction(): number {
  const outer = [
    { z: 0, r: 4e-3 },
    { z: 12e-3, r: 4e-3 },
    { z: 12e-3, r: 1e-3 },
    { z: 14e-3, r: 1e-3 },
  ];
  return solved({ ...plainPipe, outer }, newtonian(1000), { volumeFlow: 5e-9 }, 1.8).eddies[0].lengthBefore / 4e-3;
}

/** Torque per length on a core of 9 mm turning at 5 rad/s in a bore of 14 mm: what 4 mm more of it take. */
function ringTorque(): number {
  const torque = (length: number): number => {
    const screw = { screwRadius: 4.5e-3, annulusLength: length, tip: { kind: 'flat' } } as const;
    const parts = { barrelRadius: 7e-3, straightLength: length + 3e-3, includedAngle: Math.PI / 2 };
    const outer = contractionProfile({ ...parts, orificeRadius: 1e-3, landLength: 1e-3 });
    return solved({ ...screw, outer }, newtonian(1000), { volumeFlow: 5e-9, turnRate: 5 }, 4).torque;
  };
  return (torque(8e-3) - torque(4e-3)) / 4e-3;
}

/** Pressure of a slender cone of power-law melt, 6 to 3 mm over 60 mm. */
function slenderCone(): number {
  const law: ViscosityLaw = { model: 'powerLaw', consistency: 16e3, index: 0.3, regularisingRate: 1e-4 };
  const outer = [
    { z: 0, r: 3e-3 },
    { z: 60e-3, r: 1.5e-3 },
  ];
  return solved({ ...plainPipe, outer }, law, { volumeFlow: 1e-5 }, 3).pressureDrop;
}

/** Checks of the field. */
export const solvedTipChecks: readonly Check[] = [
  drop('FlatShoulder', 13, () => flat(pressure), flatHead),
  old('FlatShoulder', 13, () => flat(share), flatHead),
  eddy('FlatShoulder', 13, () => flat(reach), flatHead),
  { ...drop('BluntEntry', 9, () => blunt(pressure), bluntHead), slow: true },
  { ...old('BluntEntry', 9, () => blunt(share), bluntHead), slow: true },
  { ...drop('FlatShoulderThinning', 14, () => flatThin(pressure), thinHead), slow: true },
  { ...old('FlatShoulderThinning', 14, () => flatThin(share), thinHead), slow: true },
  { ...eddy('FlatShoulderThinning', 14, () => flatThin(reach), thinHead), slow: true },
  {
    ...base,
    kind: 'exact',
    id: 'tip.meanAgeAtOrifice',
    quantity: `Mean age of the melt at the orifice over volume by flow: ${flatHead}`,
    unit: '',
    expected: 1,
    limit: 1e-3,
    source: 'Danckwerts 1953: mean residence time of any closed steady flow is volume over flow',
    got: () => flat('age_Pe1e5.outlet_age_over_VQ'),
  },
  {
    ...base,
    id: 'tip.eddyOfContraction',
    quantity: 'Reach of the corner eddy before a sudden narrowing of 4 to 1, over the wide radius',
    unit: '',
    expected: 0.325,
    limit: 0.02,
    measure: 'absolute',
    source: 'Independent general finite-element package: 0.325; literature about 0.34 (from memory)',
    got: eddyOfContraction,
  },
  {
    ...base,
    kind: 'exact',
    id: 'tip.torqueOfTurningCore',
    quantity: 'Torque per length of a 9 mm core turning in a 14 mm bore, 1000 Pa s, 5 rad/s',
    unit: 'N m/m',
    // 4 pi eta w a² b²/(b² - a²)
    expected: 2.16852,
    limit: 1e-3,
    source: 'Couette 1890: turning cylinders, closed form',
    got: ringTorque,
  },
  {
    ...base,
    kind: 'published',
    id: 'tip.solvedTaperedDie',
    quantity: 'Pressure through a tapered die, 6 to 3 mm over 60 mm, n = 0.3, 10 cm³/s, from the solved field',
    unit: 'MPa',
    expected: 8.96,
    limit: 0.01,
    source:
      'Imperial College London, ME4 Polymer Processing Technology, solutions of problem 3.1 (2008); walked to its narrow end',
    got: () => slenderCone() / 1e6,
  },
];
