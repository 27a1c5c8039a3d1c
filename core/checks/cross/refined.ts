/**
 * The meshes that the prediction uses against ones twice as fine. Each side is solved anew, so that what is compared is
 * the mesh alone; the limits are the accuracies stated for the default meshes.
 */

import type { FlatSection, HelicalSection } from '../../flow/field/channelSection.ts';
import { solveChannel, solveChannelForFlow } from '../../flow/field/channelSolver.ts';
import { contractionProfile, type TipRegion } from '../../flow/tip/region.ts';
import { solveTip, type TipField } from '../../flow/tip/solveTip.ts';
import type { ViscosityLaw } from '../../material/viscosityLaw.ts';
import { orThrow } from '../orThrow.ts';
import { once } from '../referenceRows.ts';
import type { Check } from '../types.ts';

/** Invented melt, screws and head. */
const law: ViscosityLaw = { model: 'powerLaw', consistency: 5e3, index: 0.4, regularisingRate: 1e-3 };
const motion = { barrelSpeed: 0.03 };
const straight: FlatSection = {
  kind: 'flat',
  depth: 2e-3,
  width: 7e-3,
  helixAngle: 0.31,
  rootFillet: 0.5e-3,
  flankAngle: 0.1,
};
const helix: HelicalSection = {
  kind: 'helical',
  barrelRadius: 7e-3,
  rootRadius: 4.8e-3,
  lead: 14e-3,
  starts: 1,
  flightAxialWidth: 1.6e-3,
  flankAngle: 0.1,
  rootFillet: 0.5e-3,
};
const region: TipRegion = {
  screwRadius: 2.5e-3,
  annulusLength: 2e-3,
  tip: { kind: 'cone', includedAngle: Math.PI / 2 },
  outer: contractionProfile({
    barrelRadius: 4e-3,
    straightLength: 6e-3,
    includedAngle: (120 * Math.PI) / 180,
    orificeRadius: 0.6e-3,
    landLength: 1.2e-3,
  }),
};

/** Value on the default mesh over that on one with all edges halved. */
const refining = (value: (coarseness: number) => number) => value(1) / value(0.5);

const flow = (section: FlatSection | HelicalSection, gradient: number, coarseness: number) =>
  solveChannel(section, law, motion, gradient, { coarseness, tolerance: 1e-5 });

const closed = (section: FlatSection | HelicalSection, coarseness: number) =>
  solveChannelForFlow(section, law, motion, 0, { coarseness, tolerance: 1e-5 }).gradient;

/** Half the gradient that stops the flow, the same for both meshes. */
const half = once(() => 0.5 * closed(straight, 1));
const halfHelix = once(() => 0.5 * closed(helix, 1));

function head(fineness: number): TipField {
  return orThrow(solveTip(region, law, { volumeFlow: 10e-9 }, { fineness }));
}

const plain = once(() => head(1));
const fine = once(() => head(0.5));

const base = {
  unit: '',
  expected: 1,
  measure: 'relative',
  kind: 'commonPractice',
  slow: true,
  // not independent: the finer mesh shares every formula, it can only show that the mesh does not matter
  source: 'Halving the mesh: the same equations on a mesh with all edges halved, by this program itself',
} as const;
const channel = { ...base, stage: 'channel' } as const;
const tip = { ...base, stage: 'tip' } as const;
const onFlat = 'straight channel, 2 by 7 mm, n = 0.4, fillets of 0.5 mm';
const onHelix = 'helical channel of a 14 mm screw, n = 0.4, fillets of 0.5 mm';
const onHead = 'cone of 90° in a 120° entry, 8 mm bore to 1.2 mm, n = 0.4';

/** Checks of the channel's mesh. */
export const refinedChannelChecks: readonly Check[] = [
  {
    ...channel,
    id: 'channel.refinedFlow',
    quantity: `Flow at half the closed gradient, default mesh over twice as fine: ${onFlat}`,
    limit: 3e-3,
    got: () => refining((mesh) => flow(straight, half(), mesh).flowRate),
  },
  {
    ...channel,
    id: 'channel.refinedClosedGradient',
    quantity: `Gradient that stops the flow, default mesh over twice as fine: ${onFlat}`,
    limit: 3e-3,
    got: () => refining((mesh) => closed(straight, mesh)),
  },
  {
    ...channel,
    id: 'channel.refinedHeat',
    quantity: `Heat made per length, default mesh over twice as fine: ${onFlat}`,
    limit: 5e-3,
    got: () => refining((mesh) => flow(straight, half(), mesh).dissipation),
  },
  {
    ...channel,
    id: 'channel.refinedFlowOfHelix',
    quantity: `Flow at half the closed gradient, default mesh over twice as fine: ${onHelix}`,
    limit: 3e-3,
    got: () => refining((mesh) => flow(helix, halfHelix(), mesh).flowRate),
  },
];

/** Checks of the tip's mesh. */
export const refinedTipChecks: readonly Check[] = [
  {
    ...tip,
    id: 'tip.refinedDrop',
    quantity: `Pressure from screw tip to orifice, default mesh over twice as fine: ${onHead}`,
    limit: 5e-3,
    got: () => plain().pressureDrop / fine().pressureDrop,
  },
  {
    ...tip,
    id: 'tip.refinedOld',
    quantity: `Share older than three mean times, default mesh over twice as fine: ${onHead}`,
    limit: 0.05,
    got: () => (plain().statistics?.fractionOver3 ?? Number.NaN) / (fine().statistics?.fractionOver3 ?? Number.NaN),
  },
];
