/** The description: sections, templates, a new project, barrel and results beside them: how each picture is reached. */

import type { Page } from 'playwright-core';
import { all, press, type Shot, scroll, tab } from './steps.ts';

/** Points at the plot along the axis, where granulate melts. */
async function pointedAtMelting(page: Page): Promise<void> {
  const plot = await page.locator('.axial .u-over').boundingBox();
  if (plot) await page.mouse.move(plot.x + 0.42 * plot.width, plot.y + 0.4 * plot.height);
}

const openedExamples = (page: Page) => page.getByRole('menuitem', { name: /^Examples/ }).click();

/** Puts the cursor into a field. */
const lookedAt = (label: string) => (page: Page) => page.getByLabel(label, { exact: true }).focus();

async function askedForCut(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Actions: Section 2' }).click();
  await page.getByRole('menuitem', { name: 'Split at a place' }).click();
  await page.getByLabel('Distance').fill('20');
}

async function openedNew(page: Page): Promise<void> {
  await page.keyboard.press('Control+Alt+N');
  await page.getByRole('img', { name: 'Side view of the first screw' }).waitFor();
}

/** First figures after an edit, held: what would come after them is never asked for. */
async function firstFigures(page: Page): Promise<void> {
  await page.evaluate(() => {
    const post = Worker.prototype.postMessage;
    Worker.prototype.postMessage = function (this: Worker, message: { fields?: string }) {
      if (message.fields === undefined || message.fields === 'first') post.call(this, message);
    };
  });
  const clearance = page.getByRole('textbox', { name: 'Flight clearance', exact: true });
  await clearance.fill('0.3');
  await clearance.press('Enter');
  await page.locator('[data-first="true"]').waitFor();
}

/** Asks for more turns than the drive can give. */
async function speedHeld(page: Page): Promise<void> {
  await tab('Running')(page);
  const speed = page.getByRole('textbox', { name: 'Screw speed', exact: true });
  await speed.fill('900');
  await speed.press('Enter');
  await page.locator('.beside.held').waitFor();
}

/** Opens a group of figures. */
const opened = (group: string) => async (page: Page) => {
  await page.locator(`[data-group="${group}"] summary`).click();
  await scroll(`[data-group="${group}"]`)(page);
};

/** Curve of a group of figures. */
const curveOf = (group: string) => async (page: Page) => {
  await opened(group)(page);
  await page
    .locator(`[data-group="${group}"]`)
    .getByRole('button', { name: /^Show as a curve/ })
    .click();
};

/** The menu of the plot along the axis, zoomed in once by key. */
async function plotMenuOpen(page: Page): Promise<void> {
  await page.locator('.axial .chart').focus();
  await page.keyboard.press('+');
  await page.getByRole('button', { name: /^Actions for the plot: Along the axis/ }).click();
  await page.getByRole('menuitem').first().waitFor();
}

/** Its pictures. */
export const describingShots: readonly Shot[] = [
  { name: 'start' },
  { name: 'first-figures', reach: firstFigures },
  { name: 'help-sketch', reach: lookedAt('Section 2, Root Ø end') },
  { name: 'inch-display', reach: all(press('Millimetres or inches'), lookedAt('Section 2, Lead start')) },
  { name: 'split-at', reach: askedForCut },
  { name: 'templates', reach: press('Screw templates') },
  { name: 'new-project', reach: openedNew },
  { name: 'axial', reach: pointedAtMelting },
  { name: 'print-asked', reach: tab('Print') },
  { name: 'speed-held', reach: speedHeld },
  { name: 'print-side', reach: scroll('.print-side') },
  { name: 'controller', reach: scroll('.print-topic:last-child') },
  { name: 'cautions', reach: scroll('.cautions-head') },
  { name: 'warming-up', reach: curveOf('warmUp') },
  { name: 'torque', reach: curveOf('drive') },
  { name: 'output-curve', reach: scroll('.curve') },
  { name: 'barrel', reach: tab('Barrel') },
  { name: 'plot-menu', reach: plotMenuOpen },
  { name: 'revisions', reach: press('Revisions …') },
  { name: 'examples', reach: all(press('Project'), openedExamples) },
  { name: 'wax', file: 'assets/examples/wax-head.json' },
  { name: 'misfit', file: 'assets/examples/pla-pellet-misfit.json' },
];
