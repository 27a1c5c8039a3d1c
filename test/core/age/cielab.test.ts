/** Colour conversions: inverses, limits, gamut. */

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Lab, labToSrgb, labToXyz, srgbToXyz, xyzToLab, xyzToSrgb } from '../../../core/age/cielab.ts';
import { deltaE2000 } from '../../../core/age/deltaE2000.ts';
import { d65White, linearSrgbToXyz, xyzToLinearSrgb } from '../../../core/age/srgbMatrices.ts';

const labs = fc.tuple(
  fc.double({ min: 0, max: 100, noNaN: true }),
  fc.double({ min: -60, max: 60, noNaN: true }),
  fc.double({ min: -60, max: 60, noNaN: true }),
);
const seeded = { seed: 20240611, numRuns: 300 };

describe('L*a*b* and XYZ', () => {
  it('are inverses, through the linear part too', () => {
    fc.assert(
      fc.property(labs, (lab: Lab) => {
        const back = xyzToLab(labToXyz(lab));
        for (const i of [0, 1, 2]) expect(back[i]).toBeCloseTo(lab[i], 9);
      }),
      seeded,
    );
  });

  it('white is (100, 0, 0), black (0, 0, 0)', () => {
    expect(xyzToLab(d65White)).toEqual([100, 0, 0]);
    for (const value of xyzToLab([0, 0, 0])) expect(value).toBeCloseTo(0, 12);
  });

  it('18.418651851244416 % reflectance is L* 50', () => {
    expect(xyzToLab([0, 18.418651851244416, 0])[0]).toBeCloseTo(50, 10);
  });
});

describe('sRGB', () => {
  it('matrices are inverse and carry white to white, primaries to their chromaticities', () => {
    for (const i of [0, 1, 2])
      for (const j of [0, 1, 2]) {
        const product = [0, 1, 2].reduce((sum, k) => sum + xyzToLinearSrgb[i][k] * linearSrgbToXyz[k][j], 0);
        expect(product).toBeCloseTo(i === j ? 1 : 0, 9);
      }
    // ITU-R BT.709 primaries
    const primaries = [
      [0.64, 0.33],
      [0.3, 0.6],
      [0.15, 0.06],
    ];
    for (const j of [0, 1, 2]) {
      const column = linearSrgbToXyz.map((row) => row[j]);
      const sum = column[0] + column[1] + column[2];
      expect([column[0] / sum, column[1] / sum].map((v) => Number(v.toFixed(9)))).toEqual(primaries[j]);
    }
    for (const i of [0, 1, 2]) {
      const [r, g, b] = linearSrgbToXyz[i];
      expect(100 * (r + g + b)).toBeCloseTo(d65White[i], 8);
    }
  });

  it('every grey and a cube of colours come back to the byte', () => {
    for (let c = 0; c < 256; c++) expect(labToSrgb(xyzToLab(srgbToXyz([c, c, c]))).rgb).toEqual([c, c, c]);
    for (let i = 0; i < 512; i++) {
      const rgb = [i & 7, (i >> 3) & 7, i >> 6].map((c) => Math.round((c * 255) / 7)) as [number, number, number];
      const back = labToSrgb(xyzToLab(srgbToXyz(rgb)));
      expect(back.rgb).toEqual(rgb);
      expect(back.inGamut).toBe(true);
    }
  });

  it('writes hex and flags what the screen cannot show', () => {
    expect(xyzToSrgb(d65White)).toEqual({ rgb: [255, 255, 255], hex: '#ffffff', inGamut: true });
    expect(labToSrgb([0, 0, 0]).hex).toBe('#000000');
    expect(labToSrgb([50, 120, 0]).inGamut).toBe(false);
    expect(labToSrgb([50, 120, 0]).hex).toMatch(/^#[0-9a-f]{6}$/);
  });
});

describe('CIEDE2000', () => {
  it('is zero on itself, positive elsewhere, symmetric', () => {
    fc.assert(
      fc.property(labs, labs, (first: Lab, second: Lab) => {
        expect(deltaE2000(first, first)).toBe(0);
        expect(deltaE2000(first, second)).toBeGreaterThanOrEqual(0);
        expect(Math.abs(deltaE2000(first, second) - deltaE2000(second, first))).toBeLessThan(1e-9);
      }),
      seeded,
    );
  });

  it('black to white is 100', () => expect(deltaE2000([0, 0, 0], [100, 0, 0])).toBeCloseTo(100, 10));
});
