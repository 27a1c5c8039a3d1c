/** Conduction, convection and radiation against published numbers; own arithmetic is marked so. */

import { describe, expect, test } from 'vitest';
import { heatCells } from '../../core/heat/heatCells.ts';
import { convectionCoefficient, radiationCoefficient } from '../../core/heat/stillAir.ts';
import { nozzleOutlet } from '../../core/heat/stream.ts';
import { coldMoment, marchWarm } from '../../core/heat/warmMarch.ts';
import { biotNumber } from '../../core/print/cooling.ts';
import { rodCells, rodMasses } from '../helpers/heatRod.ts';
import { loadDesign } from '../helpers/projects.ts';

const within = (got: number, expected: number, relative: number) =>
  expect(Math.abs(got / expected - 1), `${got} against ${expected}`).toBeLessThan(relative);

test('Biot number of an apple of 100 mm, h 10, k 0.6: 0.278 (S. K. Som, Introduction to Heat Transfer, example 4.1)', () => {
  within(biotNumber(10, 0.1 / 6, 0.6), 0.278, 2e-3);
});

describe('cylinder of 0.15 m radius in a stream (inputs of S. K. Som, Introduction to Heat Transfer, example 4.7)', () => {
  const [radius, coefficient, conductivity, diffusivity, time] = [0.15, 380, 200, 8.5e-5, 265];

  /** Radial shells as cells, 1 K above the stream; temperature at 0.8 of the radius after the time. */
  const solved = (count: number, step: number): number => {
    const cell = radius / count;
    const cells = rodCells({ count, length: radius, conduction: 1, exchange: 0, ambient: 0 });
    const masses = rodMasses(cells, 0);
    for (let i = 0; i < count; i++) {
      const edge = 2 * Math.PI * (i + 1) * cell;
      masses.wall[i] = (conductivity / diffusivity) * Math.PI * cell ** 2 * (2 * i + 1);
      cells.link[i] = i + 1 < count ? (conductivity * edge) / cell : 0;
    }
    const surface = 2 * Math.PI * radius;
    cells.toAmbient[count - 1] = surface / (1 / coefficient + cell / 2 / conductivity);
    const pace = { first: step, least: step, tolerance: 1e-30 };
    const { moments } = marchWarm(cells, masses, coldMoment(cells, masses, 1), (all) => all.length > time / step, pace);
    const { wall } = moments[moments.length - 1].state;
    const at = 0.8 * count - 0.5;
    return (wall[Math.floor(at)] + wall[Math.ceil(at)]) / 2;
  };

  test('Bi 0.285, Fo 1.001 as printed', () => {
    within(biotNumber(coefficient, radius, conductivity), 0.285, 1e-9);
    within((diffusivity * time) / radius ** 2, 1.001, 2e-4);
  });

  test('0.5751 of the difference is left at 0.8 R: one-term series, own arithmetic (the printed answer is a chart reading, 5 % off it)', () => {
    within(solved(40, 5.3), 0.5751, 1e-3);
  });
});

describe('conduction into the cold end over 150 K (own arithmetic, q = k A dT / L; conductivities from memory)', () => {
  const design = loadDesign('demo', 'C');
  /** Watts through a heat break that spans a tenth of a barrel of 100 mm. */
  const through = (outer: number, inner: number, length: number, conductivity: number): number => {
    const barrel = {
      ...design.barrel,
      boreDiameter: inner,
      length: 10 * length,
      heatBreak: { start: 4 * length, length, wall: (outer - inner) / 2, conductivity },
    };
    const { link } = heatCells({ ...design, barrel }, { barrel: 100, nozzle: 4 });
    const nine = link.subarray(40, 49).reduce((sum, own) => sum + 1 / own, 0);
    return 150 / ((nine * 10) / 9);
  };

  test.each([
    [20, 16, 10, 27, 12, 195],
    [18, 16, 10, 13, 5.6, 92],
    [17, 16, 15, 4.1, 1.8, 30],
  ])(
    'tube of %d on %d mm, %d mm long: %d W stainless, %d W titanium alloy, %d W brass',
    (outer, inner, length, ...watts) => {
      [16, 7, 115].forEach((conductivity, i) => {
        within(through(outer / 1e3, inner / 1e3, length / 1e3, conductivity), watts[i], 0.04);
      });
    },
  );

  test('a steel core of 8 mm carries 11 W over 30 mm', () => {
    const [section] = design.screw.sections;
    const root = { rootDiameterStart: 8e-3, rootDiameterEnd: 8e-3 };
    const screw = {
      ...design.screw,
      steel: { ...design.screw.steel, conductivity: 45 },
      sections: [{ ...section, ...root, length: design.barrel.length }],
    };
    const { coreLink, length } = heatCells({ ...design, screw });
    within((150 * coreLink[10] * length[10]) / 0.03, 11, 0.04);
  });
});

describe('loss to still air', () => {
  test('pipe of 100 mm at 170 °C in air of 30 °C: 8.07 W/(m² K) by another correlation (lecture notes, Nu = 0.53 Ra^0.25)', () => {
    within(convectionCoefficient(0.1, 443.15, 303.15), 8.07, 0.12);
  });

  test('grey pipe, emissivity 0.8, 373 K in 300 K: 511 W/m² (physics exercise)', () => {
    within(radiationCoefficient(373, 300, 0.8) * 73, 511, 2e-3);
  });

  test('a still cylinder without buoyancy keeps Nu = 0.36', () => {
    // 0.6 squared is the correlation's limit; 0.1 mm wire, 1 K
    const fine = convectionCoefficient(1e-7, 301, 300);
    within((fine * 1e-7) / 0.0263, 0.36, 0.05);
  });
});

describe('adiabatic rise in a die', () => {
  /** dT = dp/(rho c): Imperial College London, Polymer Processing Technology, Problem 3.2; the two cases are own arithmetic. */
  test.each([
    [10e6, 1000, 2000, 5],
    [20e6, 780, 2300, 11.15],
  ])('%s Pa at %s kg/m³ and %s J/(kg K) warm the melt by %s K', (drop, density, heat, rise) => {
    const design = loadDesign('demo');
    const material = { ...design.material, meltDensity: density, heatCapacityMelt: heat, conductivity: 1e-9 };
    const flow = 1e-8;
    const out = nozzleOutlet({ ...design, material }, flow * density, 460, 400, drop * flow);
    expect(Math.abs((out - 460) / rise - 1)).toBeLessThan(1e-3);
  });
});
