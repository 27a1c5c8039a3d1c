/** Checks of motor, shaft, bearing and walls. */

import { bearingLoad, ratedTurns } from '../drive/bearing.ts';
import { torqueOfPower } from '../drive/motor.ts';
import { shoulderFactor } from '../drive/notch.ts';
import { thickHoop, thinHoop, wallEquivalent } from '../drive/pressureWall.ts';
import { bowing, bucklingLoad, thrustOf, torsionStress, twistOf } from '../drive/strength.ts';
import { inch, psi } from './textbookScrew.ts';
import type { Check } from './types.ts';

const base = { stage: 'drive', measure: 'relative', kind: 'published' } as const;
const poundForce = psi * inch ** 2;

const gere = 'J. M. Gere, Mechanics of Materials, problem 3.11-3';
const notchTable = 'Web table of shoulders in torsion, after Peterson’s charts';
const bearingPage = 'Worked example to ISO 281 on a calculator page: C = 30 kN, P = 5 kN, 1500 rpm';

/** Gere's shaft: 1 in to a thinner one, full quarter-circle fillet. */
const gereFactor = (name: string, thin: number, printed: number): Check => ({
  ...base,
  id: `drive.notch${name}`,
  quantity: `Stress factor of a shaft stepping from 1 in to ${thin} in in torsion, full fillet`,
  unit: '',
  expected: printed,
  limit: 0.03,
  source: `${gere}; factor ${printed} read from a chart`,
  got: () => shoulderFactor(inch, thin * inch, ((1 - thin) / 2) * inch),
});

const tableFactor = (name: string, thick: number, fillet: number, printed: number): Check => ({
  ...base,
  id: `drive.notch${name}`,
  quantity: `Stress factor of a shoulder in torsion, diameters ${thick} to 1, fillet ${fillet} of the thin one`,
  unit: '',
  expected: printed,
  limit: 0.05,
  source: notchTable,
  got: () => shoulderFactor(thick, 1, fillet),
});

const shaftChecks: readonly Check[] = [
  gereFactor('To07', 0.7, 1.2),
  gereFactor('To08', 0.8, 1.29),
  gereFactor('To09', 0.9, 1.41),
  tableFactor('SmallStepSharp', 1.1, 0.05, 1.5),
  tableFactor('SmallStep', 1.1, 0.1, 1.3),
  tableFactor('LargeStep', 2, 0.1, 1.6),
  {
    ...base,
    id: 'drive.shearOfShaft',
    quantity: 'Greatest shear in a shaft of 0.7 in under 500 lb in, factor 1.20',
    unit: 'psi',
    expected: 8900,
    limit: 3e-3,
    source: `${gere}; printed 8900`,
    got: () => (1.2 * torsionStress(500 * poundForce * inch, 0.7 * inch)) / psi,
  },
  {
    ...base,
    id: 'drive.shearOf4inShaft',
    quantity: 'Greatest shear in a shaft of 4 in under 15 kip ft',
    unit: 'ksi',
    expected: 14.32,
    limit: 5e-4,
    source: 'Singer, Strength of Materials, problem 304, as solved on a course page; printed 14.32',
    got: () => torsionStress(15e3 * poundForce * 12 * inch, 4 * inch) / psi / 1e3,
  },
  {
    ...base,
    id: 'drive.windUp',
    quantity: 'Wind-up of a steel shaft of 113.98 mm, 6 m long, under 12 kN m',
    unit: '°',
    expected: 3,
    limit: 5e-4,
    source:
      'Singer, Strength of Materials, problem on a shaft that may twist 3° (83 GPa in shear), as solved on a course page: 113.98 mm',
    got: () => (twistOf(12e3, 2.6 * 83e9, [{ length: 6, start: 0.11398, end: 0.11398 }]) * 180) / Math.PI,
  },
  {
    ...base,
    id: 'drive.bowing',
    quantity: 'Load at which a steel column of 4 m and 1.6e-4 m⁴ bows out, ends free to turn',
    unit: 'MN',
    expected: 20,
    limit: 0.015,
    source:
      'Examination question with solution, π² rounded to 10: printed 20 000 kN; put in as a round bar of the same stiffness',
    got: () => bucklingLoad(200e9, ((64 * 1.6e-4) / Math.PI) ** 0.25, 4, bowing.held) / 1e6,
  },
];

const motorChecks: readonly Check[] = [
  {
    ...base,
    id: 'drive.torqueOf55kW',
    quantity: 'Torque of 55 kW at 100 rpm, less 5 % in the gear',
    unit: 'N m',
    expected: 5000,
    limit: 3e-3,
    source: 'Trade article on extruder drives; printed 5000',
    got: () => 0.95 * torqueOfPower(55e3, 100 / 60),
  },
  {
    ...base,
    id: 'drive.torqueOfHorsepower',
    quantity: 'Torque of 1 hp at 1 rpm',
    unit: 'in lb',
    expected: 63025,
    limit: 1e-5,
    source: 'Conversion printed in drive handbooks: 63 025 hp/rpm',
    got: () => torqueOfPower(745.699872, 1 / 60) / (poundForce * inch),
  },
];

const loadChecks: readonly Check[] = [
  {
    ...base,
    id: 'drive.lifeOfBallBearing',
    quantity: 'Life of a ball bearing rated 30 kN under 5 kN',
    unit: 'million turns',
    expected: 216,
    limit: 1e-6,
    source: bearingPage,
    got: () => ratedTurns(30e3, 5e3, 'ball') / 1e6,
  },
  {
    ...base,
    id: 'drive.lifeOfRollerBearing',
    quantity: 'Life of a roller bearing rated 30 kN under 5 kN',
    unit: 'million turns',
    expected: 392,
    limit: 2e-3,
    source: bearingPage,
    got: () => ratedTurns(30e3, 5e3, 'roller') / 1e6,
  },
  {
    ...base,
    id: 'drive.hoursOfBallBearing',
    quantity: 'Life of a ball bearing rated 30 kN under 5 kN at 1500 rpm',
    unit: 'h',
    expected: 2400,
    limit: 1e-6,
    source: bearingPage,
    got: () => {
      const load = bearingLoad({ kind: 'ball', staticLoad: 30e3, dynamicLoad: 30e3 }, 5e3, 5e3, 25);
      return (load.lifeTime ?? Number.NaN) / 3600;
    },
  },
  {
    ...base,
    kind: 'exact',
    id: 'drive.thrust',
    quantity: 'Thrust of 10 MPa on a screw of 16 mm',
    unit: 'N',
    expected: 2010.62,
    limit: 1e-5,
    source: 'Pressure over the bore',
    got: () => thrustOf(10e6, 0.016),
  },
  {
    ...base,
    id: 'drive.hoopOfThinTube',
    quantity: 'Hoop stress of a tube of 1 m and 10 mm wall under 5 MPa, thin-wall form',
    unit: 'MPa',
    expected: 250,
    limit: 1e-6,
    source: 'Examination question with solution: printed 250 N/mm²',
    got: () => thinHoop(5e6, 1, 1.02) / 1e6,
  },
  {
    ...base,
    kind: 'exact',
    id: 'drive.hoopOfThickTube',
    quantity: 'Hoop stress at the bore of a tube twice as wide outside, 30 MPa inside',
    unit: 'MPa',
    expected: 50,
    limit: 1e-9,
    source: 'Lamé 1852: 5/3 of the pressure',
    got: () => thickHoop(30e6, 0.01, 0.02) / 1e6,
  },
  {
    ...base,
    kind: 'exact',
    id: 'drive.equivalentOfThickTube',
    quantity: 'Stress to be held against yield in a tube twice as wide outside, 30 MPa inside',
    unit: 'MPa',
    expected: 80,
    limit: 1e-9,
    source: 'Lamé with the greatest shear after Tresca: 8/3 of the pressure',
    got: () => wallEquivalent(30e6, 0.01, 0.02) / 1e6,
  },
];

/** All checks of the drive. */
export const driveChecks: readonly Check[] = [...shaftChecks, ...motorChecks, ...loadChecks];
