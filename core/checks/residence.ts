/** Checks of residence times: closed forms as the first figures take them, orbits of solved sections, solved pipes. */

import { solveTipFully } from '../flow/tip/solveTip.ts';
import { channelAtoms, pipeAtoms } from '../residence/channel.ts';
import { joinResidence } from '../residence/combine.ts';
import { timeToOldShare } from '../residence/washout.ts';
import { caseB } from './data/caseB.ts';
import { curveOf, leftBy } from './leftBy.ts';
import { orThrow } from './orThrow.ts';
import { channelEntry, elementSource, once, stored } from './referenceRows.ts';
import { newtonian } from './textbookScrew.ts';
import type { Check } from './types.ts';

const shallow = channelEntry('B', caseB[0]);
const thinning = channelEntry('B', caseB[12]);
const plain = channelEntry('B', caseB[13]);
const channel = once(() => joinResidence([channelAtoms(1)]));
const pipe = once(() => joinResidence([pipeAtoms(1, 1)]));

/** Share of the outflow of a solved pipe that is younger than its mean time. */
function youngerInSolvedPipe(): number {
  const outer = [
    { z: 0, r: 2e-3 },
    { z: 20e-3, r: 2e-3 },
  ];
  const region = { screwRadius: 0, annulusLength: 0, tip: { kind: 'flat' }, outer } as const;
  const solved = orThrow(solveTipFully(region, newtonian(1000), { volumeFlow: 5e-9 }, { peclet: 1e6, fineness: 1.2 }));
  const { residence = [], statistics } = solved.field;
  return leftBy(curveOf(residence), statistics?.meanTime ?? Number.NaN);
}

/** Everything takes 2 s. */
const plug = { time: Float64Array.of(2), share: Float64Array.of(1), shortest: 2 };

const closedForm = { stage: 'residence', measure: 'relative', kind: 'exact' } as const;
const solved = { stage: 'residence', measure: 'absolute', kind: 'independent' } as const;

const pintoTadmor = 'Pinto & Tadmor, Polym. Eng. Sci. 10 (1970) 279, closed form (from memory, derived again)';
const levenspiel = 'O. Levenspiel, Chemical Reaction Engineering, 3rd ed., pp. 343–344: F = 1 − 1/(4 θ²)';
const wideScrew = 'in a wide screw channel, Newtonian, over the mean';
const rounded = 'n = 0.5, channel 0.6 as deep as wide, root fillets of half the depth';
const sharp = 'Newtonian, channel 0.6 as deep as wide, sharp corners';

const [halfOpen, open] = caseB[13].rows;
const [thinOpen] = caseB[12].rows;
const [shallowOpen] = caseB[0].rows;

/** Closed forms. */
const closedForms: readonly Check[] = [
  {
    ...closedForm,
    id: 'residence.firstMeltOfChannel',
    quantity: `Time of the first melt ${wideScrew}`,
    unit: '',
    expected: 0.75,
    limit: 1e-6,
    source: pintoTadmor,
    got: () => channel().min,
  },
  {
    ...closedForm,
    id: 'residence.halfTimeOfChannel',
    quantity: `Time by which half has left ${wideScrew}`,
    unit: '',
    expected: 0.82246,
    limit: 1e-3,
    source: pintoTadmor,
    got: () => channel().t50,
  },
  {
    ...closedForm,
    id: 'residence.leftByMeanOfChannel',
    quantity: 'Share that has left a wide screw channel by its mean time, Newtonian',
    unit: '%',
    expected: 76.303,
    limit: 2e-3,
    source: pintoTadmor,
    got: () => 100 * leftBy(channel(), 1),
  },
  {
    ...closedForm,
    id: 'residence.oldTailOfChannel',
    quantity: `Time by which all but 1 % has left ${wideScrew}`,
    unit: '',
    expected: 3.31717,
    limit: 0.01,
    source: `${pintoTadmor}; the often quoted 5 % beyond twice the mean does not follow from it`,
    got: () => timeToOldShare(channel(), 0.01) ?? Number.NaN,
  },
  {
    ...closedForm,
    id: 'residence.leftByMeanOfPipe',
    quantity: 'Share that has left a pipe by its mean time, Newtonian',
    unit: '%',
    expected: 75,
    limit: 5e-3,
    source: levenspiel,
    got: () => 100 * leftBy(pipe(), 1),
  },
  {
    ...closedForm,
    id: 'residence.oldTailOfPipe',
    quantity: 'Time by which all but 1 % has left a pipe, Newtonian, over the mean',
    unit: '',
    expected: 5,
    limit: 0.02,
    source: levenspiel,
    got: () => timeToOldShare(pipe(), 0.01) ?? Number.NaN,
  },
  {
    ...closedForm,
    id: 'residence.firstMeltOfPipe',
    quantity: 'Time of the first melt of a pipe, n = 0.3, over the mean',
    unit: '',
    expected: 0.684211,
    limit: 1e-5,
    source: 'Mean over greatest speed of a power-law melt, (n + 1)/(3n + 1), derived',
    got: () => joinResidence([pipeAtoms(1, 0.3)]).min,
  },
  {
    ...closedForm,
    id: 'residence.meanOfParts',
    quantity: 'Mean time through a channel of 40 s, a pipe of 6 s and plug flow of 2 s, one after the other',
    unit: 's',
    expected: 48,
    limit: 1e-6,
    source: 'Danckwerts 1953: means of parts in series add up',
    got: () => joinResidence([channelAtoms(40), pipeAtoms(6, 0.5), plug]).mean,
  },
  {
    ...closedForm,
    id: 'residence.slowMeltOfParts',
    quantity: 'Time by which 95 % has left a channel of 40 s and a pipe of 6 s behind it, Newtonian',
    unit: 's',
    expected: 77.2187,
    limit: 0.01,
    source: 'Both closed forms joined by an integral over 400 000 shares in another language',
    got: () => joinResidence([channelAtoms(40), pipeAtoms(6, 1)]).t95,
  },
  {
    ...closedForm,
    slow: true,
    id: 'residence.solvedPipe',
    quantity: 'Share that has left a pipe by its mean time, from the solved field',
    unit: '%',
    expected: 75,
    limit: 0.015,
    source: levenspiel,
    got: () => 100 * youngerInSolvedPipe(),
  },
];

/** Orbits of solved sections. */
const orbitChecks: readonly Check[] = [
  {
    ...solved,
    id: 'residence.firstMeltOfDeepChannel',
    quantity: `Time of the first melt over the mean: ${sharp}`,
    unit: '',
    expected: stored(open.t_min_over_mean),
    limit: 0.01,
    source: elementSource('B', 13),
    got: () => plain('shortest dwell at 0 of'),
  },
  {
    ...solved,
    id: 'residence.firstMeltAgainstPressure',
    quantity: `Time of the first melt over the mean at half the closed gradient: ${sharp}`,
    unit: '',
    expected: stored(halfOpen.t_min_over_mean),
    limit: 0.01,
    source: elementSource('B', 13),
    got: () => plain('shortest dwell at 0.5'),
  },
  {
    ...solved,
    id: 'residence.leftByHalfAgain',
    quantity: `Share that has left by one and a half mean times: ${sharp}`,
    unit: '',
    expected: stored(open.F['1.5']),
    limit: 0.015,
    source: elementSource('B', 13),
    got: () => plain('F(1.5) at 0 of'),
  },
  {
    ...solved,
    id: 'residence.oldMeltOfDeepChannel',
    quantity: `Share of the section where melt dwells over three mean times: ${sharp}`,
    unit: '',
    expected: stored(open.area_frac_dwell_gt['3']),
    limit: 0.015,
    source: elementSource('B', 13),
    got: () => plain('area older than 3 means at 0 of'),
  },
  {
    ...solved,
    slow: true,
    id: 'residence.leftByMeanThinning',
    quantity: `Share that has left by the mean time: ${rounded}`,
    unit: '',
    expected: stored(thinOpen.F['1.0']),
    limit: 0.015,
    source: elementSource('B', 12),
    got: () => thinning('F(1.0) at 0 of'),
  },
  {
    ...solved,
    slow: true,
    id: 'residence.oldMeltThinning',
    quantity: `Share of the section where melt dwells over three mean times: ${rounded}`,
    unit: '',
    expected: stored(thinOpen.area_frac_dwell_gt['3']),
    limit: 0.015,
    source: elementSource('B', 12),
    got: () => thinning('area older than 3 means at 0 of'),
  },
  {
    ...solved,
    slow: true,
    id: 'residence.centreOfShallowChannel',
    quantity: 'Time at the middle of the circulation over the mean, Newtonian, channel 0.02 as deep as wide',
    unit: '',
    expected: stored(shallowOpen.t_center_over_mean),
    limit: 0.01,
    source: elementSource('B', 0),
    got: () => shallow('dwell at the vortex centre'),
  },
];

/** All checks of residence times. */
export const residenceChecks: readonly Check[] = [...closedForms, ...orbitChecks];
