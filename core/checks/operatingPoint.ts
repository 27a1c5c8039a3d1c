/** Checks of the working point: where the screw's curve meets the die's, and what it costs. */

import { createReach, type Reach, type ReachShape, solveReach } from '../flow/reach.ts';
import type { ViscosityLaw } from '../material/viscosityLaw.ts';
import { lawStep, leastTurning, nodeAt } from '../path/channelNode.ts';
import { channelShape } from '../path/channelShape.ts';
import { createFieldCache } from '../path/fieldCache.ts';
import { lawFamily } from '../path/lawFamily.ts';
import { evaluateFlow } from '../prediction/flowState.ts';
import type { Machine } from '../prediction/machine.ts';
import { answer85 } from './answers.ts';
import { caseD } from './data/caseD.ts';
import { elementSource, once, stored } from './referenceRows.ts';
import { balanceOf, textbookMachine } from './textbookMachine.ts';
import { newtonian, powerLaw, type TextbookScrew, textbookReach } from './textbookScrew.ts';
import type { Check } from './types.ts';

const degrees = Math.PI / 180;
const screw75 = { diameter: 0.075, depth: 0.006, helix: 20 * degrees };
const screw85 = { diameter: 0.085, depth: 0.009, helix: 18 * degrees };
const screw30 = { diameter: 0.03, depth: 0.0025, helix: 17.7 * degrees };

/** Flow and head pressure of a machine at a speed. */
function point(machine: Machine, screwSpeed: number) {
  const { volumeFlow, memory } = balanceOf(machine, screwSpeed);
  return { volumeFlow, state: evaluateFlow(machine, screwSpeed, volumeFlow, memory.dissipation) };
}

const uniform = (screw: TextbookScrew) => () => textbookReach(screw);

const groover = once(() => {
  const die = { radius: 0.00325, length: 0.02 };
  const machine = textbookMachine({ bore: 0.075, length: 1.9, law: newtonian(100), reachAt: uniform(screw75), die });
  return point(machine, 1);
});

/** A screw at 60 rpm and 100 Pa s with a die of 6.5 mm that is as long as takes a pressure at a flow. */
function against(screw: TextbookScrew, length: number, pressure: number, flow: number) {
  const radius = 0.00325;
  const die = { radius, length: (pressure * Math.PI * radius ** 4) / (8 * 100 * flow) };
  const { diameter: bore } = screw;
  return point(textbookMachine({ bore, length, law: newtonian(100), reachAt: uniform(screw), die }), 1);
}

const loaded = once(() => {
  const { volumeFlow, state } = against(screw75, 1.9, 7e6, 35.25e-6);
  const [any] = state.march.flows.filter((flow) => flow !== null);
  return { volumeFlow, gradient: any.gradient, power: any.channelPower * 1.9 };
});

const crawford = once(() => {
  const die = { radius: 0.0025, length: 0.004 };
  const machine = textbookMachine({ bore: 0.03, length: 1, law: newtonian(420), reachAt: uniform(screw30), die });
  return point(machine, 13.25 / 60);
});

/** A channel that tapers from 15 to 2 mm; the source states its flight of 8 mm normal to it. */
const tapered = once(() => {
  const helix = 20 * degrees;
  const flight = 0.008 / Math.cos(helix);
  const reachAt = (share: number) => textbookReach({ diameter: 0.08, depth: 0.015 - 0.013 * share, helix, flight });
  // a die constant of 5e-7 m³: pi R⁴/(8 L)
  const die = { radius: 0.02, length: (Math.PI * 0.02 ** 4) / (8 * 5e-7) };
  const machine = textbookMachine({ bore: 0.08, length: 1.92, law: newtonian(120_000), reachAt, die });
  return point(machine, 1);
});

/** The 8 mm screw of case D, 50 mm of it, as a section in the terms of the solved path. */
function smallSection(floorRadius: number) {
  const flight = { lead: 0.008, starts: 1, pitch: 0.008, flightRadius: 0.004, halfLand: 5e-4, flank: 0 };
  return channelShape({ ...flight, floorRadius, fillet: 0, filletHeight: 0, halfFoot: 5e-4, halfBase: 5e-4 }, 0.004);
}

/** That section in metres as a reach. */
function smallReach(floorRadius: number): Reach {
  const { reach } = smallSection(floorRadius);
  const scaled = Object.entries(reach).map(([name, value]) => [name, lengths.has(name) ? 0.004 * value : value]);
  return createReach(Object.fromEntries(scaled) as ReachShape);
}

const lengths = new Set(['rootRadius', 'barrelRadius', 'depth', 'widthBarrel', 'widthMean', 'land', 'clearance']);

const smallPoint = (reach: Reach, law: ViscosityLaw, die: { radius: number; length: number }) =>
  point(textbookMachine({ bore: 0.008, length: 0.05, law, reachAt: () => reach, die }), 0.5);

const [, halfNewtonian] = caseD[1].rows;
const [, halfThinning] = caseD[3].rows;

const newtonianSmall = once(() => {
  const radius = 1e-3;
  const drop = 0.05 * halfNewtonian.dpdz_axial_Pa_per_m;
  const length = (drop * Math.PI * radius ** 4) / (8 * 1000 * halfNewtonian.Q_m3_per_s);
  return smallPoint(smallReach(0.002), newtonian(1000), { radius, length });
});

/** Place of pure power laws on the path's grid of turning rates. */
const pure = Math.round(Math.log(leastTurning) / lawStep);

/** With the factors of the solved section at half the closed gradient, as the prediction takes them. */
const thinningSmall = once(() => {
  const radius = 1e-3;
  const law = powerLaw(1e4, 0.5);
  const drop = 0.05 * halfThinning.dpdz_axial_Pa_per_m;
  const wall = 1e4 * ((5 * halfThinning.Q_m3_per_s) / (Math.PI * radius ** 3)) ** 0.5;
  const request = { shape: smallSection(0.00225), family: lawFamily(law), law: pure, gradient: 2 };
  const { drag, pressure } = nodeAt(createFieldCache(), request).factors;
  const reach = { ...smallReach(0.00225), dragFactor: drag, pressureFactor: pressure };
  return smallPoint(reach, law, { radius, length: (drop * radius) / (2 * wall) });
});

/** Pump work over power of a nearly straight channel that gives up a third of its open flow. */
function bestEfficiency(): number {
  const reach = textbookReach({ ...screw75, helix: 0.01 * degrees });
  const flow = (solveReach(reach, newtonian(100), 1, 0).openFlow * 2) / 3;
  const { gradient, channelPower } = solveReach(reach, newtonian(100), 1, flow);
  return (gradient * flow) / channelPower;
}

const base = { stage: 'operatingPoint', measure: 'relative', limit: 2e-3 } as const;
const example132 =
  'M. P. Groover, Fundamentals of Modern Manufacturing, ch. 13, example 13.2; printed answer remembered, computed again';
const listing =
  'Code listing headed “Example 6.5” (believed Advani & Sozer, Process Modeling in Composites Manufacturing): inputs and equations seen, answer worked out from its closed form';
const powerSource =
  'Textbook balance η W V² Z/H (cos² + 4 sin² + 3 cos² Qp/Qd) (from memory, derived again; an integral of the shear heat agrees)';

/** All checks of the working point. */
export const operatingPointChecks: readonly Check[] = [
  {
    ...base,
    kind: 'fromMemory',
    id: 'operatingPoint.pressureOf75mmScrew',
    quantity: 'Pressure at which a 75 mm screw and a die of 6.5 x 20 mm balance, 60 rpm, 100 Pa s',
    unit: 'MPa',
    expected: 2.184,
    source: example132,
    got: () => groover().state.headPressure / 1e6,
  },
  {
    ...base,
    kind: 'fromMemory',
    id: 'operatingPoint.flowOf75mmScrew',
    quantity: 'Flow of a 75 mm screw with a die of 6.5 x 20 mm, 60 rpm, 100 Pa s',
    unit: 'cm³/s',
    expected: 47.82,
    source: example132,
    got: () => groover().volumeFlow * 1e6,
  },
  {
    ...base,
    kind: 'published',
    limit: 0.01,
    id: 'operatingPoint.flowOf85mmScrew',
    quantity: 'Flow of an 85 mm screw, 2 m long, 60 rpm, 100 Pa s, with a die that takes 11 MPa',
    unit: 'cm³/s',
    expected: 9.1,
    source: `${answer85}; die length chosen to take 11 MPa at that flow`,
    got: () => against(screw85, 2, 11e6, 9.1e-6).volumeFlow * 1e6,
  },
  {
    ...base,
    kind: 'fromMemory',
    limit: 5e-3,
    id: 'operatingPoint.flowOf30mmScrew',
    quantity: 'Flow of a 30 mm screw with a die of 5 x 4 mm at 13.25 rpm, nylon, 420 Pa s',
    unit: 'cm³/s',
    expected: 0.7083,
    source:
      'R. J. Crawford, Plastics Engineering, example 4.2: rod of 5 mm drawn at 1.5 m/min; printed answer about 13 rpm remembered, computed again',
    got: () => crawford().volumeFlow * 1e6,
  },
  {
    ...base,
    kind: 'exact',
    limit: 3e-3,
    id: 'operatingPoint.flowOfTaperedScrew',
    quantity: 'Flow of an 80 mm screw that tapers from 15 to 2 mm, with its die, 120 kPa s',
    unit: 'cm³/s',
    expected: 32.4831,
    source: listing,
    got: () => tapered().volumeFlow * 1e6,
  },
  {
    ...base,
    kind: 'exact',
    limit: 3e-3,
    id: 'operatingPoint.pressureOfTaperedScrew',
    quantity: 'Pressure before the die of an 80 mm screw that tapers from 15 to 2 mm, 120 kPa s',
    unit: 'MPa',
    expected: 7.79595,
    source: listing,
    got: () => tapered().state.headPressure / 1e6,
  },
  {
    ...base,
    kind: 'exact',
    id: 'operatingPoint.powerOf75mmScrew',
    quantity: 'Power of a 75 mm screw at 60 rpm against 7 MPa, 100 Pa s',
    unit: 'W',
    expected: 934.29,
    source: powerSource,
    got: () => loaded().power,
  },
  {
    ...base,
    kind: 'exact',
    id: 'operatingPoint.heatOf75mmScrew',
    quantity: 'Heat that a 75 mm screw makes at 60 rpm against 7 MPa, 100 Pa s',
    unit: 'W',
    expected: 687.54,
    source: powerSource,
    got: () => loaded().power - loaded().gradient * 1.9 * loaded().volumeFlow,
  },
  {
    ...base,
    kind: 'exact',
    limit: 1e-4,
    id: 'operatingPoint.bestEfficiency',
    quantity: 'Best pumping efficiency of a nearly straight channel, at two thirds of its open flow',
    unit: '',
    expected: 0.333333,
    source: 'Closed form 3 a (1 − a)/(1 + 3 a), greatest at a = 1/3, derived',
    got: bestEfficiency,
  },
  {
    ...base,
    kind: 'independent',
    limit: 0.02,
    id: 'operatingPoint.flowOf8mmScrew',
    quantity: 'Flow of an 8 mm screw (root 4 mm, 50 mm long, 30 rpm, 1000 Pa s) with a die that halves its open flow',
    unit: 'mm³/s',
    expected: stored(halfNewtonian.Q_m3_per_s, 1e9),
    source: `${elementSource('D', 1)}: half-way point of the helical channel; die length chosen to meet it`,
    got: () => newtonianSmall().volumeFlow * 1e9,
  },
  {
    ...base,
    kind: 'independent',
    limit: 0.02,
    id: 'operatingPoint.flowOf8mmScrewThinning',
    quantity:
      'Flow of an 8 mm screw (root 4.5 mm, 50 mm long, 30 rpm, n = 0.5, solved section) with a die that asks for half its closed gradient',
    unit: 'mm³/s',
    expected: stored(halfThinning.Q_m3_per_s, 1e9),
    source: `${elementSource('D', 3)}: half-way point of the helical channel; die length chosen to meet it`,
    got: () => thinningSmall().volumeFlow * 1e9,
  },
];
