import { describe, expect, test } from 'vitest';
import { srgbToXyz, xyzToLab } from '../../../core/age/cielab.ts';
import { photoColour, type RegionMean, regionMean } from '../../../core/bench/photoLab.ts';
import colours from '../../reference/colour/colours.json';

const region = (...pixels: readonly (readonly number[])[]): RegionMean => {
  const mean = regionMean(pixels.flatMap((rgb) => [...rgb, 255]));
  if (!mean) throw new Error('pixels count');
  return mean;
};
const plain = (rgb: readonly number[]) => region(...Array.from({ length: 200 }, () => rgb));
const white = plain([255, 255, 255]);

function labOf(strand: RegionMean, reference: RegionMean, lightness?: number): readonly number[] {
  const found = photoColour(strand, reference, lightness);
  if (!found.ok) throw new Error(found.issues[0].message);
  return found.value.lab;
}

describe('beside a full white, the colour is that of the pixels', () => {
  test.each([
    [255, 0, 0],
    [0, 255, 0],
    [0, 0, 255],
  ] as const)('full %i %i %i', (...rgb) => {
    const got = labOf(plain(rgb), white);
    xyzToLab(srgbToXyz(rgb)).forEach((value, i) => {
      expect(got[i]).toBeCloseTo(value, 6);
    });
  });

  test.each(colours.recomputed.points)('point $lab within the rounding of its pixels', ({ srgb, lab }) => {
    const got = labOf(plain(srgb), white);
    for (const i of [0, 1, 2]) expect(Math.abs(got[i] - lab[i])).toBeLessThan(0.6);
  });
});

describe('scaling by the white', () => {
  test('takes out dimmer and tinted light', () => {
    const light = [0.7, 0.6, 0.45];
    const seen = (linear: readonly number[]): RegionMean => ({
      linear: linear.map((value, k) => value * light[k]) as [number, number, number],
      unevenness: 0,
      blown: 0,
      pixels: 400,
    });
    const strand = plain([190, 133, 64]).linear;
    const [direct, mended] = [labOf(seen(strand), seen([1, 1, 1])), labOf(plain([190, 133, 64]), white)];
    for (const i of [0, 1, 2]) expect(direct[i]).toBeCloseTo(mended[i], 9);
  });

  test('a strand like the reference has the lightness said of the reference, and no hue', () => {
    const grey = plain([180, 180, 180]);
    const got = labOf(grey, grey, 94);
    expect(got[0]).toBeCloseTo(94, 6);
    for (const i of [1, 2]) expect(Math.abs(got[i])).toBeLessThan(0.01);
  });

  test('a mean is taken of light, not of screen values', () => {
    // own arithmetic: half black, half white is 50 % of the light, L* 76.07, although the mean screen value says 53.6
    const half = region(...Array.from({ length: 200 }, (_, i) => (i % 2 ? [255, 255, 255] : [0, 0, 0])));
    expect(labOf(half, white)[0]).toBeCloseTo(76.07, 2);
    expect(half.unevenness).toBeCloseTo(1, 6);
  });
});

describe('doubts', () => {
  const doubts = (strand: RegionMean, reference: RegionMean, lightness?: number) => {
    const found = photoColour(strand, reference, lightness);
    return found.ok ? found.value.doubts.join(' ') : '';
  };
  const good = plain([220, 220, 220]);

  test('none of a well lit picture', () => expect(doubts(plain([150, 120, 80]), good)).toBe(''));
  test('overexposed white', () => expect(doubts(plain([150, 120, 80]), white)).toMatch(/overexposed/));
  test('dark white', () => expect(doubts(plain([60, 50, 40]), plain([90, 90, 90]))).toMatch(/dark/));
  test('coloured light', () => expect(doubts(plain([150, 120, 80]), plain([240, 200, 150]))).toMatch(/coloured/));
  test('gloss', () => expect(doubts(plain([255, 250, 240]), plain([250, 250, 250]))).toMatch(/gloss/));
  test('few pixels', () => expect(doubts(region([150, 120, 80]), good)).toMatch(/few pixels/));
  test('lighter than the white', () => expect(doubts(plain([230, 230, 230]), good, 95)).toMatch(/lighter/));

  test('a black reference gives no colour', () => {
    const found = photoColour(plain([150, 120, 80]), plain([0, 0, 0]));
    expect(found).toMatchObject({ ok: false, issues: [{ code: 'white-too-dark' }] });
  });
});

test('transparent pixels do not count, and none is no region', () => {
  expect(regionMean([255, 0, 0, 255, 0, 0, 0, 0])?.linear).toEqual(region([255, 0, 0]).linear);
  expect(regionMean([1, 2, 3, 0])).toBeNull();
});
