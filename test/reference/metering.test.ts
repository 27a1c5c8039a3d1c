/**
 * Metering against numbers that are not in the table of checks (core/checks/channel.ts, operatingPoint.ts). Problems of
 * M. P. Groover, Fundamentals of Modern Manufacturing, ch. 13: printed answers from memory, recomputed from their
 * equations, through the reach solver that the prediction uses, with the side walls left out as the textbooks do.
 */

import { describe, expect, test } from 'vitest';
import { flowAgainst, inch, newtonian, psi, textbookReach } from '../../core/checks/textbookScrew.ts';
import { marchChannel } from '../../core/flow/channel.ts';
import { createPlateSolver, type PlateDirection, solvePlate } from '../../core/flow/plate.ts';
import { createReach, solveReach } from '../../core/flow/reach.ts';
import { helixAngle } from '../../core/geometry/crossSection.ts';
import type { Stations } from '../../core/geometry/types.ts';
import { bracketedRoot } from '../../core/math/roots.ts';

const degrees = Math.PI / 180;
const within = (got: number, expected: number, relative: number) =>
  expect(Math.abs(got / expected - 1), `${got} against ${expected}`).toBeLessThan(relative);

describe('Newtonian textbook screws', () => {
  test('M6: 2.5 in screw at 1.5 in³/s means 0.01077 lb s/in² (Groover)', () => {
    const screw = { diameter: 2.5 * inch, depth: 0.25 * inch, helix: 20 * degrees };
    const excess = (v: number) => flowAgainst(screw, v, 55 / 60, 500 * psi, 72 * inch) - 1.5 * inch ** 3;
    within(bracketedRoot(excess, 20, 500, { tolerance: 1e-6 }).x / psi, 0.01077, 5e-4);
  });

  test('M8: 2.5 in screw against 800 lb/in², 1.148 in³/s (Groover)', () => {
    const screw = { diameter: 2.5 * inch, depth: 0.2 * inch, helix: 17.5 * degrees };
    within(flowAgainst(screw, 122e-4 * psi, 1, 800 * psi, 50 * inch) / inch ** 3, 1.148, 5e-4);
  });

  test('M10: lead equal to the bore is 17.657 degrees (exact)', () => {
    expect(helixAngle(1, 0.5) / degrees).toBeCloseTo(17.6568, 4);
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
  test('P1: the plate’s own heat agrees with the balance of power', () => {
    const v = Math.PI * 0.075;
    const width = Math.PI * 0.075 * Math.sin(20 * degrees);
    const down: PlateDirection = { wallSpeed: v * Math.cos(20 * degrees), given: 'flow', value: 35.25e-6 / width };
    const cross: PlateDirection = { wallSpeed: v * Math.sin(20 * degrees), given: 'flow', value: 0 };
    const { dissipation } = solvePlate(createPlateSolver(), newtonian(100), 0.006, down, cross);
    within(dissipation * width * (1.9 / Math.sin(20 * degrees)), 687.536, 1e-3);
  });

  test('pumping efficiency of a nearly straight channel peaks where Qp/Qd = 1/3 (exact limit)', () => {
    const reach = textbookReach({ diameter: 0.075, depth: 0.006, helix: 0.01 * degrees });
    const open = solveReach(reach, newtonian(100), 1, 0).openFlow;
    const efficiency = (a: number) => {
      const { gradient, channelPower } = solveReach(reach, newtonian(100), 1, open * (1 - a));
      return (gradient * open * (1 - a)) / channelPower;
    };
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

  test('is nothing without clearance', () => {
    expect(solveReach(createReach(shape(0), true), newtonian(100), 1, 1e-6).leakFlow).toBe(0);
  });
});

/** Pa s in the gap when nothing turns. */
const viscosityOfRest = 100;
