/** Packs pictures of the window small. */

import type { Browser } from 'playwright-core';
import { PNG } from 'pngjs';

/** Width of a picture in the README, px. */
const readmeWidth = 1040;
/** Shades a channel keeps: fewer pack better; steps of 8 in 255 are not seen in a window's flat colours. */
const step = 8;
/** Without filters and with the packer's usual strategy flat colours come out a third smaller than by default. */
const packing = { colorType: 2, filterType: 0, deflateLevel: 9, deflateStrategy: 0 } as const;

/** Whole picture at `width`, each new point the mean of the old ones below it. */
function scaled(from: PNG, width: number): PNG {
  const ratio = from.width / width;
  const to = new PNG({ width, height: Math.round(from.height / ratio) });
  for (let y = 0; y < to.height; y++) for (let x = 0; x < width; x++) setPoint(to, x, y, meanBelow(from, x, y, ratio));
  return to;
}

/** Red, green and blue averaged over the square of the old picture that a new point covers. */
function meanBelow(from: PNG, x: number, y: number, ratio: number): readonly number[] {
  const sum = [0, 0, 0];
  let weight = 0;
  for (let v = Math.floor(y * ratio); v < Math.min(from.height, (y + 1) * ratio); v++) {
    const high = Math.min(v + 1, (y + 1) * ratio) - Math.max(v, y * ratio);
    for (let u = Math.floor(x * ratio); u < Math.min(from.width, (x + 1) * ratio); u++) {
      const part = high * (Math.min(u + 1, (x + 1) * ratio) - Math.max(u, x * ratio));
      for (let c = 0; c < 3; c++) sum[c] = (sum[c] ?? 0) + part * (from.data[4 * (v * from.width + u) + c] ?? 0);
      weight += part;
    }
  }
  return sum.map((channel) => channel / weight);
}

function setPoint(to: PNG, x: number, y: number, colour: readonly number[]): void {
  const at = 4 * (y * to.width + x);
  for (let c = 0; c < 3; c++) to.data[at + c] = Math.min(255, Math.round((colour[c] ?? 0) / step) * step);
  to.data[at + 3] = 255;
}

/** A shot as the README shows it: PNG, scaled down. */
export const readmePicture = (png: Uint8Array): Uint8Array =>
  PNG.sync.write(scaled(PNG.sync.read(png), readmeWidth), packing);

/**
 * A part of a shot as the handbook shows it: WebP, made by the browser. At two points for one of the window the losses
 * are not seen, and the file is a third of one without them.
 */
export async function webpOf(browser: Browser, png: Uint8Array): Promise<Uint8Array> {
  const page = await browser.newPage();
  const packed = await page.evaluate(async (text) => {
    const image = await createImageBitmap(await (await fetch(`data:image/png;base64,${text}`)).blob());
    const canvas = new OffscreenCanvas(image.width, image.height);
    canvas.getContext('2d', { alpha: false })?.drawImage(image, 0, 0);
    const blob = await canvas.convertToBlob({ type: 'image/webp', quality: 0.75 });
    return Array.from(new Uint8Array(await blob.arrayBuffer()));
  }, Buffer.from(png).toString('base64'));
  await page.close();
  return Uint8Array.from(packed);
}
