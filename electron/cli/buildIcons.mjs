/**
 * Makes the icons of the packed program from our logo, `assets/public/icon.png`: one PNG a size for Linux, one .ico for
 * Windows, one .icns for macOS. Run by hand when the logo changes; what it makes is kept, so that packing needs no tool
 * from elsewhere.
 */

import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { PNG } from 'pngjs';
import { root } from './builder.mjs';

const folder = join(root, 'assets/packaging');

/** Edges of the PNG files, px. */
const pngSizes = [16, 24, 32, 48, 64, 128, 256, 512];
/** Edges held by the .ico, px. */
const icoSizes = [16, 24, 32, 48, 64, 128, 256];
/** Types of the .icns by the edge of the PNG each holds, px; a type with `@2x` in its meaning has twice the points. */
const icnsTypes = [
  ['icp4', 16],
  ['icp5', 32],
  ['ic11', 32],
  ['ic12', 64],
  ['ic07', 128],
  ['ic13', 256],
  ['ic08', 256],
  ['ic14', 512],
  ['ic09', 512],
];

/** The picture at another edge, px, never larger: each new pixel is the mean of those below it, weighed by opacity. */
export function shrink(picture, edge) {
  const out = new PNG({ width: edge, height: edge });
  const step = picture.width / edge;
  for (let y = 0; y < edge; y++)
    for (let x = 0; x < edge; x++) out.data.set(mean(picture, x * step, y * step, step), 4 * (y * edge + x));
  return out;
}

/** Mean colour of a square of the picture, RGBA; pixels cut by its edge count by the part that lies inside. */
function mean({ width, data }, left, top, side) {
  const sum = [0, 0, 0, 0];
  let area = 0;
  for (let y = Math.floor(top); y < top + side; y++)
    for (let x = Math.floor(left); x < left + side; x++) {
      const inside = overlap(x, left, side) * overlap(y, top, side);
      const at = 4 * (y * width + x);
      const weight = inside * data[at + 3];
      for (let k = 0; k < 3; k++) sum[k] += weight * data[at + k];
      sum[3] += weight;
      area += inside;
    }
  if (sum[3] === 0) return [0, 0, 0, 0];
  return [...sum.slice(0, 3).map((part) => Math.round(part / sum[3])), Math.round(sum[3] / area)];
}

const overlap = (cell, from, length) => Math.max(0, Math.min(cell + 1, from + length) - Math.max(cell, from));

/** A small picture as an .ico holds it: a bitmap of 32 bits from the bottom up, and an empty mask. */
function bitmap({ width, height, data }) {
  const maskRow = 4 * Math.ceil(width / 32);
  const out = Buffer.alloc(40 + height * (4 * width + maskRow));
  out.writeUInt32LE(40, 0);
  out.writeInt32LE(width, 4);
  // counts picture and mask
  out.writeInt32LE(2 * height, 8);
  out.writeUInt16LE(1, 12);
  out.writeUInt16LE(32, 14);
  for (let y = 0; y < height; y++)
    for (let x = 0; x < width; x++) {
      const from = 4 * (y * width + x);
      const to = 40 + 4 * ((height - 1 - y) * width + x);
      out.set([data[from + 2], data[from + 1], data[from], data[from + 3]], to);
    }
  return out;
}

/** An .ico: small pictures as bitmaps, which every reader knows, the large ones as PNG. */
function ico(pictures) {
  const bodies = pictures.map((picture) => (picture.width < 128 ? bitmap(picture) : PNG.sync.write(picture)));
  const head = Buffer.alloc(6 + 16 * bodies.length);
  head.writeUInt16LE(1, 2);
  head.writeUInt16LE(bodies.length, 4);
  let offset = head.length;
  bodies.forEach((body, k) => {
    const at = 6 + 16 * k;
    // 256 is written as 0
    head.set([pictures[k].width % 256, pictures[k].height % 256], at);
    head.writeUInt16LE(1, at + 4);
    head.writeUInt16LE(32, at + 6);
    head.writeUInt32LE(body.length, at + 8);
    head.writeUInt32LE(offset, at + 12);
    offset += body.length;
  });
  return Buffer.concat([head, ...bodies]);
}

/** An .icns of PNG pictures by their types. */
function icns(entries) {
  const parts = entries.map(([type, body]) => {
    const head = Buffer.alloc(8);
    head.write(type, 'latin1');
    head.writeUInt32BE(8 + body.length, 4);
    return Buffer.concat([head, body]);
  });
  const head = Buffer.alloc(8);
  head.write('icns', 'latin1');
  head.writeUInt32BE(8 + parts.reduce((sum, part) => sum + part.length, 0), 4);
  return Buffer.concat([head, ...parts]);
}

/** Makes every icon anew. */
export function makeIcons() {
  const file = readFileSync(join(root, 'assets/public/icon.png'));
  const logo = PNG.sync.read(file);
  const bySize = new Map(pngSizes.map((edge) => [edge, edge === logo.width ? logo : shrink(logo, edge)]));
  const png = (edge) => (edge === logo.width ? file : PNG.sync.write(bySize.get(edge)));
  mkdirSync(join(folder, 'icons'), { recursive: true });
  for (const edge of pngSizes) writeFileSync(join(folder, `icons/${edge}x${edge}.png`), png(edge));
  writeFileSync(join(folder, 'icon.ico'), ico(icoSizes.map((edge) => bySize.get(edge))));
  writeFileSync(join(folder, 'icon.icns'), icns(icnsTypes.map(([type, edge]) => [type, png(edge)])));
}

if (process.argv[1] === import.meta.filename) makeIcons();
