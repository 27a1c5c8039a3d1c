/** The machine: 3D view, drawing, granules, melt and dead spots: how each picture is reached. */

import type { Page } from 'playwright-core';
import { all, press, type Shot, scroll } from './steps.ts';

const meltAge = press('Melt age');

const chooseSpot = (page: Page) => page.locator('.spot').first().click();

const colourBy = (quantity: string) => (page: Page) => page.getByLabel('Coloured by').selectOption(quantity);

/** The drawing with dimensions instead of the 3D view. */
const drawing = press('Drawing');

/** Pulls a handle of the drawing sideways and keeps hold of it. */
async function pulling(page: Page): Promise<void> {
  await drawing(page);
  const handle = await page.locator('[data-grip="section/1/lengthMm"] .grip-hit').boundingBox();
  if (!handle) return;
  await page.mouse.move(handle.x + handle.width / 2, handle.y + handle.height / 2);
  await page.mouse.down();
  await page.mouse.move(handle.x + 30, handle.y + 4, { steps: 5 });
}

/** Granules to scale at the feed opening, once they are placed. */
async function grainsShown(page: Page): Promise<void> {
  await press('Granules')(page);
  await page.locator('.grains-card').waitFor();
  // tools of the section table name the feed too
  await page.locator('.view-tools').getByRole('button', { name: 'Feed' }).click();
  await page.waitForTimeout(900);
}

/** Measures from the outside of the feed to the nozzle by clicking twice. */
async function measuredByClicks(page: Page): Promise<void> {
  await press('Measure')(page);
  const box = await page.locator('.scene canvas').boundingBox();
  if (!box) return;
  await page.mouse.click(box.x + 0.35 * box.width, box.y + 0.5 * box.height);
  await page.mouse.click(box.x + 0.66 * box.width, box.y + 0.46 * box.height);
}

const enlargedSection = async (page: Page): Promise<void> => {
  await page.locator('.across-picture').focus();
  for (const key of ['+', '+', 'ArrowRight']) await page.keyboard.press(key);
};

/** Its pictures. */
export const machineShots: readonly Shot[] = [
  { name: 'tip-and-nozzle', reach: press('Tip & nozzle') },
  { name: 'slice', reach: press('Slice') },
  { name: 'drawing', reach: drawing },
  { name: 'drawing-outlet', reach: all(drawing, press('Tip & nozzle')) },
  { name: 'drawing-dragging', reach: pulling },
  { name: 'grains', reach: grainsShown },
  { name: 'grains-slice', reach: all(press('Slice'), grainsShown) },
  { name: 'misfit-grains', file: 'assets/examples/pla-pellet-misfit.json', reach: grainsShown },
  { name: 'melt-front', reach: press('Melting') },
  { name: 'measure', reach: measuredByClicks },
  { name: 'across-close', reach: all(scroll('.across'), enlargedSection) },
  { name: 'melt-age', reach: meltAge },
  { name: 'melt-outlet', reach: all(meltAge, press('Tip & nozzle')) },
  { name: 'melt-outlet-first-screw', revision: 'A', reach: all(meltAge, press('Tip & nozzle')) },
  { name: 'melt-wedge', reach: all(meltAge, press('Slice'), press('Screw')) },
  { name: 'dead-spot', reach: all(chooseSpot, scroll('.spots')) },
  { name: 'dead-spot-first-screw', revision: 'A', reach: all(chooseSpot, scroll('.spots')) },
  { name: 'across-speed', reach: all(scroll('.across'), colourBy('speed')) },
  { name: 'residence', reach: scroll('.curve:has(.landmarks)') },
];
