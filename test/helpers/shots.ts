/** Takes the pictures that people look at before a release; which there are stands in `shots/`, by subject. */

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { launchBrowser, outFolder } from '../e2e/browser.ts';
import { screenshotLimit } from '../e2e/harness.ts';
import { dressed, shots, withShot } from './shots/open.ts';
import type { Shot } from './shots/steps.ts';

const sizes = [
  [1280, 800],
  [1920, 1080],
] as const;
const schemes = ['light', 'dark'] as const;

/** Takes the named shots, or all, in every size and scheme; one that cannot be reached does not keep the others back. */
async function takeShots(names: readonly string[]): Promise<void> {
  const folder = join(outFolder, 'shots');
  mkdirSync(folder, { recursive: true });
  const browser = await launchBrowser();
  for (const shot of shots.filter(({ name }) => names.length === 0 || names.includes(name))) {
    try {
      await takeShot(browser, shot, folder);
    } catch (fault) {
      console.error(`${shot.name}: ${String(fault)}`);
      process.exitCode = 1;
    }
  }
  await browser.close();
}

/** One opening of the window serves all sizes and schemes: solved fields take many seconds. */
const takeShot = (browser: Browser, shot: Shot, folder: string): Promise<void> =>
  withShot(browser, shot, 1, async (page) => {
    for (const [width, height] of sizes) {
      await page.setViewportSize({ width, height });
      for (const scheme of shot.schemes ?? schemes)
        await picture(page, scheme, join(folder, `${shot.name}-${width}-${scheme}.png`));
    }
  });

async function picture(page: Page, scheme: string, path: string): Promise<void> {
  await dressed(page, scheme);
  await page.screenshot({ path, timeout: screenshotLimit });
  console.log(path);
}

await takeShots(process.argv.slice(2));
