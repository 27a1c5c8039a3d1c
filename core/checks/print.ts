/** Checks of what follows from the print: lines, controller numbers, ooze, drops, cooling, cracks. */

import { stepsPerScrewTurn } from '../drive/motor.ts';
import { lineArea, passesPerWall, stepsPerFilamentLength } from '../print/bead.ts';
import { biotNumber, type CoolingInputs, coolingState } from '../print/cooling.ts';
import { fallFor } from '../print/cracking.ts';
import { heldHead } from '../print/drip.ts';
import { unitFilament } from '../print/firmware.ts';
import { type ReleaseInputs, releaseState } from '../print/ooze.ts';
import { inertialTime, ohnesorgeNumber } from '../print/strand.ts';
import type { Check } from './types.ts';

const mm = 1e-3;
const base = { stage: 'print', measure: 'relative', kind: 'published' } as const;

/** A line whose section over outline is a length, m, as that of a body: width and height four times as large. */
const bodyOf = (size: number) => ({ width: 4 * size, height: 4 * size, speed: 0, heatOfFusion: 0 });

/** Junction of a thermocouple: sphere of 1 mm, one percent of its temperature difference left. */
const thermocouple: CoolingInputs = {
  ...bodyOf(mm / 6),
  ...{ conductivity: 35, density: 8500, heatCapacity: 320, coefficient: 210 },
  ...{ outlet: 400, air: 300, setTemperature: 301 },
};
const steelBall: CoolingInputs = {
  ...bodyOf(0.01 / 3),
  ...{ conductivity: 40, density: 7800, heatCapacity: 500, coefficient: 1000 },
  ...{ outlet: 1000, air: 300, setTemperature: 400 },
};
const thermocouplePage =
  'Textbook example of a thermocouple junction (sphere of 1 mm), with solution on a practice page; put in as a line of the same volume over surface';

/** Water under 50 MPa. */
const water: ReleaseInputs = {
  compressibility: { value: 1 / 2.2e9, low: 1 / 2.2e9, high: 1 / 2.2e9 },
  ...{ volume: 1, pressure: 5e7, volumeFlow: 1, nozzleResistance: 5e7, screwResistance: null },
};

/** Head of 5 cm³ at 5 MPa before a land of 0.8 x 2 mm and 500 Pa s. */
const resistance = (128 * 500 * 2 * mm) / (Math.PI * (0.8 * mm) ** 4);
const melt: ReleaseInputs = {
  compressibility: { value: 1e-9, low: 1e-9, high: 1e-9 },
  ...{ volume: 5e-6, pressure: 5e6, screwResistance: null },
  ...{ volumeFlow: 5e6 / resistance, nozzleResistance: resistance },
};

const lineChecks: readonly Check[] = [
  {
    ...base,
    id: 'print.flowOfLine',
    quantity: 'Flow of a line of 0.6 x 0.3 mm with round sides at 100 mm/s',
    unit: 'mm³/s',
    expected: 16.07,
    limit: 5e-4,
    source: 'Flow-rate page; printed 16.07 (18 as a rectangle)',
    got: () => lineArea(0.6 * mm, 0.3 * mm) * 0.1 * 1e9,
  },
  {
    ...base,
    kind: 'exact',
    id: 'print.lineOverRectangle',
    quantity: 'Section of a line half as high as wide over its rectangle',
    unit: '',
    expected: 0.892699,
    limit: 1e-5,
    source: 'Two half circles and a rectangle: 1 − (h/w)(1 − π/4)',
    got: () => lineArea(1, 0.5) / 0.5,
  },
  {
    ...base,
    kind: 'commonPractice',
    id: 'print.passesOfWall',
    quantity: 'Passes for a wall of 1.8 mm in lines of 0.45 mm, layers of 0.2 mm',
    unit: '',
    expected: 4,
    limit: 1e-9,
    source: 'Common practice',
    got: () => passesPerWall(1.8, 0.45, 0.2),
  },
];

const controllerChecks: readonly Check[] = [
  {
    ...base,
    id: 'print.unitFilament',
    quantity: 'Diameter of filament of which 1 mm is 1 mm³',
    unit: 'mm',
    expected: 1.12838,
    limit: 1e-5,
    source: 'Discussion of an open slicer; printed 1.12838',
    got: () => unitFilament * 1e3,
  },
  {
    ...base,
    kind: 'exact',
    id: 'print.stepsPerFilament',
    quantity: 'Steps per mm of 1.75 mm filament: 200 x 16 steps, gear 5.18, 120 mm³ a turn',
    unit: '1/mm',
    expected: 332.25,
    limit: 1e-5,
    source: 'Arithmetic in open firmware conventions: steps per mm³ times π d²/4',
    got: () => {
      const perTurn = stepsPerScrewTurn({ fullStepsPerTurn: 200, microsteps: 16, gearRatio: 5.18 });
      return stepsPerFilamentLength(perTurn / 120, 1.75);
    },
  },
];

const meltChecks: readonly Check[] = [
  {
    ...base,
    id: 'print.storedVolume',
    quantity: 'Share by which 50 MPa press water together',
    unit: '%',
    expected: 2.3,
    limit: 0.02,
    source: 'OpenStax, College Physics, example 5.6: 5.0e7 Pa, 2.2e9 Pa; printed 2.3 %',
    got: () => releaseState(water).stored.value * 100,
  },
  {
    ...base,
    kind: 'exact',
    id: 'print.releaseTime',
    quantity: 'Time in which a stopped head of 5 cm³ lets go through 0.8 x 2 mm, 500 Pa s, 1/GPa',
    unit: 's',
    expected: 0.497359,
    limit: 1e-5,
    source: 'Spring emptying through a tube (Hooke, Poiseuille): compressibility x volume x resistance',
    got: () => releaseState(melt).time.value,
  },
  {
    ...base,
    kind: 'exact',
    id: 'print.releaseOfThinningMelt',
    quantity: 'Time until 90 % has oozed, n = 0.5, over stored volume by first flow',
    unit: '',
    expected: 9,
    limit: 1e-6,
    source: 'Solution of dp/dt = −p², p = 1/(1 + t), derived',
    got: () => {
      const { time90, ooze, firstFlow } = releaseState({ ...melt, nozzleResistance: resistance / 2 });
      return (time90.value * firstFlow) / ooze.value;
    },
  },
  {
    ...base,
    id: 'print.heldColumn',
    quantity: 'Height of sap that a vessel of 0.141 µm radius holds by its skin, 72.8 mN/m, 1050 kg/m³',
    unit: 'm',
    expected: 100,
    limit: 0.01,
    source: 'OpenStax, College Physics, example 11.12: 1.41e-7 m for 100 m; tension and density of it from memory',
    got: () => heldHead(0.0728, 1.41e-7, 1050),
  },
  {
    ...base,
    id: 'print.ohnesorgeOfInk',
    quantity: 'Ohnesorge number of printing ink: 15 mPa s, 920 kg/m³, 50 µm, 29 mN/m',
    unit: '',
    expected: 0.411,
    limit: 2e-3,
    source: 'Exercise of a programming course, with its answer 0.411; its length is a diameter',
    got: () => ohnesorgeNumber(0.015, 920, 50e-6, 0.029),
  },
  {
    ...base,
    kind: 'exact',
    id: 'print.breakUpOfThinJet',
    quantity: 'Time in which the fastest wave on a thin jet grows e-fold, over √(ρR³/γ)',
    unit: '',
    expected: 2.91258,
    limit: 2e-3,
    source: 'Greatest root of Rayleigh’s relation ω² = k (1 − k²) I₁(k)/I₀(k), found by search: 0.34334',
    got: () => inertialTime(1, 1, 1),
  },
];

const coolingChecks: readonly Check[] = [
  {
    ...base,
    id: 'print.biotOfApple',
    quantity: 'Biot number of an apple of 100 mm in air, 10 W/(m² K), 0.6 W/(m K)',
    unit: '',
    expected: 0.278,
    limit: 2e-3,
    source: 'S. K. Som, Introduction to Heat Transfer, example 4.1',
    got: () => biotNumber(10, 0.1 / 6, 0.6),
  },
  {
    ...base,
    id: 'print.thermocouple',
    quantity: 'Time until a junction of 1 mm has lost 99 % of its temperature difference, 210 W/(m² K)',
    unit: 's',
    expected: 9.96,
    limit: 3e-3,
    source: `${thermocouplePage}; printed 9.96 s`,
    got: () => coolingState(thermocouple).setTime ?? Number.NaN,
  },
  {
    ...base,
    id: 'print.steelBall',
    quantity: 'Time constant of a steel ball of 20 mm in oil, 1000 W/(m² K)',
    unit: 's',
    expected: 13,
    limit: 1e-3,
    source: 'Worked example of a training page; printed 13 s; put in as a line of the same volume over surface',
    got: () => coolingState(steelBall).timeConstant,
  },
  {
    ...base,
    kind: 'exact',
    id: 'print.quenchOfGlass',
    quantity: 'Fall of temperature that brings soda-lime glass to its strength of 50 MPa',
    unit: 'K',
    expected: 61.9968,
    limit: 1e-5,
    source:
      'Form of Callister, Materials Science and Engineering, eq. 17.9: σ (1 − ν)/(E α); data of a textbook exercise, Poisson’s ratio from memory',
    got: () => fallFor({ young: 69e9, expansion: 9e-6, poisson: 0.23, setTemperature: 800 }, 50e6),
  },
];

/** All checks of the print side. */
export const printChecks: readonly Check[] = [...lineChecks, ...controllerChecks, ...meltChecks, ...coolingChecks];
