/** Checks of the flow through tip and nozzle: pipes, cones, rings, steps by formula, and the solved field. */

import { annulusFlow } from '../flow/annulus.ts';
import { conePressureDrop, lubricationDrop } from '../flow/cone.ts';
import { pipeFlow } from '../flow/pipe.ts';
import { createPlateSolver } from '../flow/plate.ts';
import { stepPressureDrop } from '../flow/step.ts';
import { newtonian, powerLaw } from './textbookScrew.ts';
import { solvedTipChecks } from './tipSolved.ts';
import type { Check } from './types.ts';

const imperial = 'Imperial College London, ME4 Polymer Processing Technology, solutions of problem 3.1 (2008)';
const taperLaw = powerLaw(16e3, 0.3);

const sucrose =
  'Worked answer on a homework page: 37 162 Pa press 7.866e-4 m³/s through the pipe, 31.174e-4 through the ring';
const capillary =
  'Pressures of polypropylene through dies of 2 mm at 190 °C, problem page (believed McCrum, Buckley & Bucknall, Principles of Polymer Engineering); n = 0.4830 and K = 5125 Pa sⁿ worked out of them apart from this program, after Bagley and Rabinowitsch';
const polypropylene = powerLaw(5125, 0.483);

/** What 10 mm more of the capillary cost, MPa. */
const landCost = (volumeFlow: number) => (pipeFlow(polypropylene, 1e-3, volumeFlow).gradient * 0.01) / 1e6;

const base = { stage: 'tip', measure: 'relative' } as const;

const capillaryCheck = (name: string, flow: number, longer: number, shorter: number): Check => ({
  ...base,
  kind: 'published',
  id: `tip.capillary${name}`,
  quantity: `Pressure over 10 mm of a 2 mm capillary, polypropylene at 190 °C, ${flow} mm³/s`,
  unit: 'MPa',
  expected: Number((longer - shorter).toFixed(3)),
  limit: 5e-3,
  source: `${capillary}; ${longer} MPa at 20 mm less ${shorter} MPa at 10 mm`,
  got: () => landCost(flow * 1e-9),
});

/** Dies by formula. */
const dieChecks: readonly Check[] = [
  {
    ...base,
    kind: 'published',
    id: 'tip.gradientAtNarrowEnd',
    quantity: 'Pressure gradient at the 3 mm end of a tapered die, n = 0.3, 10 cm³/s',
    unit: 'MPa/m',
    expected: 290,
    limit: 2e-3,
    source: `${imperial}; printed 290 (289.68 worked out)`,
    got: () => pipeFlow(taperLaw, 0.0015, 1e-5).gradient / 1e6,
  },
  {
    ...base,
    kind: 'published',
    id: 'tip.dropOfTaperedDie',
    quantity: 'Pressure through a tapered die, 3 to 6 mm over 60 mm, n = 0.3, 10 cm³/s, as a sum of slices',
    unit: 'MPa',
    expected: 8.96,
    limit: 1e-3,
    source: `${imperial}; printed 8.96 (8.963 worked out)`,
    got: () => lubricationDrop(taperLaw, 0.0015, 0.003, 0.06, 1e-5) / 1e6,
  },
  {
    ...base,
    kind: 'published',
    id: 'tip.dropOfTaperedDieWithAngle',
    quantity: 'Pressure through a tapered die, 6 to 3 mm over 60 mm, n = 0.3, 10 cm³/s, with its own angle',
    unit: 'MPa',
    expected: 8.96,
    limit: 3e-3,
    source: `${imperial}; printed 8.96, without the angle`,
    got: () => conePressureDrop(taperLaw, 0.003, 0.0015, 0.06, 1e-5) / 1e6,
  },
  {
    ...base,
    kind: 'published',
    id: 'tip.sucroseThroughPipe',
    quantity: 'Pressure of 0.7866 l/s of sucrose solution, 57 mPa s, through a pipe of 25.2 mm and 8.2 m',
    unit: 'kPa',
    expected: 37.162,
    limit: 1e-3,
    source: sucrose,
    got: () => (pipeFlow(newtonian(0.057), 0.0126, 7.866e-4).gradient * 8.2) / 1e3,
  },
  {
    ...base,
    kind: 'published',
    id: 'tip.sucroseThroughRing',
    quantity: 'Pressure of 3.1174 l/s of sucrose solution, 57 mPa s, through a ring of 25.2 to 56 mm and 8.2 m',
    unit: 'kPa',
    expected: 37.162,
    limit: 0.01,
    source: `${sucrose}; friction of the ring from a table, 95/Re`,
    got: () => (annulusFlow(createPlateSolver(), newtonian(0.057), 0.0126, 0.028, 0, 3.1174e-3).gradient * 8.2) / 1e3,
  },
  {
    ...base,
    kind: 'published',
    id: 'tip.doubledFlow',
    quantity: 'Pressure in a pipe when the flow of a melt with n = 0.585 doubles, over that before',
    unit: '',
    expected: 1.5,
    limit: 1e-3,
    source: 'Coulson & Richardson, Chemical Engineering, vol. 1, problem 3.40 with solution: 1.5 = 2ⁿ, n = 0.585',
    got: () => {
      const gradient = (flow: number) => pipeFlow(powerLaw(100, 0.585), 0.035, flow).gradient;
      return gradient(2e-3) / gradient(1e-3);
    },
  },
  capillaryCheck('Slow', 200, 4.006, 2.337),
  capillaryCheck('Middle', 400, 5.599, 3.266),
  capillaryCheck('Fast', 800, 7.826, 4.565),
  {
    ...base,
    kind: 'exact',
    id: 'tip.rabinowitschFactor',
    quantity: 'True over apparent shear rate at the wall of a pipe, n = 0.4',
    unit: '',
    expected: 1.375,
    limit: 1e-5,
    source: 'B. Rabinowitsch 1929, as in an encyclopaedic entry: (3n + 1)/(4n)',
    got: () => {
      const { wallRate, apparentRate } = pipeFlow(powerLaw(1000, 0.4), 0.001, 1e-7);
      return wallRate / apparentRate;
    },
  },
  {
    ...base,
    kind: 'exact',
    id: 'tip.dropOf1mmNozzle',
    quantity: 'Pressure through a 1 mm nozzle, 2 mm long, 500 Pa s, 5 mm³/s',
    unit: 'MPa',
    expected: 0.203718,
    limit: 1e-5,
    source: 'Hagen–Poiseuille: 128 η L Q/(π d⁴)',
    got: () => (pipeFlow(newtonian(500), 0.0005, 5e-9).gradient * 0.002) / 1e6,
  },
  {
    ...base,
    kind: 'exact',
    id: 'tip.ringGradient',
    quantity: 'Pressure gradient in a ring of 6 to 10 mm, 250 Pa s, 10 mm³/s',
    unit: 'kPa/m',
    // 8 eta Q/{pi [b⁴ - a⁴ - (b² - a²)²/ln(b/a)]}
    expected: 148.568,
    limit: 1e-4,
    source: 'Lamb, Hydrodynamics, 1932: flow through a ring, closed form',
    got: () => annulusFlow(createPlateSolver(), newtonian(250), 0.003, 0.005, 0.5, 1e-8).gradient / 1e3,
  },
  {
    ...base,
    kind: 'exact',
    id: 'tip.stepFromReservoir',
    quantity: 'Entrance loss from a wide reservoir into a 2 mm pipe, over η Q/R³',
    unit: '',
    expected: 1.5,
    limit: 5e-3,
    source: 'Half of a hole in a plate, 3 η Q/R³: Sampson 1891, as in encyclopaedic entries (Q = Δp d³/(24 μ))',
    got: () => stepPressureDrop(newtonian(400), 1, 0.001, 1e-8) / ((400 * 1e-8) / 1e-9),
  },
];

/** All checks of tip and nozzle. */
export const tipChecks: readonly Check[] = [...dieChecks, ...solvedTipChecks];
