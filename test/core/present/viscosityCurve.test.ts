import { expect, test } from 'vitest';
import { viscosityCurve } from '../../../core/present/viscosityCurve.ts';
import { loadMaterial } from '../../helpers/projects.ts';

const newtonian = {
  model: 'newtonian' as const,
  viscosityPaS: { value: 50, source: 'made up for a test', status: 'invented' as const },
  shift: { kind: 'none' as const },
};

test('three curves over the window, the coldest on top, labelled with units', () => {
  const curves = viscosityCurve(loadMaterial('pla'));
  expect(curves.map(({ name }) => name)).toEqual(['180 °C', '200 °C', '220 °C']);
  expect(curves[0]).toMatchObject({ xLabel: 'Shear rate', xUnit: '1/s', yLabel: 'Viscosity', yUnit: 'Pa·s' });
  const [cold, mid, hot] = curves.map(({ y }) => y);
  for (const index of mid?.keys() ?? []) {
    expect(cold?.[index]).toBeGreaterThan(mid?.[index] ?? 0);
    expect(mid?.[index]).toBeGreaterThan(hot?.[index] ?? 0);
  }
});

test('rates run from 0.1 to 10 000 1/s in even decades', () => {
  const [{ x }] = viscosityCurve(loadMaterial('pla'));
  expect([x[0], x.at(-1), x.length]).toEqual([0.1, expect.closeTo(1e4, 6), 61]);
  expect((x[1] ?? 0) / (x[0] ?? 1)).toBeCloseTo((x[60] ?? 0) / (x[59] ?? 1), 9);
});

test('a filler lifts a flat curve by (1 - phi/phiMax)^-2', () => {
  const pla = { ...loadMaterial('pla'), rheology: newtonian };
  const value = (v: number) => ({ ...newtonian.viscosityPaS, value: v });
  const filler = { volumeFraction: value(0.3), maxPacking: value(0.6) };
  expect(new Set(viscosityCurve(pla)[1]?.y)).toEqual(new Set([50]));
  expect(viscosityCurve({ ...pla, filler })[1]?.y[30]).toBeCloseTo(200, 9);
});
