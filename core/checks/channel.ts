/** Checks of melt conveying in the screw channel. */

import { createReach, solveReach } from '../flow/reach.ts';
import { bracketedRoot } from '../math/roots.ts';
import { answer85 } from './answers.ts';
import { solvedChannelChecks } from './channelSolved.ts';
import { widthChecks } from './channelWidth.ts';
import { closedPressure, flowAgainst, helixOf, inch, newtonian, psi, textbookReach } from './textbookScrew.ts';
import type { Check } from './types.ts';

const degrees = Math.PI / 180;
const cubicInch = inch ** 3;
const screw75 = { diameter: 0.075, depth: 0.006, helix: 20 * degrees };
const screw85 = { diameter: 0.085, depth: 0.009, helix: 18 * degrees };
const screw80 = { diameter: 0.08, depth: 0.005, helix: 18 * degrees };
const screw40 = { diameter: 0.04, depth: 0.003, helix: 17.7 * degrees };
const screw5in = { diameter: 5 * inch, depth: 0.25 * inch, helix: helixOf(4.5 * inch, 5 * inch) };
const screw4in = { diameter: 4 * inch, depth: 0.25 * inch, helix: helixOf(4.8 * inch, 4 * inch) };
const groover = (place: string) =>
  `M. P. Groover, Fundamentals of Modern Manufacturing, ch. 13, ${place}; printed answer remembered, computed again from the equations`;

const base = { stage: 'channel', measure: 'relative', kind: 'fromMemory', limit: 5e-4 } as const;

/** Speed, rev/s, of a 110 mm screw that delivers 90 cm³/s against 4 MPa. */
function wantedSpeed(): number {
  const screw = { diameter: 0.11, depth: 0.007, helix: helixOf(0.095, 0.11) };
  const excess = (speed: number) => flowAgainst(screw, 105, speed, 4e6, 3) - 90e-6;
  return bracketedRoot(excess, 0.2, 3, { tolerance: 1e-8 }).x;
}

/** Share of the drag flow that a flight clearance of 0.3 mm takes from a channel 6 mm deep. */
function dragLoss(): number {
  const { shape } = textbookReach({ ...screw75, flight: 0.0075 });
  const open = (clearance: number) =>
    solveReach(createReach({ ...shape, clearance }, true), newtonian(100), 1, 0).openFlow;
  return 1 - open(3e-4) / open(0);
}

/** Textbook screws: wide channel, thin flights, Newtonian melt. */
const textbookChecks: readonly Check[] = [
  {
    ...base,
    id: 'channel.openFlowOf75mmScrew',
    quantity: 'Open discharge of a 75 mm screw, 6 mm deep, 20°, at 1 rev/s',
    unit: 'cm³/s',
    expected: 53.525,
    source: groover('example 13.1'),
    got: () => solveReach(textbookReach(screw75), newtonian(100), 1, 0).openFlow * 1e6,
  },
  {
    ...base,
    id: 'channel.flowAgainst7MPa',
    quantity: 'Flow of a 75 mm screw, 6 mm deep, 1.9 m long, at 1 rev/s against 7 MPa, 100 Pa s',
    unit: 'cm³/s',
    expected: 35.249,
    source: groover('example 13.1'),
    got: () => flowAgainst(screw75, 100, 1, 7e6, 1.9) * 1e6,
  },
  {
    ...base,
    kind: 'exact',
    id: 'channel.flowOf5inScrew',
    quantity: 'Flow of a 5 in screw at 50 rpm against 500 psi, 0.0020 lb s/in²',
    unit: 'in³/s',
    expected: 3.279,
    source:
      'Question page quoting Groover, ch. 13; the page prints no answer, so this is the textbook equation worked out',
    got: () => flowAgainst(screw5in, 0.002 * psi, 50 / 60, 500 * psi, 110 * inch) / cubicInch,
  },
  {
    ...base,
    kind: 'published',
    id: 'channel.openFlowOf85mmScrew',
    quantity: 'Open discharge of an 85 mm screw, 9 mm deep, 18°, at 60 rpm',
    unit: 'cm³/s',
    expected: 94.305,
    source: answer85,
    got: () => solveReach(textbookReach(screw85), newtonian(100), 1, 0).openFlow * 1e6,
  },
  {
    ...base,
    kind: 'published',
    id: 'channel.flowOf85mmScrew',
    quantity: 'Flow of an 85 mm screw, 9 mm deep, 2 m long, at 60 rpm against 11 MPa, 100 Pa s',
    unit: 'cm³/s',
    expected: 9.1,
    limit: 0.01,
    source: answer85,
    got: () => flowAgainst(screw85, 100, 1, 11e6, 2) * 1e6,
  },
  {
    ...base,
    id: 'channel.flowOf65mmScrew',
    quantity: 'Flow of a 65 mm screw, 5 mm deep, at 55 rpm against 5 MPa',
    unit: 'cm³/s',
    expected: 22.277,
    source: groover('problem on a 65 mm barrel'),
    got: () => flowAgainst({ diameter: 0.065, depth: 0.005, helix: 18 * degrees }, 100, 55 / 60, 5e6, 1.75) * 1e6,
  },
  {
    ...base,
    id: 'channel.speedOf110mmScrew',
    quantity: 'Speed at which a 110 mm screw delivers 90 cm³/s against 4 MPa',
    unit: 'rpm',
    expected: 55.5,
    source: groover('problem on a 110 mm barrel'),
    got: () => wantedSpeed() * 60,
  },
  {
    ...base,
    id: 'channel.closedPressureOf80mmScrew',
    quantity: 'Pressure of an 80 mm screw, 5 mm deep, 2 m long, that delivers nothing',
    unit: 'MPa',
    expected: 55.69,
    source: groover('problem on an 80 mm barrel'),
    got: () => closedPressure(screw80, 150, 1, 2) / 1e6,
  },
  {
    ...base,
    id: 'channel.pressureOf4inScrew',
    quantity: 'Pressure that a 4 in screw builds at 60 rpm and 150 in³/min',
    unit: 'psi',
    expected: 2193,
    source: groover('problem on a 4 in barrel'),
    got: () =>
      (solveReach(textbookReach(screw4in), newtonian(100e-4 * psi), 1, 2.5 * cubicInch).gradient * 112 * inch) / psi,
  },
  {
    ...base,
    id: 'channel.closedPressureOf40mmScrew',
    quantity: 'Pressure of a 40 mm screw, 3 mm deep, closed, at 100 rpm and 500 Pa s',
    unit: 'MPa',
    expected: 210,
    limit: 1e-3,
    source: 'R. J. Crawford, Plastics Engineering, example 4.1; printed answer remembered, computed again',
    got: () => closedPressure(screw40, 500, 100 / 60, 0.96) / 1e6,
  },
  {
    ...base,
    kind: 'exact',
    id: 'channel.dragOverFlight',
    quantity: 'Share of drag flow lost to a flight clearance of 0.3 mm over a channel of 6 mm',
    unit: '%',
    expected: 5,
    limit: 1e-3,
    source: 'Thin-gap drag: clearance over depth, Tadmor & Klein 1970 (from memory, derived again)',
    got: () => 100 * dragLoss(),
  },
];

/** All checks of the channel. */
export const channelChecks: readonly Check[] = [...textbookChecks, ...widthChecks, ...solvedChannelChecks];
