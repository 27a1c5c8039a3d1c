/** Colour of a strand from a picture that shows a white reference beside it. */

import { type Lab, labToSrgb, labToXyz, type Srgb, srgbToXyz, type Xyz, xyzToLab } from '../age/cielab.ts';
import { linearSrgbToXyz } from '../age/srgbMatrices.ts';
import { fail, type Issue, ok, type Result } from '../result.ts';

/** A region of a picture, averaged where light adds up: before the screen's curve. */
export interface RegionMean {
  /** red, green, blue as linear light, 0 to 1 */
  readonly linear: readonly [number, number, number];
  /** standard deviation of the linear green channel over its mean: how uneven the region is */
  readonly unevenness: number;
  /** share of pixels with a channel at its upper or lower end, where the camera lost what was there */
  readonly blown: number;
  readonly pixels: number;
}

/** A colour with what to mind about it. */
export interface PhotoColour {
  readonly lab: Lab;
  /** the same for the screen */
  readonly srgb: Srgb;
  /** what of the picture speaks against it, for people */
  readonly doubts: readonly string[];
}

/** Linear light of the 256 values of a channel: the luminance of a grey is its channel's linear value. */
const linearOf = Float64Array.from({ length: 256 }, (_, v) => srgbToXyz([v, v, v])[1] / 100);

/** At or beyond these a channel is counted as cut. */
const [lowEnd, highEnd] = [1, 254];

/**
 * Mean of a region.
 * @param rgba red, green, blue, alpha of each pixel, 0 to 255, as canvases hand out; transparent pixels do not count
 * @returns null where no pixel counts
 */
export function regionMean(rgba: ArrayLike<number>): RegionMean | null {
  const sum = [0, 0, 0];
  let [squares, blown, pixels] = [0, 0, 0];
  for (let i = 0; i + 3 < rgba.length; i += 4) {
    if (rgba[i + 3] < 255) continue;
    pixels++;
    let cut = false;
    for (let k = 0; k < 3; k++) {
      const value = rgba[i + k];
      sum[k] += linearOf[value];
      cut ||= value <= lowEnd || value >= highEnd;
    }
    squares += linearOf[rgba[i + 1]] ** 2;
    if (cut) blown++;
  }
  if (pixels === 0) return null;
  const [red, green, blue] = sum.map((value) => value / pixels);
  const variance = Math.max(0, squares / pixels - green * green);
  return {
    linear: [red, green, blue],
    unevenness: green > 0 ? Math.sqrt(variance) / green : 0,
    blown: blown / pixels,
    pixels,
  };
}

/** Common practice: a reference darker than this leaves too few steps of the camera, brighter ones are near its end. */
const darkestWhite = 0.2;
/** Shares and unevenness above which a person should look again; common practice. */
const [mostBlown, mostUneven, fewestPixels] = [0.01, 0.1, 100];

function doubtsOf(strand: RegionMean, white: RegionMean, lab: Lab, whiteLightness: number): string[] {
  const doubts: string[] = [];
  const green = white.linear[1];
  const [least, most] = [Math.min(...white.linear), Math.max(...white.linear)];
  if (white.blown > mostBlown)
    doubts.push('The white reference is overexposed: the colour comes out too light. Expose less.');
  if (green < darkestWhite) doubts.push('The white reference is dark in the picture. Expose more, or light it better.');
  if (least < 0.6 * most) doubts.push('The light is strongly coloured; scaling by the white only partly mends that.');
  if (strand.blown > mostBlown) doubts.push('Parts of the strand are cut to black or white, perhaps by gloss.');
  if (white.unevenness > mostUneven)
    doubts.push('The white square is uneven: place it on plain white, lit as the strand is.');
  if (strand.unevenness > 3 * mostUneven)
    doubts.push('The strand square is uneven: make it smaller, away from edges, gloss and shadow.');
  if (Math.min(strand.pixels, white.pixels) < fewestPixels) doubts.push('A square holds few pixels: make it larger.');
  if (lab[0] > whiteLightness) doubts.push('The strand is lighter than the white reference.');
  return doubts;
}

const darkIssue: Issue = {
  path: [],
  code: 'white-too-dark',
  message: 'The white reference is black in the picture.',
  allowed: 'a white that is neither black nor cut',
  remedy: 'Place the white square on the white reference.',
};

/**
 * L*a*b* under D65, 2 degrees, of a strand beside a white reference: linear channels over those of the white.
 * @param strand region on the strand
 * @param white region on the reference, taken as neutral
 * @param whiteLightness L* of the reference, 50 to 100; 100 = the perfect diffuser
 * @returns the colour cut to L* 0..100 and a*, b* -128..128, with doubts; an issue where the white is black
 * Holds for a picture in sRGB whose light falls alike on both regions. A camera is not a colorimeter: its curve, its
 * sharpening and its own white balance stay in the result, so pictures compare with each other better than with a
 * measurement. Method: scaling each linear channel (after von Kries 1902) in the space of IEC 61966-2-1; CIE 15.
 */
export function photoColour(strand: RegionMean, white: RegionMean, whiteLightness = 100): Result<PhotoColour> {
  if (Math.min(...white.linear) < 1e-3) return fail(darkIssue);
  const reflectance = labToXyz([whiteLightness, 0, 0])[1] / 100;
  const scaled = strand.linear.map((value, k) => (reflectance * value) / white.linear[k]);
  const xyz = linearSrgbToXyz.map((row) => 100 * row.reduce((sum, share, k) => sum + share * scaled[k], 0));
  const exact = xyzToLab(xyz as unknown as Xyz);
  const within = (value: number, low: number, high: number) => Math.min(high, Math.max(low, value));
  const lab: Lab = [within(exact[0], 0, 100), within(exact[1], -128, 128), within(exact[2], -128, 128)];
  return ok({ lab, srgb: labToSrgb(lab), doubts: doubtsOf(strand, white, exact, whiteLightness) });
}

/** What to mind about every colour from a picture; common practice. */
export const photoCaveats: readonly string[] = [
  'Daylight from a cloudy sky or a lamp of high colour rendering, the same on strand and white, no flash, no shadow.',
  'White reference beside the strand, in the same plane: plain white paper without brightener, or a glazed tile.',
  'Fixed exposure and white balance, no filters, no portrait or night modes: they change the camera’s curve.',
  'A phone is not a colorimeter. Expect several units of colour difference; compare pictures taken alike.',
];
