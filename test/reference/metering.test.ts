/**
 * Metering against published and exact numbers. Textbook problems of M. P. Groover, Fundamentals of Modern Manufacturing,
 * ch. 13 (examples 13.1 and 13.2 and problems), and R. J. Crawford, Plastics Engineering (4.1, 4.2): statements and
 * printed answers from memory except where marked, recomputed from their equations. All run through the reach solver
 * that the prediction uses, with the side walls left out as the textbooks do.
 */

import { describe, expect, test } from 'vitest';
import { marchChannel } from '../../core/flow/channel.ts';
import { createPlateSolver, type PlateDirection, solvePlate } from '../../core/flow/plate.ts';
import { createReach, solveReach } from '../../core/flow/reach.ts';
import type { Stations } from '../../core/geometry/types.ts';
import { bracketedRoot } from '../../core/math/roots.ts';
import { closedPressure, flowAgainst, helixOf, inch, newtonian, psi, textbookReach } from '../../core/checks/textbookScrew.ts';

const degrees = Math.PI / 180;
const within = (got: number, expected: number, relative: number) =>
  expect(Math.abs(got / expected - 1), `${got} against ${expected}`).toBeLessThan(relative);

describe('Newtonian textbook screws', () => {
  const m1 = { diameter: 0.075, depth: 0.006, helix: 20 * degrees };

  test('M1: 75 mm screw against 7 MPa delivers 35.250e-6 m³/s (Groover example 13.1)', () => {
    within(solveReach(textbookReach(m1), newtonian(100), 1, 0).openFlow, 53.528e-6, 1e-4);
    within(flowAgainst(m1, 100, 1, 7e6, 1.9), 35.25e-6, 1e-4);
  });

  test('M2: with a 6.5 x 20 mm die it settles at 2.183 MPa and 47.83e-6 m³/s (Groover example 13.2)', () => {
    const die = (Math.PI * 0.0065 ** 4) / (128 * 100 * 0.02);
    within(die, 21.906e-12, 1e-4);
    const balance = (pressure: number) => flowAgainst(m1, 100, 1, pressure, 1.9) - die * pressure;
    const pressure = bracketedRoot(balance, 0, 20e6, { tolerance: 10 }).x;
    within(pressure, 2.183e6, 5e-4);
    within(die * pressure, 47.83e-6, 5e-4);
    within(closedPressure(m1, 100, 1, 1.9), 20.5e6, 5e-4);
  });

  test('M3: 5 in screw delivers 3.279 in³/s (statement seen on a question page, answer computed)', () => {
    const helix = helixOf(4.5 * inch, 5 * inch);
    expect(helix / degrees).toBeCloseTo(15.986, 3);
    const viscosity = 0.002 * psi;
    const flow = flowAgainst(
      { diameter: 5 * inch, depth: 0.25 * inch, helix },
      viscosity,
      50 / 60,
      500 * psi,
      110 * inch,
    );
    within(flow / inch ** 3, 3.279, 5e-4);
  });

  test('M4: 65 mm screw, 22.281e-6 m³/s (Groover problem 13.1)', () => {
    const screw = { diameter: 0.065, depth: 0.005, helix: 18 * degrees };
    within(flowAgainst(screw, 100, 55 / 60, 5e6, 1.75), 22.281e-6, 1e-4);
  });

  test('M5: 110 mm screw needs 55.50 rev/min for 90 cm³/s (Groover)', () => {
    const screw = { diameter: 0.11, depth: 0.007, helix: helixOf(0.095, 0.11) };
    const excess = (speed: number) => flowAgainst(screw, 105, speed, 4e6, 3) - 90e-6;
    within(bracketedRoot(excess, 0.2, 3, { tolerance: 1e-8 }).x * 60, 55.5, 1e-4);
  });

  test('M6: 2.5 in screw at 1.5 in³/s means 0.01077 lb s/in² (Groover)', () => {
    const screw = { diameter: 2.5 * inch, depth: 0.25 * inch, helix: 20 * degrees };
    const excess = (v: number) => flowAgainst(screw, v, 55 / 60, 500 * psi, 72 * inch) - 1.5 * inch ** 3;
    within(bracketedRoot(excess, 20, 500, { tolerance: 1e-6 }).x / psi, 0.01077, 5e-4);
  });

  test('M7: 80 mm screw, 46.41e-6 m³/s open, 55.69 MPa closed (Groover)', () => {
    const screw = { diameter: 0.08, depth: 0.005, helix: 18 * degrees };
    within(flowAgainst(screw, 150, 1, 0, 2), 46.41e-6, 1e-4);
    within(closedPressure(screw, 150, 1, 2), 55.69e6, 1e-4);
    within((46.41e-6 - flowAgainst(screw, 150, 1, 10e6, 2)) / 10e6, 8.333e-13, 1e-3);
  });

  test('M8: 2.5 in screw against 800 lb/in², 1.148 in³/s (Groover)', () => {
    const screw = { diameter: 2.5 * inch, depth: 0.2 * inch, helix: 17.5 * degrees };
    within(flowAgainst(screw, 122e-4 * psi, 1, 800 * psi, 50 * inch) / inch ** 3, 1.148, 5e-4);
  });

  test('M9: 4 in screw at 150 in³/min meets 2193 lb/in² (Groover)', () => {
    const screw = { diameter: 4 * inch, depth: 0.25 * inch, helix: helixOf(4.8 * inch, 4 * inch) };
    const reach = textbookReach(screw);
    const gradient = solveReach(reach, newtonian(100e-4 * psi), 1, 2.5 * inch ** 3).gradient;
    within((gradient * 112 * inch) / psi, 2193, 5e-4);
  });

  test('M10: lead equal to the bore is 17.657 degrees (exact)', () => {
    expect(helixOf(1, 1) / degrees).toBeCloseTo(17.6568, 4);
  });

  test('M11: 40 mm screw closed at 100 rev/min, 210 MPa (Crawford example 4.1)', () => {
    within(closedPressure({ diameter: 0.04, depth: 0.003, helix: 17.7 * degrees }, 500, 100 / 60, 0.96), 210e6, 1e-3);
  });

  test('M12: nylon rod at 1.5 m/min wants 13.25 rev/min (Crawford example 4.2)', () => {
    const flow = (Math.PI / 4) * 0.005 ** 2 * 0.025 * (1140 / 790);
    within(flow, 7.083e-7, 1e-3);
    const drop = (8 * 420 * 0.004 * flow) / (Math.PI * 0.0025 ** 4);
    within(drop, 0.0776e6, 2e-3);
    const screw = { diameter: 0.03, depth: 0.0025, helix: 17.7 * degrees };
    const excess = (speed: number) => flowAgainst(screw, 420, speed, drop, 1) - flow;
    within(bracketedRoot(excess, 0.05, 1, { tolerance: 1e-8 }).x * 60, 13.25, 2e-3);
  });
});

describe('tapered channel', () => {
  /** T1: listing headed "Example 6.5", believed Advani & Sozer (from memory); outputs computed from its equations. */
  const length = 1.92;
  const helix = 20 * degrees;
  // the source states 8 mm normal to the flight
  const flight = 0.008 / Math.cos(helix);
  const count = 401;
  const depthAt = (z: number) => 0.015 + ((0.002 - 0.015) * z) / length;
  const z = Float64Array.from({ length: count }, (_, i) => (length * i) / (count - 1));
  const reaches = Array.from({ length: count - 1 }, (_, i) => {
    const depth = depthAt((z[i] + z[i + 1]) / 2);
    return textbookReach({ diameter: 0.08, depth, helix, flight });
  });
  const channel = { stations: { count, z } as Stations, reaches };
  const march = (flow: number, head: number) =>
    marchChannel(channel, () => newtonian(120_000), { reach: 0, share: 1 }, 1, flow, head);

  test('T1: with its die it settles at 3.2483e-5 m³/s and 7.796 MPa', () => {
    const excess = (flow: number) => march(flow, (120_000 * flow) / 5e-7).startPressure;
    const flow = bracketedRoot(excess, 1e-6, 8e-5, { tolerance: 1e-11 }).x;
    within(flow, 3.24831e-5, 5e-4);
    within((120_000 * flow) / 5e-7, 7.79595e6, 5e-4);
  });

  test('T1: against 18.753 MPa it delivers 3.2472e-5 m³/s', () => {
    const flow = bracketedRoot((q) => march(q, 18.753e6).startPressure, 1e-6, 8e-5, { tolerance: 1e-11 }).x;
    within(flow, 3.2472e-5, 5e-4);
  });

  test('a constant depth of the mean gives more than twice the flow: 7.8138e-5 m³/s', () => {
    within(
      flowAgainst({ diameter: 0.08, depth: 0.0085, helix, flight }, 120_000, 1, 18.753e6, length),
      7.8138e-5,
      1e-3,
    );
  });
});

describe('power', () => {
  test('P1: the M1 screw takes 934.29 W = 687.54 W heat + 246.75 W pumping; 148.70 N m (computed)', () => {
    const reach = textbookReach({ diameter: 0.075, depth: 0.006, helix: 20 * degrees });
    const flow = flowAgainst({ diameter: 0.075, depth: 0.006, helix: 20 * degrees }, 100, 1, 7e6, 1.9);
    const solved = solveReach(reach, newtonian(100), 1, flow);
    const power = solved.channelPower * 1.9;
    within(power, 934.29, 1e-4);
    within(solved.gradient * flow * 1.9, 246.75, 2e-4);
    within(power - solved.gradient * flow * 1.9, 687.54, 2e-4);
    within(power / (2 * Math.PI), 148.7, 1e-4);
  });

  test('P1: the plate’s own heat agrees with the balance of power', () => {
    const v = Math.PI * 0.075;
    const width = Math.PI * 0.075 * Math.sin(20 * degrees);
    const down: PlateDirection = { wallSpeed: v * Math.cos(20 * degrees), given: 'flow', value: 35.25e-6 / width };
    const cross: PlateDirection = { wallSpeed: v * Math.sin(20 * degrees), given: 'flow', value: 0 };
    const { dissipation } = solvePlate(createPlateSolver(), newtonian(100), 0.006, down, cross);
    within(dissipation * width * (1.9 / Math.sin(20 * degrees)), 687.536, 1e-3);
  });

  test('pumping efficiency of a nearly straight channel peaks at 1/3 where Qp/Qd = 1/3 (exact limit)', () => {
    const reach = textbookReach({ diameter: 0.075, depth: 0.006, helix: 0.01 * degrees });
    const open = solveReach(reach, newtonian(100), 1, 0).openFlow;
    const efficiency = (a: number) => {
      const { gradient, channelPower } = solveReach(reach, newtonian(100), 1, open * (1 - a));
      return (gradient * open * (1 - a)) / channelPower;
    };
    within(efficiency(1 / 3), 1 / 3, 1e-4);
    expect(efficiency(0.3)).toBeLessThan(efficiency(1 / 3));
    expect(efficiency(0.37)).toBeLessThan(efficiency(1 / 3));
  });
});

describe('leakage', () => {
  const shape = (clearance: number) => ({
    ...textbookReach({ diameter: 0.075, depth: 0.006, helix: 20 * degrees, flight: 0.0075 }).shape,
    clearance,
  });

  test('pressed over the land follows pi² D² delta³ sin(phi) cos²(phi) dp/(12 eta e L), the thin-gap formula in Crawford’s form', () => {
    const tiny = 1e-4;
    const reach = createReach(shape(tiny), true);
    const loaded = solveReach(reach, newtonian(100), 0, -1e-6);
    const e = 0.0075 * Math.cos(20 * degrees);
    const formula =
      (Math.PI ** 2 * 0.075 ** 2 * tiny ** 3 * Math.sin(20 * degrees) * Math.cos(20 * degrees) ** 2 * loaded.gradient) /
      (12 * viscosityOfRest * e);
    within(loaded.leakFlow, formula, 1e-3);
  });

  test('dragged over the land takes delta/H of the drag flow (Tadmor & Klein 1970)', () => {
    const reach = createReach(shape(3e-4), true);
    const none = solveReach(createReach(shape(0), true), newtonian(100), 1, 0).openFlow;
    within(solveReach(reach, newtonian(100), 1, 0).openFlow, none * (1 - 3e-4 / 0.006), 1e-3);
  });

  test('is nothing without clearance', () => {
    expect(solveReach(createReach(shape(0), true), newtonian(100), 1, 1e-6).leakFlow).toBe(0);
  });
});

/** Pa s in the gap when nothing turns. */
const viscosityOfRest = 100;
