import { expect, test } from 'vitest';
import { predict } from '../../../core/index.ts';
import { axialSeries } from '../../../renderer/plots/axialSeries.ts';
import { pressureText } from '../../../renderer/plots/pressureUnit.ts';
import { loadDesign } from '../../helpers/projects.ts';

const design = loadDesign('demo');
const prediction = predict(design, { curvePoints: 0 });

test('pressure runs on from the screw through the nozzle down to what is outside', () => {
  let end = design.barrel.length;
  const ends = design.nozzle.segments.map((segment) => {
    end += segment.length;
    return end;
  });
  const series = axialSeries(prediction, ends, design.barrel.length);
  expect(series.z.every((z, i) => i === 0 || z >= (series.z[i - 1] ?? 0))).toBe(true);
  expect(series.z.at(-1)).toBeCloseTo(1000 * end, 6);
  expect(series.pressure[prediction.stations.count]).toBeCloseTo(prediction.output.headPressure / 1e6, 9);
  expect(series.pressure.at(-1)).toBeCloseTo(design.process.backPressure / 1e6, 2);
});

test('filling and melting are shares of 100; solids are told only where some are left, film only where there is one', () => {
  const at = prediction.axial.moltenShare.findIndex((share) => share > 0.1 && share < 0.9);
  const thin = prediction.axial.film.map((_, i) => (i === at ? 2e-4 : 0));
  const filmed = { ...prediction, axial: { ...prediction.axial, film: thin } };
  const { filled, molten, solid, film, z } = axialSeries(filmed, [], design.barrel.length);
  const last = prediction.stations.count - 1;
  expect(filled[last]).toBeCloseTo(100, 6);
  expect(molten[last]).toBe(100);
  expect(solid[last]).toBeNull();
  expect([filled, molten, solid, film].map((values) => values.length)).toEqual([
    z.length,
    z.length,
    z.length,
    z.length,
  ]);
  const melting = molten.findIndex((share) => share !== null && share > 10 && share < 90);
  expect(solid[melting]).toBeLessThan(prediction.axial.wallTemperature[melting] - 273.15);
  expect(film.flatMap((thickness, i) => (thickness === null ? [] : [[i, thickness]]))).toEqual([[at, 0.2]]);
});

test.each([
  [6.64e6, '6.64 MPa'],
  [188, '188 Pa'],
  [4200, '4.2 kPa'],
  [0, '0 MPa'],
])('%d Pa reads %s', (pressure, expected) => {
  expect(pressureText(pressure)).toBe(expected);
});
