/** Colour science against points computed apart; published numbers are in core/checks/colour.ts. */

import { describe, expect, it } from 'vitest';
import { type Lab, labToSrgb, labToXyz, type Xyz } from '../../core/age/cielab.ts';
import { deltaE2000 } from '../../core/age/deltaE2000.ts';
import type { E313Condition } from '../../core/age/e313Coefficients.ts';
import { browningIndex, yellownessE313 } from '../../core/age/indices.ts';
import colours from './colour/colours.json';

const lab = (values: readonly number[]) => values as unknown as Lab;

describe('L*a*b*, XYZ, sRGB', () => {
  it.each(colours.recomputed.points)('point $lab', (point) => {
    const xyz = labToXyz(lab(point.lab));
    for (const i of [0, 1, 2]) expect(xyz[i]).toBeCloseTo(point.xyz[i], 3);
    expect(labToSrgb(lab(point.lab)).rgb).toEqual(point.srgb);
    expect(yellownessE313(xyz)).toBeCloseTo(point.yellownessE313, 2);
    expect(browningIndex(lab(point.lab))).toBeCloseTo(point.browningIndex, 2);
    expect(deltaE2000(lab(colours.recomputed.points[0].lab), lab(point.lab))).toBeCloseTo(point.dE00ToFirst, 4);
  });

  it('loses grip of deep brown in both indices, as their descriptions warn', () => {
    const [tan, brown] = [lab([40, 18, 30]), lab([25, 10, 12])];
    expect(yellownessE313(labToXyz(brown))).toBeLessThan(yellownessE313(labToXyz(tan)));
    expect(browningIndex(brown)).toBeLessThan(browningIndex(tan));
  });
});

describe('indices', () => {
  it.each(colours.yellowness)('$quantity', ({ condition, xyz, expected, limit }) => {
    const sample = xyz as unknown as Xyz;
    const got = yellownessE313(sample, condition as E313Condition);
    expect(Math.abs(got - expected)).toBeLessThan(limit);
  });

  it.each(colours.browning)('$quantity of $lab with $divisor', ({ lab: sample, divisor, expected, limit }) => {
    expect(Math.abs(browningIndex(lab(sample), divisor as 0.17 | 0.172) - expected)).toBeLessThanOrEqual(limit);
  });
});
