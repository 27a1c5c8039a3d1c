/** Checks of conduction, convection, radiation, heat content and warming up. */

import { enthalpyBetween } from '../heat/enthalpy.ts';
import { convectionCoefficient, radiationCoefficient } from '../heat/stillAir.ts';
import { slabSides } from '../melting/conduction.ts';
import { biotNumber } from '../print/cooling.ts';
import { acrossCore, barNusselt, dieRise, tubeHeat } from './heatCases.ts';
import { baseHeat, leftInCylinder } from './heatRod.ts';
import type { Check } from './types.ts';

const kelvin = (celsius: number) => celsius + 273.15;
const area = (diameter: number) => (Math.PI / 4) * diameter ** 2;

/** All checks of the heat. */
export const heatChecks: readonly Check[] = [
  {
    id: 'heat.pipeInAir',
    stage: 'heat',
    quantity: 'Loss of a horizontal pipe of 80 mm to still air, 70 °C in 20 °C',
    unit: 'W/(m² K)',
    expected: 5.869,
    limit: 0.02,
    measure: 'relative',
    kind: 'published',
    source: 'Worked example with Churchill & Chu and tabled air, Ra 1.869e6, Nu 17.40 (believed Çengel, example 9-1)',
    got: () => convectionCoefficient(0.08, kelvin(70), kelvin(20)),
  },
  {
    id: 'heat.steamPipeInAir',
    stage: 'heat',
    quantity: 'Loss of a horizontal pipe of 100 mm to still air, 170 °C in 30 °C',
    unit: 'W/(m² K)',
    expected: 8.07,
    limit: 0.12,
    measure: 'relative',
    kind: 'published',
    source: 'Course notes on convection to air by another correlation, Nu = 0.53 Ra^0.25; hence the wide limit',
    got: () => convectionCoefficient(0.1, kelvin(170), kelvin(30)),
  },
  {
    id: 'heat.greyPipe',
    stage: 'heat',
    quantity: 'Radiation of a grey pipe, emissivity 0.8, 373 K in 300 K',
    unit: 'W/m²',
    expected: 511,
    limit: 2e-3,
    measure: 'relative',
    kind: 'published',
    source: 'Physics exercise with printed answer',
    got: () => radiationCoefficient(373, 300, 0.8) * 73,
  },
  {
    id: 'heat.biotOfApple',
    stage: 'heat',
    quantity: 'Biot number of a sphere of 100 mm, 10 W/(m² K), 0.6 W/(m K)',
    unit: '',
    expected: 0.278,
    limit: 2e-3,
    measure: 'relative',
    kind: 'published',
    source: 'S. K. Som, Introduction to Heat Transfer, example 4.1',
    got: () => biotNumber(10, 0.1 / 6, 0.6),
  },
  {
    id: 'heat.cooledCylinder',
    stage: 'heat',
    quantity: 'Share of a temperature difference left in a cooled cylinder at 0.8 R, Bi 0.285, Fo 1.001',
    unit: '',
    expected: 0.575128,
    limit: 1e-3,
    measure: 'relative',
    kind: 'independent',
    source: 'Bessel series, 15 terms, and scipy BDF on 400 shells, which agree; inputs of S. K. Som, example 4.7',
    got: () =>
      leftInCylinder({ radius: 0.15, coefficient: 380, conductivity: 200, diffusivity: 8.5e-5, time: 265 }, 40, 50),
  },
  {
    id: 'heat.copperFin',
    stage: 'heat',
    quantity: 'Heat of a very long copper rod of 5 mm, 100 °C in 25 °C, 100 W/(m² K)',
    unit: 'W',
    expected: 8.3,
    limit: 6e-3,
    measure: 'relative',
    kind: 'fromMemory',
    source: 'F. P. Incropera & D. P. DeWitt, Fundamentals of Heat and Mass Transfer, example 3.9',
    got: () =>
      baseHeat({
        count: 400,
        length: 1,
        conduction: 398 * area(5e-3),
        exchange: 100 * Math.PI * 5e-3,
        ambient: kelvin(25),
        base: kelvin(100),
      }),
  },
  {
    id: 'heat.shortFin',
    stage: 'heat',
    quantity: 'Heat of a steel rod of 5 mm, 50 mm long, insulated end, 100 °C in 25 °C, 100 W/(m² K)',
    unit: 'W',
    expected: 1.556852,
    limit: 1e-3,
    measure: 'relative',
    kind: 'exact',
    source: 'fin with insulated tip, sqrt(h P k A) theta tanh(m L), k 14 W/(m K)',
    got: () =>
      baseHeat({
        count: 200,
        length: 0.05,
        conduction: 14 * area(5e-3),
        exchange: 100 * Math.PI * 5e-3,
        ambient: kelvin(25),
        base: kelvin(100),
      }),
  },
  {
    id: 'heat.pipeFlow',
    stage: 'heat',
    quantity: 'Nusselt number of melt that flows far along a nozzle of one wall temperature',
    unit: '',
    expected: 3.656793,
    limit: 2e-3,
    measure: 'relative',
    kind: 'independent',
    source: 'first eigenvalue of the Graetz problem, shooting with scipy solve_ivp',
    got: barNusselt,
  },
  {
    id: 'heat.slab',
    stage: 'heat',
    quantity: 'Mean temperature of a slab heated from both faces: slowest rate times H²/α',
    unit: '',
    expected: 9.869602,
    limit: 1e-4,
    measure: 'relative',
    kind: 'independent',
    source: 'lowest eigenvalue of 2000 finite volumes, scipy eigh_tridiagonal',
    got: () => {
      // both faces of a wide ring: conductance per area over conductivity/depth
      const { wall, core } = slabSides(1, 1e-3, 1, 1);
      return ((wall + core) / (2 * Math.PI)) * 1e-3;
    },
  },
  {
    id: 'heat.iceToWater',
    stage: 'heat',
    quantity: 'Heat that brings ice of -20 °C to water of 40 °C',
    unit: 'kJ/kg',
    expected: 546,
    limit: 1e-6,
    measure: 'relative',
    kind: 'published',
    source: 'School exercise with printed answer, 5460 J for 10 g: 2.1 and 4.2 J/(g K), fusion 336 J/g',
    got: () => {
      const ice = { heatCapacitySolid: 2100, heatCapacityMelt: 4200, heatOfFusion: 336e3, melting: kelvin(0) };
      return enthalpyBetween(ice, kelvin(-20), kelvin(40)) / 1e3;
    },
  },
  {
    id: 'heat.dieRise',
    stage: 'heat',
    quantity: 'Adiabatic rise in a die, 20 MPa at 780 kg/m³ and 2300 J/(kg K)',
    unit: 'K',
    expected: 11.148,
    limit: 1e-3,
    measure: 'relative',
    kind: 'exact',
    source: 'dT = dp/(rho c), Imperial College London, Polymer Processing Technology, problem 3.2; own case',
    got: () => dieRise(20e6, 780, 2300),
  },
  {
    id: 'heat.neck',
    stage: 'heat',
    quantity: 'Heat through a stainless neck of 20 on 16 mm and 10 mm length, 150 K, 16 W/(m K)',
    unit: 'W',
    expected: 27.143,
    limit: 0.01,
    measure: 'relative',
    kind: 'exact',
    source: 'k A dT/L; conductivity from memory',
    got: () => tubeHeat(0.02, 0.016, 0.01, 16),
  },
  {
    id: 'heat.coreRod',
    stage: 'heat',
    quantity: 'Heat along a steel screw core of 8 mm over 30 mm, 150 K, 45 W/(m K)',
    unit: 'W',
    expected: 11.31,
    limit: 0.01,
    measure: 'relative',
    kind: 'exact',
    source: 'k A dT/L; conductivity from memory',
    got: () => acrossCore(8e-3, 45),
  },
];
