/**
 * Renews the pictures of the README: scales shots down and writes them to `assets/pictures/`. Which there are, and how
 * large each may be, stands in `pictures.json`; the shots are taken before, by `npm run shots`.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';

const root = join(import.meta.dirname, '../..');
const { limitBytes, pictures } = JSON.parse(readFileSync(join(import.meta.dirname, 'pictures.json'), 'utf8'));
const widthPx = 1040;
/** Shades a channel keeps: fewer pack better; steps of 8 in 255 are not seen in a window's flat colours. */
const step = 8;
/** Without filters and with the packer's usual strategy flat colours come out a third smaller than by default. */
const packing = { colorType: 2, filterType: 0, deflateLevel: 9, deflateStrategy: 0 };

/** Whole picture at `width`, each new point the mean of the old ones below it. */
function scaled(from, width) {
  const ratio = from.width / width;
  const to = new PNG({ width, height: Math.round(from.height / ratio) });
  for (let y = 0; y < to.height; y++) for (let x = 0; x < width; x++) setPoint(to, x, y, meanBelow(from, x, y, ratio));
  return to;
}

/** Red, green and blue averaged over the square of the old picture that a new point covers. */
function meanBelow(from, x, y, ratio) {
  const sum = [0, 0, 0];
  let weight = 0;
  for (let v = Math.floor(y * ratio); v < Math.min(from.height, (y + 1) * ratio); v++) {
    const high = Math.min(v + 1, (y + 1) * ratio) - Math.max(v, y * ratio);
    for (let u = Math.floor(x * ratio); u < Math.min(from.width, (x + 1) * ratio); u++) {
      const part = high * (Math.min(u + 1, (x + 1) * ratio) - Math.max(u, x * ratio));
      for (let c = 0; c < 3; c++) sum[c] += part * from.data[4 * (v * from.width + u) + c];
      weight += part;
    }
  }
  return sum.map((channel) => channel / weight);
}

function setPoint(to, x, y, colour) {
  const at = 4 * (y * to.width + x);
  for (let c = 0; c < 3; c++) to.data[at + c] = Math.min(255, Math.round(colour[c] / step) * step);
  to.data[at + 3] = 255;
}

for (const { picture, shot } of pictures) {
  const png = scaled(PNG.sync.read(readFileSync(join(root, 'test/.out/shots', `${shot}-1280-light.png`))), widthPx);
  const bytes = PNG.sync.write(png, packing);
  writeFileSync(join(root, 'assets/pictures', `${picture}.png`), bytes);
  console.log(`${picture}.png: ${Math.round(bytes.length / 1000)} kB`);
  if (bytes.length > limitBytes) {
    console.error(`${picture}.png is larger than ${limitBytes / 1000} kB.`);
    process.exitCode = 1;
  }
}
