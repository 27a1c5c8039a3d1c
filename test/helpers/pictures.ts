/** Takes the pictures of README and handbook: which there are, of what and how large, stands in `pictures.json`. */

import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { sheetSvg } from '../../core/handover/drawing/writeSvg.ts';
import { launchBrowser, outFolder } from '../e2e/browser.ts';
import { screenshotLimit } from '../e2e/harness.ts';
import { drawingCases, drawnCase } from './drawingCases.ts';
import { readmePicture, webpOf } from './pictures/pack.ts';
import { dressed, shots, withShot } from './shots/open.ts';

/** A picture of a page of the handbook: a part of a shot, or a sheet of a drawing. */
interface HandbookPicture {
  readonly picture: string;
  readonly shot?: string;
  /** parts of the window that the picture holds whole, as selectors of their first elements */
  readonly parts?: readonly string[];
  /** parts of the window that are left out, as selectors */
  readonly without?: readonly string[];
  /** room around the parts, px */
  readonly margin?: number;
  /** window, px; 1280 by 800 when absent */
  readonly window?: readonly [number, number];
  /** name of a drawing case, and which of its sheets */
  readonly sheet?: readonly [string, number];
}

const list = JSON.parse(readFileSync(join(import.meta.dirname, 'pictures.json'), 'utf8')) as {
  readme: { limitBytes: number; pictures: readonly { picture: string; shot: string }[] };
  handbook: { limitBytes: number; pictures: readonly HandbookPicture[] };
};

/** Pictures of the handbook before they are packed, for viewers that know no WebP. */
const unpacked = join(outFolder, 'pictures');

/** Pixels of a picture of the handbook for one of the window: its lines stay sharp on dense screens. */
const density = 2;

const named = process.argv.slice(2);
const wanted = ({ picture }: { readonly picture: string }) => named.length === 0 || named.includes(picture);

function keep(path: string, bytes: Uint8Array, limit: number): void {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, bytes);
  console.log(`${path}: ${Math.round(bytes.length / 1000)} kB`);
  if (bytes.length <= limit) return;
  console.error(`${path} is larger than ${limit / 1000} kB.`);
  process.exitCode = 1;
}

function shotOf(name: string | undefined) {
  const shot = shots.find((one) => one.name === name);
  if (!shot) throw new Error(`there is no shot ${name}`);
  return shot;
}

/** The window whole, as the README shows it. */
const takeReadme = (browser: Browser, picture: string, shot: string): Promise<void> =>
  withShot(browser, shotOf(shot), 1, async (page) => {
    await dressed(page, 'light');
    const png = await page.screenshot({ timeout: screenshotLimit });
    keep(`assets/pictures/${picture}.png`, readmePicture(png), list.readme.limitBytes);
  });

/** The box around all parts. */
async function around(page: Page, parts: readonly string[], margin: number) {
  const boxes = await Promise.all(parts.map((part) => page.locator(part).first().boundingBox()));
  const there = boxes.filter((box) => box !== null);
  if (there.length < parts.length) throw new Error(`not all in sight: ${parts.join(', ')}`);
  const x = Math.floor(Math.min(...there.map((box) => box.x)) - margin);
  const y = Math.floor(Math.min(...there.map((box) => box.y)) - margin);
  const right = Math.max(...there.map((box) => box.x + box.width)) + margin;
  const bottom = Math.max(...there.map((box) => box.y + box.height)) + margin;
  return { x, y, width: Math.ceil(right - x), height: Math.ceil(bottom - y) };
}

async function ofWindow(browser: Browser, one: HandbookPicture): Promise<Buffer> {
  let png: Buffer = Buffer.alloc(0);
  await withShot(browser, shotOf(one.shot), density, async (page) => {
    const [width, height] = one.window ?? [1280, 800];
    await page.setViewportSize({ width, height });
    await dressed(page, 'light');
    await page
      .locator(one.parts?.[0] ?? 'body')
      .first()
      .scrollIntoViewIfNeeded();
    for (const part of one.without ?? [])
      await page
        .locator(part)
        .first()
        .evaluate((element) => element.remove());
    const clip = await around(page, one.parts ?? [], one.margin ?? 0);
    png = await page.screenshot({ clip, timeout: screenshotLimit });
  });
  return png;
}

async function ofSheet(browser: Browser, name: string, index: number): Promise<Buffer> {
  const one = drawingCases.find((each) => each.name === name);
  const drawing = one && drawnCase(one);
  const sheet = drawing?.sheets[index];
  if (!sheet) throw new Error(`there is no drawing ${name}`);
  const page = await browser.newPage({
    viewport: { width: Math.ceil(6.3 * sheet.width), height: Math.ceil(6.3 * sheet.height) },
  });
  const svg = sheetSvg(drawing, sheet).replace(/^<\?xml.*\n/, '');
  await page.setContent(`<body style="margin:0">${svg.replace(/width="[\d.]+mm" height="[\d.]+mm"/, 'width="100%"')}`);
  const png = await page.screenshot();
  await page.close();
  return png;
}

async function takeHandbook(browser: Browser, one: HandbookPicture): Promise<void> {
  const png = await (one.sheet ? ofSheet(browser, ...one.sheet) : ofWindow(browser, one));
  mkdirSync(unpacked, { recursive: true });
  writeFileSync(join(unpacked, `${one.picture}.png`), png);
  const bytes = await webpOf(browser, png);
  keep(`assets/handbook/pictures/${one.picture}.webp`, bytes, list.handbook.limitBytes);
}

const browser = await launchBrowser();
for (const { picture, shot } of list.readme.pictures.filter(wanted)) await takeReadme(browser, picture, shot);
for (const one of list.handbook.pictures.filter(wanted)) {
  try {
    await takeHandbook(browser, one);
  } catch (fault) {
    console.error(`${one.picture}: ${String(fault)}`);
    process.exitCode = 1;
  }
}
await browser.close();
