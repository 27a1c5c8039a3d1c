/** Solids conveying, intake and conveyors against published and exact numbers. */

import { describe, expect, test } from 'vitest';
import { conveyorPower, conveyorVolumeFlow } from '../../core/feed/conveyor.ts';
import { angleOfAdvance, type PlugShape, plugConveying } from '../../core/feed/plug.ts';
import { perfectBite } from '../../core/feed/throat.ts';

const within = (got: number, expected: number, relative: number) =>
  expect(Math.abs(got / expected - 1), `${got} against ${expected}`).toBeLessThan(relative);

interface Machine {
  readonly diameter: number;
  readonly depth: number;
  readonly lead: number;
  readonly flight: number;
  readonly speed: number;
}

/** Channel widths normal to the flight at barrel, mid-depth and root for a flight of constant axial width e/cos(phi_b). */
function plugOf({ diameter, depth, lead, flight }: Machine): PlugShape {
  const width = (radius: number) => lead * Math.cos(Math.atan(lead / (2 * Math.PI * radius))) - flight;
  const barrelRadius = diameter / 2;
  return {
    barrelRadius,
    depth,
    lead,
    starts: 1,
    widthBarrel: width(barrelRadius),
    widthMean: width(barrelRadius - depth / 2),
    widthRoot: width(barrelRadius - depth),
  };
}

/** Axial speed of the plug, m/s, and volume rate pi² N H D (D - H) tan tan/(tan + tan) W/(W + e), m³/s. */
function rates(machine: Machine, angle: number): { axial: number; volume: number } {
  const { diameter, depth, speed, lead, flight } = machine;
  const helix = lead / (Math.PI * diameter);
  const advance = (Math.tan(angle) * helix) / (Math.tan(angle) + helix);
  const width = plugOf(machine).widthMean;
  const full = Math.PI ** 2 * speed * depth * diameter * (diameter - depth);
  return { axial: Math.PI * diameter * speed * advance, volume: (full * advance * width) / (width + flight) };
}

const large: Machine = { diameter: 0.0635, depth: 0.009398, lead: 0.0635, flight: 0.00635, speed: 82 / 60 };
const small: Machine = { diameter: 0.016, depth: 0.003, lead: 0.016, flight: 0.0016, speed: 1 };
const degrees = 180 / Math.PI;

describe('Darnell & Mol 1956 (equations from memory, outputs computed; no published worked output was found)', () => {
  /** S1 to S4: friction on barrel and screw, K, M, angle in degrees, axial speed in m/s. */
  test.each([
    ['S1', large, 0.45, 0.25, 0.586047, 0.511107, 33.462, 0.058574],
    ['S2', large, 0.25, 0.25, 0.586047, 0.919993, 7.092, 0.024388],
    ['S3', large, 0.45, 0, 0.31831, 0, 72.343, 0.078799],
    ['S4', small, 0.4, 0.2, 0.521686, 0.419089, 40.637, 0.011671],
  ] as const)('%s', (_, machine, onBarrel, onScrew, k, m, angle, axial) => {
    const plug = plugConveying(plugOf(machine), onBarrel, onScrew);
    expect(plug.k).toBeCloseTo(k, 5);
    expect(plug.m).toBeCloseTo(m, 4);
    expect(plug.angle * degrees).toBeCloseTo(angle, 2);
    within(rates(machine, plug.angle).axial, axial, 2e-4);
    within(plug.efficiency, axial / (machine.lead * machine.speed), 2e-4);
  });

  test('S1 carries 179.0 kg/h at 595 kg/m³; S4 carries 1.2764e-6 m³/s', () => {
    within(rates(large, plugConveying(plugOf(large), 0.45, 0.25).angle).volume * 595 * 3600, 179, 1e-3);
    within(rates(small, plugConveying(plugOf(small), 0.4, 0.2).angle).volume, 1.2764e-6, 1e-3);
  });

  test('S1 building a tenfold pressure over 12.5 turns: M = 0.531976, 32.307 degrees', () => {
    const helixMean = Math.atan(large.lead / (Math.PI * (large.diameter - large.depth)));
    const alongChannel = (12.5 * large.lead) / Math.sin(helixMean);
    const plug = plugConveying(plugOf(large), 0.45, 0.25, (large.depth / alongChannel) * Math.log(10));
    expect(plug.m).toBeCloseTo(0.531976, 5);
    expect(plug.angle * degrees).toBeCloseTo(32.307, 3);
    within(rates(large, plug.angle).volume * 595 * 3600, 176.4, 1e-3);
  });

  test('S2: the rate said to be measured, 67.1 kg/h, is an advance of 25.3 % at 6.153 degrees (from memory)', () => {
    const full = rates(large, Math.PI / 2).volume * 595 * 3600;
    within(67.1 / full, 0.253, 2e-3);
    expect(angleOfAdvance(67.1 / full, large.lead / (Math.PI * large.diameter)) * degrees).toBeCloseTo(6.153, 2);
  });

  test('without friction on the screw tan(theta) = 1/K', () => {
    const plug = plugConveying(plugOf(small), 0.3, 0);
    within(Math.tan(plug.angle), 1 / plug.k, 1e-9);
    expect(plug.m).toBe(0);
  });

  test('conveys nothing where the screw holds more than the barrel drives (M of 1 and more)', () => {
    const plug = plugConveying(plugOf(large), 0.2, 0.4);
    expect(plug.m).toBeGreaterThan(1);
    expect(plug.efficiency).toBe(0);
  });

  test('more friction on the barrel never conveys less, more on the screw never more', () => {
    for (let f = 0.1; f < 0.6; f += 0.05) {
      const at = (onBarrel: number, onScrew: number) => plugConveying(plugOf(small), onBarrel, onScrew).efficiency;
      expect(at(f + 0.05, 0.2)).toBeGreaterThanOrEqual(at(f, 0.2));
      expect(at(0.4, f + 0.05)).toBeLessThanOrEqual(at(0.4, f));
    }
  });
});

describe('screw conveyor', () => {
  test('C1: 300 mm, 20 rev/min, 80 % filled, 1.25 t/m³ carries 25.447 t/h (published with outputs)', () => {
    within(conveyorVolumeFlow(0.3, 0, 0.3, 20 / 60, 0.8) * 1250 * 3.6, 25.447, 1e-4);
  });

  /** C2: ANSI/CEMA capacities at 1 rev/min, full lead, ft³/h at 15, 30, 45 % (table from memory). */
  test.each([
    [6, 2.375, 0.745, 1.49, 2.235],
    [12, 3.5, 6.467, 12.935, 19.402],
  ])('C2: %s in on %s in pipe', (screw, pipe, ...capacities) => {
    [0.15, 0.3, 0.45].forEach((filling, i) => {
      const flow = conveyorVolumeFlow(screw * 0.0254, pipe * 0.0254, screw * 0.0254, 1 / 60, filling);
      within((flow * 3600) / 0.3048 ** 3, capacities[i], 1e-3);
    });
  });

  test('C1: over 5 m at a resistance of 4 it takes 1.387 kW, 1.408 kW with a lift of 0.3 m (published with outputs)', () => {
    const massFlow = conveyorVolumeFlow(0.3, 0, 0.3, 20 / 60, 0.8) * 1250;
    within(conveyorPower(massFlow, 5, 0, 4), 1387, 5e-4);
    within(conveyorPower(massFlow, 5, 0.3, 4), 1408, 5e-4);
  });
});

test('perfect bite: 2.5 in, 0.45 in deep, 80 rev/min, 0.63 g/cm³ take 713 lb/h (Griff 2016; 712.5 recomputed)', () => {
  const inch = 0.0254;
  const rate = (perfectBite(2.5 * inch, 0.45 * inch, 2.5 * inch) * 80 * 60 * 630) / 0.45359237;
  within(rate, 713, 2e-3);
  within(rate, 712.5, 1e-3);
});
