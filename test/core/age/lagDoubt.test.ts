/** A lag under doubt of the rate: one answer however the rate is doubled. */

import { expect, test } from 'vitest';
import { lawRun } from '../../../core/age/lawRun.ts';
import { nominalCorner, rangeCorners } from '../../../core/age/laws.ts';
import type { LagLaw } from '../../../core/material/kineticLaws.ts';

const law = {
  kind: 'lag',
  id: 'browning',
  rateAtReference: { value: 1e-3, low: 1e-3, high: 2e-3 },
  activation: { value: 1e5, low: 1e5, high: 1e5 },
  referenceTemperature: 453,
  lagAtReference: 600,
} as LagLaw;

test('a rate at twice its value shortens the lag as a factor of two does', () => {
  const quick = rangeCorners.find(({ rate }) => rate === 'high');
  if (!quick) throw new Error('no quick corner');
  const heat = [{ duration: 1, temperature: 453 }];
  const extentAt = (corner: typeof quick, age: number) => {
    const run = lawRun(law, corner);
    return run.extentOf(run.through(heat)(run.fresh, age));
  };
  for (const age of [100, 300, 600, 1200])
    expect(extentAt(quick, age)).toBeCloseTo(extentAt(nominalCorner, 2 * age), 12);
  expect(extentAt(nominalCorner, 1200)).toBeGreaterThan(extentAt(nominalCorner, 600));
});
