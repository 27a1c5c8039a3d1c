/** Pipes, cones, rings and steps against published and exact numbers. */

import { describe, expect, test } from 'vitest';
import { annulusFlow, annulusToSlit } from '../../core/flow/annulus.ts';
import { conePressureDrop, coneToLubrication, lubricationDrop } from '../../core/flow/cone.ts';
import { pipeFirstShare, pipeFlow } from '../../core/flow/pipe.ts';
import { createPlateSolver } from '../../core/flow/plate.ts';
import { stepPressureDrop } from '../../core/flow/step.ts';
import type { ViscosityLaw } from '../../core/material/viscosityLaw.ts';
import { gaussLegendre } from '../../core/math/gaussLegendre.ts';
import { newtonian, powerLaw } from '../../core/checks/textbookScrew.ts';

const within = (got: number, expected: number, relative: number) =>
  expect(Math.abs(got / expected - 1), `${got} against ${expected}`).toBeLessThan(relative);

describe('D1: tapered power-law die', () => {
  /** Imperial College London, ME4 Polymer Processing Technology, solutions of problem 3.1 (2008): 290 MPa/m, 8.96 MPa. */
  const law = powerLaw(16e3, 0.3);

  test('gradient at the 3 mm end 289.68 MPa/m', () => {
    within(pipeFlow(law, 0.0015, 1e-5).gradient, 289.68e6, 1e-4);
    within(pipeFlow(law, 0.0015, 1e-5).gradient, 290e6, 2e-3);
  });

  test('drop 8.963 MPa either way through', () => {
    within(lubricationDrop(law, 0.0015, 0.003, 0.06, 1e-5), 8.96301e6, 1e-3);
    within(lubricationDrop(law, 0.003, 0.0015, 0.06, 1e-5), 8.96301e6, 1e-3);
    within(lubricationDrop(law, 0.0015, 0.003, 0.06, 1e-5), 8.96e6, 2e-3);
  });

  test('the cone’s own angle adds a thousandth', () => {
    within(conePressureDrop(law, 0.0015, 0.003, 0.06, 1e-5), 8.963e6, 2e-3);
  });
});

describe('D2: capillary rheometry of polypropylene at 190 °C', () => {
  /** Die 2 mm; MPa at 2, 4, 8e-7 m³/s for lands of 5, 10, 20 mm. Data seen on a problem page (McCrum, Buckley & Bucknall). */
  const flows = [2e-7, 4e-7, 8e-7];
  const drops = { 5: [1.502, 2.1, 2.935], 10: [2.337, 3.266, 4.565], 20: [4.006, 5.599, 7.826] } as const;
  /** n and K that the data give after Bagley and Rabinowitsch: n = 0.4830, K = 5125 Pa s^n (computed). */
  const law = powerLaw(5125, 0.483);

  test('the pipe solver gives back the land’s share: differences of drops over 10 mm', () => {
    flows.forEach((flow, i) => {
      within(pipeFlow(law, 0.001, flow).gradient * 0.01, (drops[20][i] - drops[10][i]) * 1e6, 5e-3);
    });
  });

  test('end correction of 4 radii explains the rest', () => {
    flows.forEach((flow, i) => {
      within(pipeFlow(law, 0.001, flow).gradient * (0.005 + 4 * 0.001), drops[5][i] * 1e6, 5e-3);
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
  test('D3: 500 Pa s through 1.0 x 2 mm at 5 mm³/s drops 0.20372 MPa (computed)', () => {
    within(pipeFlow(newtonian(500), 0.0005, 5e-9).gradient * 0.002, 0.20372e6, 1e-4);
  });

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

  test('a step is half of 3 eta Q/R³ for a wide reservoir and nothing without a step (Sampson 1891)', () => {
    within(stepPressureDrop(newtonian(400), 1, 0.001, 1e-8), (1.5 * 400 * 1e-8) / 1e-9, 3e-3);
    expect(stepPressureDrop(newtonian(400), 0.001, 0.001, 1e-8)).toBeCloseTo(0, 12);
  });
});

describe('ring', () => {
  test('Newtonian ring is exact (Lamb 1932)', () => {
    const [core, bore] = [0.003, 0.005];
    const exact =
      (8 * 250 * 1e-8) / (Math.PI * (bore ** 4 - core ** 4 - (bore ** 2 - core ** 2) ** 2 / Math.log(bore / core)));
    const solved = annulusFlow(createPlateSolver(), newtonian(250), core, bore, 0.5, 1e-8);
    within(solved.gradient, exact, 1e-5);
  });

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
