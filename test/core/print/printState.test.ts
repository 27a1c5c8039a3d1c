import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { Design } from '../../../core/design/types.ts';
import { fittedWidth, linePerimeter, lineSpacing, lineState, passesPerWall } from '../../../core/print/bead.ts';
import { coolingState } from '../../../core/print/cooling.ts';
import { crackState } from '../../../core/print/cracking.ts';
import { dripState } from '../../../core/print/drip.ts';
import { firmwareNumbers } from '../../../core/print/firmware.ts';
import { pressureTime, releaseState, timeUntilLeft } from '../../../core/print/ooze.ts';
import { type PrintInputs, printState } from '../../../core/print/printState.ts';
import { strandState } from '../../../core/print/strand.ts';
import { nonFinite } from '../../helpers/finite.ts';
import { exampleNames, loadDesign } from '../../helpers/projects.ts';

const seeded = { seed: 20261125, numRuns: 200 };
const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('line', () => {
  test('lines of the fitted width at their spacing fill the wall exactly', () => {
    fc.assert(
      fc.property(double(0.5, 30), double(0.3, 3), double(0.2, 1), (wall, width, share) => {
        const height = share * width;
        const passes = passesPerWall(wall, width, height);
        expect(passes).toBeGreaterThanOrEqual(1);
        const fitted = fittedWidth(wall, passes, height);
        const spacing = fitted - height * (1 - Math.PI / 4);
        expect(fitted + (passes - 1) * spacing).toBeCloseTo(wall, 9);
        if (passes > 1)
          expect(Math.abs(wall - width - (passes - 1) * lineSpacing(width, height))).toBeLessThan(0.56 * width);
      }),
      seeded,
    );
  });

  test('perimeter: a circle where as wide as high, from either side', () => {
    expect(linePerimeter(1, 1)).toBeCloseTo(Math.PI, 12);
    expect(linePerimeter(1 - 1e-9, 1)).toBeCloseTo(Math.PI, 6);
    expect(linePerimeter(3, 1)).toBeCloseTo(4 + Math.PI, 12);
  });

  test('proportions: bounds count as good, past them not', () => {
    const at = (width: number, height: number) => lineState(4, width, height, 1);
    expect(at(1.05, 0.2)).toMatchObject({ width: 'good', height: 'good' });
    expect(at(1.5, 0.8)).toMatchObject({ width: 'good', height: 'good' });
    expect(at(1.04, 0.19)).toMatchObject({ width: 'narrow', height: 'thin' });
    expect(at(1.51, 0.81)).toMatchObject({ width: 'wide', height: 'high' });
  });
});

describe('release', () => {
  const inputs = {
    compressibility: { value: 1e-9, low: 0.5e-9, high: 2e-9 },
    volume: 2e-6,
    pressure: 4e6,
    volumeFlow: 20e-9,
    nozzleResistance: 4e6 / 20e-9,
    screwResistance: null,
  };

  test('both ways together are faster than either, and share the stored melt', () => {
    const shut = releaseState(inputs);
    const leaky = releaseState({ ...inputs, screwResistance: inputs.nozzleResistance });
    expect(leaky.time.value).toBeCloseTo(shut.time.value / 2, 12);
    expect(leaky.nozzleShare).toBeCloseTo(0.5, 12);
    expect(leaky.ooze.value).toBeCloseTo(shut.stored.value / 2, 18);
    expect(shut.ooze.value).toBe(shut.stored.value);
    expect(pressureTime(1, 2, 3, Number.POSITIVE_INFINITY)).toBe(6);
  });

  test('Newtonian: exponential; 1 - 1/e out after one time constant', () => {
    const { curve, ooze, time } = releaseState(inputs);
    const i = curve.volume.length - 1;
    expect(curve.volume[i] / ooze.value).toBeCloseTo(0.9, 9);
    expect(curve.time[i]).toBeCloseTo(time.value * Math.log(10), 9);
    expect(timeUntilLeft(1 / Math.E, 1)).toBeCloseTo(1, 12);
  });

  test('shear-thinning starts as fast and ends later; its law meets the pressure’s own rate', () => {
    const thin = releaseState({ ...inputs, nozzleResistance: 0.3 * inputs.nozzleResistance });
    const plain = releaseState(inputs);
    expect(thin.index).toBeCloseTo(0.3, 12);
    expect(thin.firstFlow).toBe(plain.firstFlow);
    expect(thin.time90.value).toBeGreaterThan(10 * plain.time90.value);
    // d(p)/dt = -p^(1/n), by differences
    const n = 0.4;
    const left = 0.35;
    const slope = 2e-6 / (timeUntilLeft(left + 1e-6, n) - timeUntilLeft(left - 1e-6, n));
    expect(slope / -(left ** (1 / n))).toBeCloseTo(1, 6);
    expect(timeUntilLeft(1, n)).toBe(0);
  });

  test('the range of compressibility is the range of ooze; unknown takes the common one and says so', () => {
    const { ooze, time, compressibilityKnown } = releaseState(inputs);
    expect(ooze.low / ooze.value).toBeCloseTo(0.5, 12);
    expect(time.high / time.value).toBeCloseTo(2, 12);
    expect(compressibilityKnown).toBe(true);
    expect(releaseState({ ...inputs, compressibility: null }).compressibilityKnown).toBe(false);
  });

  test.each([
    ['no flow', { volumeFlow: 0 }],
    ['no pressure', { pressure: 0 }],
    ['suction', { pressure: -1e5 }],
    ['no resistance', { nozzleResistance: 0 }],
  ])('%s: nothing stored, nothing infinite', (_, change) => {
    const state = releaseState({ ...inputs, ...change });
    expect(state.stored.value).toBe(0);
    expect(nonFinite(state)).toEqual([]);
  });
});

describe('drip', () => {
  const land = { name: 'land', length: 2e-3, startDiameter: 0.8e-3, endDiameter: 0.8e-3 };
  const melt = { density: 900, surfaceTension: 0.025, viscosity: 10, segments: [land] };

  test('the skin holds up to its head, and not beyond', () => {
    expect(dripState({ ...melt, column: 14.1e-3 })).toMatchObject({ drips: false, rate: 0, dropTime: null });
    const over = dripState({ ...melt, column: 14.2e-3 });
    expect(over.drips).toBe(true);
    expect(over.rate).toBeGreaterThan(0);
    expect(over.dropTime ?? 0).toBeCloseTo((over.dropMass ?? 0) / (900 * over.rate), 9);
  });

  test('a cone before the land slows it', () => {
    const cone = { name: 'cone', length: 5e-3, startDiameter: 3e-3, endDiameter: 0.8e-3 };
    const slower = dripState({ ...melt, column: 0.1, segments: [cone, land] });
    expect(slower.rate).toBeLessThan(dripState({ ...melt, column: 0.1 }).rate);
  });
});

describe('strand', () => {
  const melt = { viscosity: 500, density: 900, surfaceTension: 0.025, radius: 4e-4, volumeFlow: 1e-8, gap: 8e-4 };

  test('a wider gap or a slower flow never makes it firmer', () => {
    fc.assert(
      fc.property(double(1e-3, 1e3), double(1, 100), (viscosity, factor) => {
        const near = strandState({ ...melt, viscosity }).number ?? 0;
        expect(strandState({ ...melt, viscosity, gap: melt.gap * factor }).number ?? 0).toBeLessThanOrEqual(near);
        expect(strandState({ ...melt, viscosity, volumeFlow: 1e-8 / factor }).number ?? 0).toBeLessThanOrEqual(near);
      }),
      seeded,
    );
  });

  test('cannot be told without surface tension or flow', () => {
    expect(strandState({ ...melt, surfaceTension: null })).toMatchObject({ verdict: null, number: null });
    const still = strandState({ ...melt, volumeFlow: 0 });
    expect(still).toMatchObject({ verdict: null, gapTime: null });
    expect(nonFinite(still)).toEqual([]);
  });
});

describe('cooling', () => {
  const line = {
    width: 1.2e-3,
    height: 0.6e-3,
    speed: 0.03,
    conductivity: 0.13,
    density: 1240,
    heatCapacity: 1800,
    heatOfFusion: 0,
    outlet: 473,
    setTemperature: 333,
    air: 298,
    coefficient: 30,
  };

  test('heat of fusion adds its own time, air above setting never sets, unknown setting is told apart', () => {
    const dry = coolingState(line).setTime ?? 0;
    const size = (0.6 * 0.6 + (Math.PI / 4) * 0.36) / (1.2 + 0.6 * Math.PI);
    const more = coolingState({ ...line, heatOfFusion: 1e5 }).setTime ?? 0;
    expect(more - dry).toBeCloseTo((1240 * size * 1e-3 * 1e5) / (30 * 35), 6);
    expect(coolingState({ ...line, air: 340 })).toMatchObject({ setTime: null, reason: 'neverSets' });
    expect(coolingState({ ...line, setTemperature: null })).toMatchObject({ setTime: null, reason: 'unknown' });
    expect(coolingState({ ...line, outlet: 320 }).setTime).toBe(0);
  });
});

describe('cooling stress', () => {
  const glassy = { young: 3.5e9, strength: 60e6, expansion: 70e-6, poisson: 0.36, setTemperature: 333 };

  test('at the wanted temperature the stress is half the strength', () => {
    const cold = crackState(glassy, { bed: null, chamber: null, ambient: 150 });
    expect(cold.verdict).toBe('exceeds');
    const wanted = cold.wantedTemperature ?? 0;
    const held = crackState(glassy, { bed: wanted, chamber: wanted, ambient: 150 });
    expect(held.share).toBeCloseTo(0.5, 9);
    expect(crackState(glassy, { bed: wanted + 1, chamber: wanted + 1, ambient: 150 }).verdict).toBe('low');
    expect(crackState(glassy, { bed: wanted - 1, chamber: 333, ambient: 150 }).verdict).toBe('risky');
  });

  test('above setting there is none; without mechanics it cannot be told; without expansion nothing is wanted', () => {
    expect(crackState(glassy, { bed: 340, chamber: 350, ambient: 293 })).toMatchObject({ share: 0, verdict: 'low' });
    expect(crackState(null, { bed: null, chamber: null, ambient: 293 }).verdict).toBeNull();
    const stiff = crackState({ ...glassy, expansion: 0 }, { bed: null, chamber: null, ambient: 293 });
    expect(stiff).toMatchObject({ share: 0, wantedTemperature: null });
  });
});

describe('the whole', () => {
  const inputs: PrintInputs = {
    screwSpeed: 0.2,
    volumeFlow: 30e-9,
    headPressure: 5e6,
    headResistance: 8e13,
    screwResistance: 4e14,
    storedVolume: 3e-6,
    column: 0.1,
    outlet: 460,
  };

  test.each(exampleNames)('%s: running and standing, every number is finite', (name) => {
    const design: Design = loadDesign(name);
    expect(nonFinite(printState(design, inputs))).toEqual([]);
    const still = printState(design, { ...inputs, volumeFlow: 0, screwSpeed: 0, headPressure: 0 });
    expect(nonFinite(still)).toEqual([]);
    expect(still.firmware).toMatchObject({ stepsPerVolume: null, releaseAngle: null, advanceTime: null });
  });

  test('firmware: steps of the demand make the demand', () => {
    const { drive } = loadDesign('demo', 'C');
    const asked = { volumeFlow: 30e-9, demand: 20e-9, filamentDiameter: null, storedVolume: 1e-9, advanceTime: 0.1 };
    const numbers = firmwareNumbers(drive, { ...asked, screwSpeed: 0.2 });
    expect((numbers.demandStepRate ?? 0) * (numbers.microstepVolume ?? 0)).toBeCloseTo(20e-9, 15);
  });
});
