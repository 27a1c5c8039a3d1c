/** Print demand, drive, strength and heat; more outside numbers are in core/checks/print.ts and drive.ts. */

import { describe, expect, test } from 'vitest';
import {
  fullTorque,
  highestScrewSpeed,
  pulloutTorque,
  stepsPerScrewTurn,
  usableTorque,
} from '../../core/drive/motor.ts';
import { torsionStress } from '../../core/drive/strength.ts';
import { enthalpyBetween } from '../../core/heat/enthalpy.ts';
import { lineArea, lineSpacing, passesPerWall, rectangleArea, stepsPerFilamentLength } from '../../core/print/bead.ts';
import { coolingState } from '../../core/print/cooling.ts';
import { coolingStress, fallFor } from '../../core/print/cracking.ts';
import { dripState, dropMass, heldHead, slowResistance } from '../../core/print/drip.ts';
import { firmwareNumbers } from '../../core/print/firmware.ts';
import { commonCompressibility, pressureTime, releaseState } from '../../core/print/ooze.ts';
import { pinchTime, strandState } from '../../core/print/strand.ts';

const mm = 1e-3;

describe('bead', () => {
  /** mm³/s, computed. */
  test.each([
    [0.45, 0.2, 100, 8.14],
    [1.2, 0.6, 30, 19.28],
    [2, 1, 20, 35.71],
  ])('%s x %s mm at %s mm/s', (width, height, speed, flow) => {
    expect(Math.abs(lineArea(width * mm, height * mm) * speed * mm * 1e9 - flow)).toBeLessThan(0.006);
  });

  test('neighbours at the spacing w - h (1 - pi/4) fill the rectangle between them exactly', () => {
    expect(lineSpacing(0.6, 0.3) * 0.3).toBeCloseTo(lineArea(0.6, 0.3), 12);
  });

  test('is continuous where the line is as wide as high', () => {
    expect(lineArea(0.5, 0.5)).toBeCloseTo(lineArea(0.4999999, 0.5), 6);
  });

  test('passes per wall: one for a single line, three for three lines at their spacing', () => {
    expect(passesPerWall(0.6, 0.6, 0.3)).toBe(1);
    expect(passesPerWall(0.2, 0.6, 0.3)).toBe(1);
    expect(passesPerWall(0.6 + 2 * lineSpacing(0.6, 0.3), 0.6, 0.3)).toBe(3);
  });
});

describe('line', () => {
  test('as a rectangle 0.6 x 0.3 mm at 100 mm/s take 18 mm³/s, 0.45 x 0.2 take 9.0 (flow-rate page)', () => {
    expect(rectangleArea(0.6, 0.3) * 100).toBeCloseTo(18, 9);
    expect(rectangleArea(0.45, 0.2) * 100).toBeCloseTo(9, 9);
  });

  test.each([0.1, 0.15, 0.25, 0.3])(
    'a wall of 1.8 mm at 0.45 mm is 4 passes at layers of %s mm (common practice)',
    (height) => {
      expect(passesPerWall(1.8, 0.45, height)).toBe(4);
    },
  );
});

describe('steps', () => {
  const drive = { fullStepsPerTurn: 200, microsteps: 16, gearRatio: 5.18 };

  test('200 x 16 x 5.18 is 16 576 a turn, 138.1 per mm³ at 120 mm³ a turn (computed)', () => {
    expect(stepsPerScrewTurn(drive)).toBeCloseTo(16_576, 6);
    expect(stepsPerScrewTurn(drive) / 120).toBeCloseTo(138.13, 2);
  });

  test('per mm of a virtual filament of 1.12838 mm as many as per mm³', () => {
    expect(stepsPerFilamentLength(100, 1.128379)).toBeCloseTo(100, 3);
  });

  /** Own arithmetic: 200 x 16 x 5.18 steps, 120 mm³ a turn, 15 mm³/s, 25 mm³ stored. */
  test('numbers for firmware of one machine', () => {
    const full = { ...drive, motorCurve: [], gearEfficiency: 1, usableTorqueShare: 1, bearing: null };
    const inputs = { screwSpeed: 0.125, volumeFlow: 15e-9, demand: 15e-9, storedVolume: 25e-9, advanceTime: 0.5 };
    const numbers = firmwareNumbers(full, { ...inputs, filamentDiameter: 1.75 * mm });
    expect((numbers.stepsPerVolume ?? 0) / 1e9).toBeCloseTo(138.13, 2);
    expect(numbers.filamentArea * 1e6).toBeCloseTo(2.4053, 4);
    expect((numbers.stepsPerLength ?? 0) / 1e3).toBeCloseTo(332.25, 1);
    expect(numbers.demandStepRate).toBeCloseTo(2072, 6);
    expect((numbers.fullStepVolume ?? 0) * 1e9).toBeCloseTo(0.116, 3);
    expect(((numbers.releaseAngle ?? 0) * 180) / Math.PI).toBeCloseTo(75, 9);
    expect((numbers.releaseLength ?? 0) * 1e3).toBeCloseTo(25 / 2.4053, 3);
    const plain = firmwareNumbers(full, { ...inputs, filamentDiameter: null });
    expect(plain.lengthIsVolume).toBe(true);
    expect(numbers.lengthIsVolume).toBe(false);
    expect((plain.stepsPerLength ?? 0) / 1e3).toBeCloseTo(138.13, 2);
    expect((Math.PI / 4) * 2.85 ** 2).toBeCloseTo(6.3794, 4);
  });
});

describe('motor', () => {
  const drive = {
    motorCurve: [
      { speed: 0, torque: 2 },
      { speed: 10, torque: 1 },
    ],
    gearRatio: 5,
    gearEfficiency: 0.9,
    usableTorqueShare: 0.6,
    fullStepsPerTurn: 200,
    microsteps: 16,
    bearing: null,
  };

  test('torque at the screw is curve x ratio x efficiency, share of it usable, nothing beyond the curve', () => {
    expect(highestScrewSpeed(drive)).toBe(2);
    expect(pulloutTorque(drive, 1)).toBeCloseTo(1.5 * 5 * 0.9, 12);
    expect(usableTorque(drive, 1)).toBeCloseTo(1.5 * 5 * 0.9 * 0.6, 12);
    expect(usableTorque(drive, 2.01)).toBe(0);
    expect(fullTorque(drive)).toBeCloseTo(9, 12);
  });
});

describe('strength', () => {
  /** Root torsion in MPa at 5, 10, 20 N m on 6, 8, 9 mm (computed from 16 T/(pi d³)). */
  test.each([
    [5, [118, 50, 35]],
    [10, [236, 99, 70]],
    [20, [472, 199, 140]],
  ])('%s N m', (torque, stresses) => {
    [6, 8, 9].forEach((diameter, i) => {
      expect(Math.abs(torsionStress(torque, diameter * mm) / 1e6 - stresses[i])).toBeLessThan(0.6);
    });
  });

  test('a 3 mm bore in an 8 mm root raises 99.5 to 101.5 MPa', () => {
    expect(torsionStress(10, 8 * mm) / 1e6).toBeCloseTo(99.5, 1);
    expect(torsionStress(10, 8 * mm, 3 * mm) / 1e6).toBeCloseTo(101.5, 1);
  });
});

describe('heat', () => {
  test('EN1: HDPE 1000 lb/h over 350 °F at 0.55 BTU/(lb °F) takes 192 500 BTU/h, 75.65 hp (article; its 74.86 is a slip)', () => {
    const capacity = (0.55 * 1055.05585262) / 0.45359237 / (5 / 9);
    const content = { heatCapacitySolid: capacity, heatCapacityMelt: capacity, heatOfFusion: 0, melting: 400 };
    const perHour = enthalpyBetween(content, 300, 300 + (350 * 5) / 9) * 1000 * 0.45359237;
    expect(perHour / 1055.05585262).toBeCloseTo(192_500, 3);
    expect(perHour / 3600 / 745.699872).toBeCloseTo(75.655, 2);
  });

  test('PLA at 15 mm³/s over 180 K: 6.0 W, 6.6 W with 30 kJ/kg of fusion (computed, 1240 kg/m³, 1.8 kJ/(kg K))', () => {
    const content = { heatCapacitySolid: 1800, heatCapacityMelt: 1800, heatOfFusion: 0, melting: 430 };
    const mass = 15e-9 * 1240;
    expect(mass * enthalpyBetween(content, 295, 475)).toBeCloseTo(6.0, 1);
    expect(mass * enthalpyBetween({ ...content, heatOfFusion: 30e3 }, 295, 475)).toBeCloseTo(6.6, 1);
  });
});

describe('ooze', () => {
  const resistance = (viscosity: number, diameter: number) =>
    (128 * viscosity * 2 * mm) / (Math.PI * (diameter * mm) ** 4);

  /** Own arithmetic: 5 cm³, 1e-9 per Pa, land of 2 mm. */
  test.each([
    [100, 0.4, 1.6],
    [100, 0.8, 0.1],
    [500, 0.4, 8],
    [2000, 0.8, 2],
  ])('%s Pa s through %s mm lets go in %s s', (viscosity, diameter, time) => {
    expect(Math.abs(pressureTime(5e-6, resistance(viscosity, diameter)) / time - 1)).toBeLessThan(0.03);
  });

  /** Own arithmetic: R = 9.95e13, 15 mm³/s ask for 1.49 MPa; 5 MPa store 25 mm³ and ooze 50 mm³/s at first. */
  test('resistance, stored melt and first ooze of the same head', () => {
    expect(
      slowResistance(500, [{ name: 'land', length: 2 * mm, startDiameter: 0.8 * mm, endDiameter: 0.8 * mm }]),
    ).toBeCloseTo(resistance(500, 0.8), -8);
    expect(resistance(500, 0.8) / 1e13).toBeCloseTo(9.95, 2);
    expect((resistance(500, 0.8) * 15e-9) / 1e6).toBeCloseTo(1.49, 2);
    const state = releaseState({
      compressibility: null,
      volume: 5e-6,
      pressure: 5e6,
      volumeFlow: 5e6 / resistance(500, 0.8),
      nozzleResistance: resistance(500, 0.8),
      screwResistance: null,
    });
    expect(state.stored.value * 1e9).toBeCloseTo(25, 9);
    expect(state.firstFlow * 1e9).toBeCloseTo(50.3, 1);
    expect(state.time.value).toBeCloseTo(0.5, 2);
  });

  /** Tait (CRC Handbook, Wohlfarth): C = 0.0894; B = 80, 100, 150 MPa from memory. */
  test.each([
    [80, 1.12],
    [100, 0.89],
    [150, 0.6],
  ])('B = %s MPa, %s e-9 per Pa, lies in the common range', (b, kappa) => {
    expect(Math.abs(0.0894 / (b * 1e-3) - kappa)).toBeLessThan(0.006);
    expect(kappa * 1e-9).toBeGreaterThanOrEqual(commonCompressibility.low);
    expect(kappa * 1e-9).toBeLessThanOrEqual(commonCompressibility.high);
  });

  test('a meniscus of R = 0.1, 0.2, 0.4 mm holds 57, 28, 14 mm of melt (25 mN/m, 900 kg/m³; computed)', () => {
    [57, 28, 14].forEach((head, i) => {
      expect(Math.abs(heldHead(0.025, 0.1 * mm * 2 ** i, 900) * 1000 - head)).toBeLessThan(0.6);
    });
  });

  /** Own arithmetic: 100 mm of 900 kg/m³ over a land of 2 mm, skin left out; mm³/min. */
  test.each([
    [500, 0.4, 0.03],
    [500, 0.8, 0.5],
    [100, 0.4, 0.17],
    [100, 0.8, 2.7],
    [10, 0.8, 27],
  ])('%s Pa s drip through %s mm with %s mm³/min', (viscosity, bore, rate) => {
    const land = { name: 'land', length: 2 * mm, startDiameter: bore * mm, endDiameter: bore * mm };
    const drip = dripState({ column: 0.1, density: 900, surfaceTension: null, viscosity, segments: [land] });
    expect(drip.weight).toBeCloseTo(883, 0);
    expect(drip.drips).toBeNull();
    expect(Math.abs((drip.rate * 60e9) / rate - 1)).toBeLessThan(0.12);
  });

  test('a drop off a tip of 1 mm weighs about 5 mg (Tate; share from memory)', () => {
    expect(dropMass(0.025, 0.5 * mm) * 1e6).toBeCloseTo(5.2, 1);
  });
});

describe('strand', () => {
  /** Own arithmetic, 25 mN/m, 900 kg/m³, 20 mm/s: viscosity, radius, capillary, Ohnesorge, pinch-off, reading. */
  test.each([
    [500, 0.2, 400, 7450, 56, 'strand'],
    [10, 0.4, 8, 105, 2.3, 'sags'],
    [1, 0.4, 0.8, 10.5, 0.23, 'sags'],
    [0.1, 0.4, 0.08, 1.05, 0.0226, 'drips'],
  ])('%s Pa s of %s mm', (viscosity, radius, capillary, ohnesorge, pinch, verdict) => {
    const state = strandState({
      viscosity,
      density: 900,
      surfaceTension: 0.025,
      radius: radius * mm,
      volumeFlow: 0.02 * Math.PI * (radius * mm) ** 2,
      gap: 0.8 * mm,
    });
    expect(Math.abs((state.capillary ?? 0) / capillary - 1)).toBeLessThan(0.01);
    expect(Math.abs((state.ohnesorge ?? 0) / ohnesorge - 1)).toBeLessThan(0.01);
    expect(Math.abs(pinchTime(viscosity, radius * mm, 0.025) / pinch - 1)).toBeLessThan(0.02);
    expect(state.verdict).toBe(verdict);
  });
});

describe('cooling', () => {
  /** Own arithmetic: 1240 kg/m³, 1800 J/(kg K), 0.13 W/(m K), 200 to 60 °C in 25 °C: Biot number and s at 30 and 60. */
  test.each([
    [0.4, 0.2, 0.016, 8.3, 0.032, 4.2],
    [0.8, 0.4, 0.032, 17, 0.064, 8.3],
    [1.2, 0.6, 0.048, 25, 0.096, 12.5],
    [2, 1, 0.08, 42, 0.16, 21],
  ])('%s x %s mm', (width, height, biotStill, still, biotBlown, blown) => {
    const at = (coefficient: number) =>
      coolingState({
        width: width * mm,
        height: height * mm,
        speed: 0.03,
        conductivity: 0.13,
        density: 1240,
        heatCapacity: 1800,
        heatOfFusion: 0,
        outlet: 473.15,
        setTemperature: 333.15,
        air: 298.15,
        coefficient,
      });
    expect(Math.abs(at(30).biot - biotStill)).toBeLessThan(6e-4);
    expect(Math.abs(at(60).biot - biotBlown)).toBeLessThan(6e-4);
    expect(Math.abs((at(30).setTime ?? 0) / still - 1)).toBeLessThan(0.025);
    expect(Math.abs((at(60).setTime ?? 0) / blown - 1)).toBeLessThan(0.025);
    expect(at(60).lumped).toBe(biotBlown < 0.1);
  });
});

describe('stress of cooling', () => {
  /** Data from a textbook exercise (form: Callister, eq. 17.9); Poisson's ratios from memory; K of quench, computed. */
  test.each([
    ['borosilicate glass', 70e9, 50e6, 3.3e-6, 0.2, 173],
    ['soda-lime glass of 69 MPa', 69e9, 69e6, 9e-6, 0.23, 86],
  ])('%s', (_, young, strength, expansion, poisson, fall) => {
    const glass = { young, expansion, poisson, setTemperature: 800 };
    expect(Math.abs(fallFor(glass, strength) - fall)).toBeLessThan(0.6);
    expect(coolingStress(glass, fallFor(glass, strength))).toBeCloseTo(strength, 3);
  });

  test('3.5 GPa, 70e-6 a kelvin, 0.36, 40 K below setting: 15 MPa (own arithmetic)', () => {
    expect(coolingStress({ young: 3.5e9, expansion: 70e-6, poisson: 0.36, setTemperature: 333 }, 40) / 1e6).toBeCloseTo(
      15.3,
      1,
    );
  });
});
