import { bench, describe } from 'vitest';
import type { ChannelSection } from '../../core/flow/field/channelSection.ts';
import { channelCurve, solveChannel } from '../../core/flow/field/channelSolver.ts';
import { streamGrid } from '../../core/flow/field/orbitGrid.ts';
import { prepareChannel } from '../../core/flow/field/prepared.ts';
import { channelOrbits } from '../../core/residence/orbits.ts';
import { orbitTimes } from '../../core/residence/orbitTimes.ts';

/** Must 1.2 s, aim 250 ms per curve on one core; preparation of the section is included. */
const flat: ChannelSection = {
  kind: 'flat',
  depth: 2e-3,
  width: 12e-3,
  helixAngle: 0.308,
  rootFillet: 0,
  flankAngle: 0,
};
const helical: ChannelSection = {
  kind: 'helical',
  barrelRadius: 7e-3,
  rootRadius: 4.5e-3,
  lead: 14e-3,
  starts: 1,
  flightAxialWidth: 1.6e-3,
  flankAngle: 0.1,
  rootFillet: 8e-4,
};
const law = { model: 'powerLaw', consistency: 1e4, index: 0.4, regularisingRate: 1e-2 } as const;
const motion = { barrelSpeed: 0.0125 };
const gradients = (closed: number) => [0, 0.25, 0.4, 0.5, 0.75, 1].map((part) => part * closed);

describe('channel curve, 6 gradients, power law n = 0.4', () => {
  bench('straight, square', () => {
    channelCurve(flat, law, motion, gradients(3.4e7));
  });
  bench('helical, filleted, leaning flanks', () => {
    channelCurve(helical, law, motion, gradients(2.5e7));
  });
  bench('straight, Newtonian', () => {
    channelCurve(flat, { model: 'newtonian', viscosity: 1000 }, motion, gradients(2e7));
  });
});

describe('parts', () => {
  bench('prepare a filleted helical section', () => {
    prepareChannel(helical);
  });
  const state = solveChannel(helical, law, motion, 1e7);
  bench('orbits and residence times of a solved channel', () => {
    orbitTimes(channelOrbits(streamGrid(state, 0.01)));
  });
});
