import { expect, test } from 'vitest';
import { calibrated, plainFactors, withFactors } from '../../../core/design/calibrate.ts';
import type { LagLaw } from '../../../core/material/kineticLaws.ts';
import { viscosityAt } from '../../../core/material/viscosityLaw.ts';
import { loadDesign } from '../../helpers/projects.ts';

const design = loadDesign('demo', 'C');

test('factors scale viscosity at every rate, friction with its range, and the rate of the colour’s law alone', () => {
  const changed = withFactors(design, { feed: 0.5, wallFriction: 1.2, viscosity: 1.5, colourRate: 3 });
  for (const rate of [0.1, 10, 1000]) {
    const [base, thick] = [design, changed].map(({ material }) => viscosityAt(material.viscosityLaw(450, 1e6), rate));
    expect(thick / base).toBeCloseTo(1.5, 12);
  }
  expect(changed.material.frictionOnBarrel.high).toBeCloseTo(1.2 * design.material.frictionOnBarrel.high, 12);
  expect(changed.material.frictionOnScrew).toEqual(design.material.frictionOnScrew);
  const ratios = changed.material.degradation.map((law, i) => {
    const before = design.material.degradation[i];
    return 'rateAtReference' in law && 'rateAtReference' in before
      ? law.rateAtReference.value / before.rateAtReference.value
      : 0;
  });
  expect(ratios[0]).toBeCloseTo(3, 12);
  expect(ratios.slice(1)).toEqual([1, 1]);
  expect(changed.calibration?.feed.value).toBe(0.5);
});

test('a lag shortens as its law runs faster', () => {
  const one = { value: 2, low: 1, high: 4 };
  const law: LagLaw = {
    kind: 'lag',
    id: 'lagging',
    observed: 'x',
    validFrom: 400,
    validTo: 500,
    referenceTemperature: 450,
    rateAtReference: one,
    activation: one,
    lagAtReference: 60,
  };
  const lagging = { ...design, material: { ...design.material, degradation: [law], colourLaw: 'lagging' } };
  expect(withFactors(lagging, { ...plainFactors, colourRate: 2 }).material.degradation[0]).toMatchObject({
    lagAtReference: 30,
    rateAtReference: { value: 4, low: 2, high: 8 },
  });
});

test('a design without calibration stays itself, and none is calibrated twice', () => {
  expect(calibrated(design)).toBe(design);
  expect(() => withFactors(withFactors(design, plainFactors), plainFactors)).toThrow(RangeError);
});
