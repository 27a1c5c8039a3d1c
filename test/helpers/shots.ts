/** Takes the pictures that people look at before a release; which there are stands in `shots/`, by subject. */

import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { launchBrowser, outFolder } from '../e2e/browser.ts';
import { openWorkbench, screenshotLimit, settled } from '../e2e/harness.ts';
import { describingShots } from './shots/describing.ts';
import { granulateShots } from './shots/granulate.ts';
import { machineShots } from './shots/machine.ts';
import { safekeepingShots } from './shots/safekeeping.ts';
import type { Shot } from './shots/steps.ts';
import { studiesShots } from './shots/studies.ts';
import { trialsShots } from './shots/trials.ts';

const shots: readonly Shot[] = [
  ...describingShots,
  ...granulateShots,
  ...machineShots,
  ...safekeepingShots,
  ...studiesShots,
  ...trialsShots,
];

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

/** Works on another revision and waits for its results. */
async function openRevision(page: Page, id: string): Promise<void> {
  await page.getByRole('button', { name: new RegExp(`^${id}: `) }).click();
  await page.locator('.run-state.busy').waitFor();
  await settled(page);
}

/** One opening of the window serves all sizes and schemes: solved fields take many seconds. */
async function takeShot(browser: Browser, shot: Shot, folder: string): Promise<void> {
  const workbench = await openWorkbench({ ...(shot.file === undefined ? {} : { file: shot.file }), browser });
  const { page } = workbench;
  try {
    await settled(page);
    if (shot.revision !== undefined) await openRevision(page, shot.revision);
    await shot.reach?.(page);
    for (const [width, height] of sizes) {
      await page.setViewportSize({ width, height });
      for (const scheme of shot.schemes ?? schemes)
        await picture(page, scheme, join(folder, `${shot.name}-${width}-${scheme}.png`));
    }
  } finally {
    for (const problem of workbench.problems) console.error(`${shot.name}: ${problem}`);
    await workbench.close();
  }
}

async function picture(page: Page, scheme: string, path: string): Promise<void> {
  await page.evaluate((theme) => {
    document.documentElement.dataset.theme = theme;
  }, scheme);
  // Software rendering needs a moment for the scene after a change of view.
  await page.waitForTimeout(700);
  const calculating = page.getByText(/: calculating …$/).first();
  await calculating.waitFor({ state: 'hidden', timeout: 90_000 });
  await page.screenshot({ path, timeout: screenshotLimit });
  console.log(path);
}

await takeShots(process.argv.slice(2));
