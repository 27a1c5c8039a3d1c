/** Fits of viscosity laws against published measurements and worked examples. */

import { describe, expect, it } from 'vitest';
import { fitRheology, fittedViscosity } from '../../core/material/fit/fitRheology.ts';
import { viscosityLawOf } from '../../core/material/rheology.ts';
import { viscosityAt } from '../../core/material/viscosityLaw.ts';
import { parseRheologyTable } from '../../core/project/rheologyTable.ts';
import { expectOk, loadMaterial } from '../helpers/projects.ts';

const off = (got: number, expected: number) => Math.abs(got / expected - 1);

describe('capillary data of polypropylene, 190 °C, die of 2 mm', () => {
  // Data of an exercise (believed, from memory, to be of McCrum, Buckley and Bucknall, Principles of Polymer
  // Engineering): pressure, MPa, for dies of 5, 10 and 20 mm at 2, 4 and 8e-7 m³/s. The reduced figures are our own
  // arithmetic: end correction 4.00 R, n = 0.4830, K = 5125 Pa s^n.
  const radius = 1e-3;
  const lengths = [5e-3, 10e-3, 20e-3];
  const runs = [
    { flow: 2e-7, pressures: [1.502e6, 2.337e6, 4.006e6] },
    { flow: 4e-7, pressures: [2.1e6, 3.266e6, 5.599e6] },
    { flow: 8e-7, pressures: [2.935e6, 4.565e6, 7.826e6] },
  ];
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  /** Bagley line: slope Pa/m and the length, in radii, by which the die seems longer. */
  const lines = runs.map(({ flow, pressures }) => {
    const [l, p] = [mean(lengths), mean(pressures)];
    const over = lengths.reduce((sum, length, i) => sum + (length - l) * ((pressures[i] ?? 0) - p), 0);
    const slope = over / lengths.reduce((sum, length) => sum + (length - l) ** 2, 0);
    return {
      rate: (4 * flow) / (Math.PI * radius ** 3),
      stress: (slope * radius) / 2,
      ends: (p - slope * l) / slope / radius,
    };
  });
  const steps = lines.slice(1).map((line, i) => Math.log(line.stress / (lines[i]?.stress ?? 0)) / Math.log(2));
  const index = mean(steps);
  /** Rabinowitsch 1929. */
  const trueRate = (rate: number) => ((3 * index + 1) / (4 * index)) * rate;
  const points = lines.map(({ rate, stress }) => ({
    shearRate: trueRate(rate),
    temperature: 463.15,
    viscosity: stress / trueRate(rate),
  }));

  it('gives the end correction of 4 radii', () => {
    for (const { ends } of lines) expect(off(ends, 4)).toBeLessThan(0.005);
  });

  it('fits n = 0.4830 and K = 5125 Pa s^n', () => {
    const fit = expectOk(fitRheology('powerLaw', points));
    const value = (name: string) => fit.parameters.find((one) => one.name === name)?.value ?? 0;
    expect(off(value('index'), 0.483)).toBeLessThan(5e-4);
    expect(off(value('consistencyPaSn'), 5125)).toBeLessThan(5e-3);
    expect(fit.warnings.map(({ code }) => code)).toContain('narrow-shear');
  });

  it('fits the same from the pasted table', () => {
    const text = [
      'Shear rate (1/s);Viscosity (Pa·s)',
      ...points.map(({ shearRate, viscosity }) => `${shearRate.toFixed(2)};${viscosity.toFixed(2)}`),
    ];
    const { points: read } = expectOk(parseRheologyTable(text.join('\n').replaceAll('.', ','), 190));
    const fit = expectOk(fitRheology('powerLaw', read));
    expect(off(fit.parameters.find(({ name }) => name === 'index')?.value ?? 0, 0.483)).toBeLessThan(1e-3);
  });
});

/** Readings of a shipped material's law. */
function readings(id: string, celsius: readonly number[], rates: readonly number[]) {
  const law = viscosityLawOf(loadMaterial(id));
  return celsius.flatMap((at) =>
    rates.map((shearRate) => {
      const temperature = at + 273.15;
      return { shearRate, temperature, viscosity: viscosityAt(law(temperature, 0), shearRate) };
    }),
  );
}

describe('worked examples', () => {
  it('LDPE: a power law fitted to readings gives the printed 373.1 Pa s at 200 °C and 500 1/s', () => {
    // Rao, plastics design-data handbook (Hanser, title inferred), worked example to eq. 1.32.
    const points = readings('ldpe', [180, 200, 220], [50, 200, 1000, 3000]);
    const fit = expectOk(fitRheology('powerLaw', points, { shift: 'exponential', referenceTemperature: 473.15 }));
    expect(off(fittedViscosity(fit, 500, 473.15).value, 373.1)).toBeLessThan(5e-4);
  });

  it('ABS: a Cross-WLF law fitted to readings gives the printed 2210 Pa s at rest and 120 Pa s at 2000 1/s, 239 °C', () => {
    // Kazmer, Injection Mold Design Engineering, ch. 5; the printed constants themselves give 2190 at rest.
    const points = readings('abs', [220, 239, 255], [0.1, 1, 10, 100, 1000, 5000]);
    const rheology = loadMaterial('abs').rheology;
    const reference = rheology.model === 'crossWlf' ? rheology.d2K.value : 0;
    const fit = expectOk(fitRheology('crossWlf', points, { referenceTemperature: reference }));
    expect(off(fittedViscosity(fit, 1e-4, 512.15).value, 2210)).toBeLessThan(0.012);
    expect(off(fittedViscosity(fit, 2000, 512.15).value, 120)).toBeLessThan(0.003);
  });
});
