/** The list of pictures that people look at before a release, and how each is reached. */

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { launchBrowser, outFolder } from '../e2e/browser.ts';
import { openWorkbench, screenshotLimit, settled } from '../e2e/harness.ts';

/** One view: what to press or click, from the freshly opened workbench. */
interface Shot {
  readonly name: string;
  /** Project file; the demo when absent. */
  readonly file?: string;
  reach?(page: Page): Promise<void>;
}

const press = (name: string) => (page: Page) => page.getByRole('button', { name }).first().click();
const tab = (name: string) => (page: Page) => page.getByRole('tab', { name }).click();

const shots: readonly Shot[] = [
  { name: 'start' },
  { name: 'granulate', reach: tab('Granulate') },
  { name: 'barrel', reach: tab('Barrel') },
  { name: 'tip-and-nozzle', reach: press('Tip & nozzle') },
  { name: 'slice', reach: press('Slice') },
  { name: 'compare', reach: press('Compare') },
  { name: 'examples', reach: press('Examples') },
  { name: 'wax', file: 'assets/examples/wax-head.json' },
  { name: 'misfit', file: 'assets/examples/pla-pellet-misfit.json' },
];

const sizes = [
  [1280, 800],
  [1920, 1080],
] as const;
const schemes = ['light', 'dark'] as const;

/** Takes the named shots, or all, in every size and scheme. */
async function takeShots(names: readonly string[]): Promise<void> {
  const folder = join(outFolder, 'shots');
  mkdirSync(folder, { recursive: true });
  const browser = await launchBrowser();
  for (const shot of shots.filter(({ name }) => names.length === 0 || names.includes(name))) {
    for (const [width, height] of sizes) {
      for (const colorScheme of schemes) {
        const path = join(folder, `${shot.name}-${width}-${colorScheme}.png`);
        await takeShot(browser, shot, { width, height, colorScheme }, path);
      }
    }
  }
  await browser.close();
}

async function takeShot(
  browser: Browser,
  shot: Shot,
  look: { width: number; height: number; colorScheme: 'light' | 'dark' },
  path: string,
): Promise<void> {
  const file = shot.file === undefined ? {} : { file: shot.file };
  const workbench = await openWorkbench({ ...look, ...file, browser });
  await settled(workbench.page);
  await shot.reach?.(workbench.page);
  // Software rendering needs a moment for the scene after a change of view.
  await workbench.page.waitForTimeout(500);
  await workbench.page
    .getByText(/: calculating …$/)
    .first()
    .waitFor({ state: 'hidden', timeout: 90_000 });
  await workbench.page.screenshot({ path, timeout: screenshotLimit });
  for (const problem of workbench.problems) console.error(`${path}: ${problem}`);
  await workbench.close();
  console.log(path);
}

await takeShots(process.argv.slice(2));
