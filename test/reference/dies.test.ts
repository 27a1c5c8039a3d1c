/** Pipes, cones, rings and steps against published and exact numbers. */

import { describe, expect, test } from 'vitest';
import { newtonian, powerLaw } from '../../core/checks/textbookScrew.ts';
import { annulusFlow, annulusToSlit } from '../../core/flow/annulus.ts';
import { coneToLubrication, lubricationDrop } from '../../core/flow/cone.ts';
import { pipeFirstShare, pipeFlow } from '../../core/flow/pipe.ts';
import { createPlateSolver } from '../../core/flow/plate.ts';
import { stepPressureDrop } from '../../core/flow/step.ts';
import type { ViscosityLaw } from '../../core/material/viscosityLaw.ts';
import { gaussLegendre } from '../../core/math/gaussLegendre.ts';

const within = (got: number, expected: number, relative: number) =>
  expect(Math.abs(got / expected - 1), `${got} against ${expected}`).toBeLessThan(relative);

describe('D2: capillary rheometry of polypropylene at 190 °C', () => {
  /** Die 2 mm; MPa at 2, 4, 8e-7 m³/s for a land of 5 mm (10 and 20 mm: checks). Data seen on a problem page (McCrum, Buckley & Bucknall). */
  const flows = [2e-7, 4e-7, 8e-7];
  const drops = [1.502, 2.1, 2.935];
  /** n and K that the data give after Bagley and Rabinowitsch: n = 0.4830, K = 5125 Pa s^n (computed). */
  const law = powerLaw(5125, 0.483);

  test('end correction of 4 radii explains the rest', () => {
    flows.forEach((flow, i) => {
      within(pipeFlow(law, 0.001, flow).gradient * (0.005 + 4 * 0.001), drops[i] * 1e6, 5e-3);
    });
  });

  test('wall rates 322.8, 645.6, 1291.2 1/s and viscosities 258.6, 180.7, 126.3 Pa s', () => {
    const expected = [
      [322.8, 258.6],
      [645.6, 180.7],
      [1291.2, 126.3],
    ];
    flows.forEach((flow, i) => {
      const { wallRate, wallStress } = pipeFlow(law, 0.001, flow);
      within(wallRate, expected[i][0], 1e-3);
      within(wallStress / wallRate, expected[i][1], 3e-3);
    });
  });
});

describe('pipe', () => {
  test('Rabinowitsch factor (3n + 1)/(4n) for power laws (encyclopaedic entry, B. Rabinowitsch 1929)', () => {
    for (const n of [0.2, 0.4, 0.7, 1, 1.3]) {
      const { wallRate, apparentRate } = pipeFlow(powerLaw(1000, n), 0.001, 1e-7);
      within(wallRate / apparentRate, (3 * n + 1) / (4 * n), 1e-5);
    }
  });

  test('a Cross melt at rest flows like its zero-shear viscosity', () => {
    const cross: ViscosityLaw = { model: 'cross', zeroShearViscosity: 2000, criticalStress: 1e5, index: 0.3 };
    within(pipeFlow(cross, 0.002, 1e-14).gradient, pipeFlow(newtonian(2000), 0.002, 1e-14).gradient, 1e-3);
  });

  test('first melt: 1/2, 0.5484, 0.6842, 0.75, 0.8462 of the mean for n = 1, 0.7, 0.3, 0.2, 0.1', () => {
    expect(pipeFirstShare(1)).toBe(0.5);
    expect(pipeFirstShare(0.7)).toBeCloseTo(0.5484, 4);
    expect(pipeFirstShare(0.3)).toBeCloseTo(0.6842, 4);
    expect(pipeFirstShare(0.2)).toBeCloseTo(0.75, 4);
    expect(pipeFirstShare(0.1)).toBeCloseTo(0.8462, 4);
  });
});

describe('cone', () => {
  test('Newtonian lubrication is 8 eta Q L (a² + ab + b²)/(3 pi a³ b³)', () => {
    const [a, b] = [0.001, 0.0004];
    const exact = (8 * 300 * 1e-8 * 0.02 * (a * a + a * b + b * b)) / (3 * Math.PI * a ** 3 * b ** 3);
    within(lubricationDrop(newtonian(300), a, b, 0.02, 1e-8), exact, 1e-5);
  });

  test('grows from 1 for slender cones; the flat wall costs near half of Sampson’s 3 eta Q/R³', () => {
    expect(coneToLubrication(0.005)).toBe(1);
    expect(Math.abs(coneToLubrication(0.0101) - 1)).toBeLessThan(1e-3);
    const flat = Math.PI / 2 - 1e-9;
    const perWall = (coneToLubrication(flat) * 8) / (3 * Math.PI * Math.tan(flat));
    // 22/(5 pi), the flow-weighted normal stress of a sink in a half space (derived)
    expect(perWall).toBeCloseTo(22 / (5 * Math.PI), 3);
    within(perWall, 1.5, 0.07);
  });

  test('without a step there is no loss', () => {
    expect(stepPressureDrop(newtonian(400), 0.001, 0.001, 1e-8)).toBeCloseTo(0, 12);
  });
});

describe('ring', () => {
  test('ratio to the slit runs from 2/3 without a core to 1 for thin gaps', () => {
    expect(annulusToSlit(1e-30)).toBeCloseTo(2 / 3, 1);
    expect(annulusToSlit(0.979)).toBeCloseTo(1, 3);
    expect(annulusToSlit(0.5)).toBeGreaterThan(annulusToSlit(0.1));
  });

  test('turning thins a shear-thinning melt and so lowers the drop; power is positive', () => {
    const law = powerLaw(5000, 0.4);
    const still = annulusFlow(createPlateSolver(), law, 0.004, 0.006, 0, 1e-9);
    const turning = annulusFlow(createPlateSolver(), law, 0.004, 0.006, 2, 1e-9);
    expect(turning.gradient).toBeLessThan(0.7 * still.gradient);
    expect(still.swirlPower).toBe(0);
    expect(turning.swirlPower).toBeGreaterThan(0);
  });

  test('slit of a power law: 2K/h [((2n+1)/n) 2Q/(w h²)]^n for a thin gap (exact)', () => {
    const [core, bore, n, flow] = [0.05, 0.051, 0.5, 1e-7];
    const width = Math.PI * (core + bore);
    const gap = bore - core;
    const exact = ((2 * 3000) / gap) * (((2 * n + 1) / n) * ((2 * flow) / (width * gap * gap))) ** n;
    within(
      annulusFlow(createPlateSolver(gaussLegendre(24)), powerLaw(3000, n), core, bore, 0, flow).gradient,
      exact,
      2e-3,
    );
  });
});
