/** Every shot, and how one is opened: for the pictures that people look at and for those of the guides. */

import type { Browser, Page } from 'playwright-core';
import { openWorkbench, settled, type Workbench } from '../../e2e/harness.ts';
import { describingShots } from './describing.ts';
import { granulateShots } from './granulate.ts';
import { machineShots } from './machine.ts';
import { safekeepingShots } from './safekeeping.ts';
import type { Shot } from './steps.ts';
import { studiesShots } from './studies.ts';
import { trialsShots } from './trials.ts';

/** All shots, by subject. */
export const shots: readonly Shot[] = [
  ...describingShots,
  ...granulateShots,
  ...machineShots,
  ...safekeepingShots,
  ...studiesShots,
  ...trialsShots,
];

/** Works on another revision and waits for its results. */
async function openRevision(page: Page, id: string): Promise<void> {
  await page.getByRole('button', { name: new RegExp(`^${id}: `) }).click();
  await page.locator('.run-state.busy').waitFor();
  await settled(page);
}

/** Does something with the workbench as a shot wants it; tells what went wrong in the window. */
export async function withShot(
  browser: Browser,
  shot: Shot,
  density: number,
  act: (page: Page) => Promise<void>,
): Promise<void> {
  const file = shot.file === undefined ? {} : { file: shot.file };
  const workbench: Workbench = await openWorkbench({ ...file, browser, density });
  try {
    if (!shot.unsettled) await settled(workbench.page);
    if (shot.revision !== undefined) await openRevision(workbench.page, shot.revision);
    await shot.reach?.(workbench.page);
    await act(workbench.page);
  } finally {
    for (const problem of workbench.problems) console.error(`${shot.name}: ${problem}`);
    await workbench.close();
  }
}

/** Puts the window into a theme and waits until it has been drawn and worked out. */
export async function dressed(page: Page, scheme: string): Promise<void> {
  await page.evaluate((theme) => {
    document.documentElement.dataset.theme = theme;
  }, scheme);
  // Software rendering needs a moment for the scene after a change of view.
  await page.waitForTimeout(700);
  const calculating = page.getByText(/: calculating …$/).first();
  await calculating.waitFor({ state: 'hidden', timeout: 90_000 });
}
