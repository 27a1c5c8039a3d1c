/**
 * Streamline residence times against particles tracked by force through the same solved field.
 *
 * Measured with 610 particles: shortest time within 0.2 %, F at 1, 1.5 and 2 mean times within 0.006; four times the
 * particles move F by 0.003 at most. Where F rises steeply (three quarters of the mean time) the two ways agree to 0.003;
 * on a grid four times coarser they were up to 0.026 apart.
 */

import type { ChannelSection, FlatSection, HelicalSection } from '../../flow/field/channelSection.ts';
import { type ChannelState, solveChannel, solveChannelForFlow } from '../../flow/field/channelSolver.ts';
import { streamGrid } from '../../flow/field/orbitGrid.ts';
import type { ViscosityLaw } from '../../material/viscosityLaw.ts';
import { orbitSpacing } from '../../path/channelNode.ts';
import { channelOrbits } from '../../residence/orbits.ts';
import { cumulativeAt, type OrbitTimes, orbitTimes } from '../../residence/orbitTimes.ts';
import { once } from '../referenceRows.ts';
import type { Check } from '../types.ts';
import { type Track, trackedMean, trackedMinimum, trackedShare, trackParticles } from './particles.ts';
import { solvedFlow } from './solvedFlow.ts';

/** Invented melt and screws, between the stored cases. */
const law: ViscosityLaw = { model: 'powerLaw', consistency: 5e3, index: 0.5, regularisingRate: 1e-4 };
const motion = { barrelSpeed: 0.03 };
const straight: FlatSection = {
  kind: 'flat',
  depth: 2e-3,
  width: 7e-3,
  helixAngle: 0.31,
  rootFillet: 0,
  flankAngle: 0,
};
const helix: HelicalSection = {
  kind: 'helical',
  barrelRadius: 7e-3,
  rootRadius: 4.8e-3,
  lead: 14e-3,
  starts: 1,
  flightAxialWidth: 1.6e-3,
  flankAngle: 0,
  rootFillet: 0,
};

/** The same field both ways. */
interface Both {
  readonly tracks: readonly Track[];
  readonly times: OrbitTimes;
}

/** Mesh of the prediction. */
const MESH = { coarseness: 0.75 };

/** @param share of the pressure gradient that stops the flow */
function solved(section: ChannelSection, share: number): ChannelState {
  const closed = share > 0 ? solveChannelForFlow(section, law, motion, 0, MESH).gradient : 0;
  return solveChannel(section, law, motion, share * closed, MESH);
}

const both = (section: ChannelSection, share: number) =>
  once((): Both => {
    const state = solved(section, share);
    const times = orbitTimes(channelOrbits(streamGrid(state, orbitSpacing)));
    return { tracks: trackParticles(solvedFlow(state)), times };
  });

const open = both(straight, 0);
const pressed = both(straight, 0.5);
const wound = both(helix, 0.5);

const base = {
  stage: 'residence',
  unit: '',
  expected: 1,
  measure: 'relative',
  kind: 'independent',
  slow: true,
  source:
    'Own particle tracking in the solved velocity: 610 particles, Runge–Kutta of fourth order, no stream function',
} as const;

const name = {
  Open: 'straight channel, 2 by 7 mm, n = 0.5, no pressure',
  Pressed: 'straight channel, 2 by 7 mm, n = 0.5, half the gradient that stops it',
  Helix: 'helical channel of a 14 mm screw, 2.2 mm deep, n = 0.5, half the gradient that stops it',
} as const;

const first = (id: keyof typeof name, run: () => Both): Check => ({
  ...base,
  id: `residence.trackedFirst${id}`,
  quantity: `Time of the first melt by streamlines over that of the fastest particle: ${name[id]}`,
  limit: 5e-3,
  got: () => run().times.minimum / trackedMinimum(run().tracks),
});

const mean = (id: keyof typeof name, run: () => Both): Check => ({
  ...base,
  id: `residence.trackedMean${id}`,
  quantity: `Mean time of tracked particles over volume by flow: ${name[id]}`,
  limit: 3e-3,
  got: () => trackedMean(run().tracks),
});

const left = (id: keyof typeof name, at: string, multiple: number, run: () => Both): Check => ({
  ...base,
  id: `residence.tracked${at}${id}`,
  quantity: `Share left by ${multiple} mean times by streamlines over that of particles: ${name[id]}`,
  limit: 0.01,
  got: () => cumulativeAt(run().times, multiple) / trackedShare(run().tracks, multiple),
});

/** Checks of residence times by tracked particles. */
export const trackedChecks: readonly Check[] = [
  first('Open', open),
  mean('Open', open),
  left('Open', 'ByMean', 1, open),
  left('Open', 'ByDouble', 2, open),
  first('Pressed', pressed),
  mean('Pressed', pressed),
  left('Pressed', 'ByMean', 1, pressed),
  left('Pressed', 'ByDouble', 2, pressed),
  left('Pressed', 'Steep', 0.75, pressed),
  first('Helix', wound),
  mean('Helix', wound),
  left('Helix', 'ByMean', 1, wound),
  left('Helix', 'ByHalfAgain', 1.5, wound),
];
