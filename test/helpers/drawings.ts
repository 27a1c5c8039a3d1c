/** Draws examples and odd designs on sheets and takes their pictures, to be looked at. */

import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { sheetSvg } from '../../core/handover/drawing/writeSvg.ts';
import { launchBrowser, outFolder } from '../e2e/browser.ts';
import { type DrawingCase, drawingCases, drawnCase } from './drawingCases.ts';

const folder = join(outFolder, 'drawings');
const wanted = process.argv.slice(2);
const chosen = drawingCases.filter(({ name }) => wanted.length === 0 || wanted.some((word) => name.includes(word)));
mkdirSync(folder, { recursive: true });
const browser = await launchBrowser();
const page = await browser.newPage();

/** Pixels per mm. */
const density = 6;

async function picture(one: DrawingCase): Promise<void> {
  const drawing = drawnCase(one);
  for (const sheet of drawing.sheets) {
    const svg = sheetSvg(drawing, sheet);
    writeFileSync(join(folder, `${one.name}-${sheet.name}.svg`), svg);
    await page.setViewportSize({ width: Math.ceil(sheet.width * density), height: Math.ceil(sheet.height * density) });
    const scaled = svg
      .replace(/^<\?xml.*\n/, '')
      .replace(/width="[\d.]+mm" height="[\d.]+mm"/, 'width="100%" height="100%"');
    await page.setContent(`<body style="margin:0">${scaled}</body>`);
    const path = join(folder, `${one.name}-${sheet.name}.png`);
    rmSync(path, { force: true });
    await page.screenshot({ path });
    console.log(path);
  }
}

for (const one of chosen) await picture(one);
await browser.close();
