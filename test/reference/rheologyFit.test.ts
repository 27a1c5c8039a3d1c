/** A fit from a pasted table of published measurements; the numbers it must find are in core/checks/material.ts. */

import { expect, it } from 'vitest';
import { fitRheology } from '../../core/material/fit/fitRheology.ts';
import { parseRheologyTable } from '../../core/project/rheologyTable.ts';
import { expectOk } from '../helpers/projects.ts';

/** Polypropylene at 190 °C, reduced from capillary data: true shear rate, 1/s, and viscosity, Pa s. */
const points = [
  [322.8, 258.57],
  [645.59, 180.66],
  [1291.19, 126.27],
] as const;

it('fits the same from a pasted table with decimal commas, and says that its shear rates are few', () => {
  const text = ['Shear rate (1/s);Viscosity (Pa·s)', ...points.map((row) => row.join(';'))];
  const { points: read } = expectOk(parseRheologyTable(text.join('\n').replaceAll('.', ','), 190));
  const fit = expectOk(fitRheology('powerLaw', read));
  expect(Math.abs((fit.parameters.find(({ name }) => name === 'index')?.value ?? 0) / 0.483 - 1)).toBeLessThan(1e-3);
  expect(fit.warnings.map(({ code }) => code)).toContain('narrow-shear');
});
