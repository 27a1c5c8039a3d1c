/** The studies: comparison, colour, doubt, search and files to hand over: how each picture is reached. */

import type { Page } from 'playwright-core';
import { all, press, type Shot, scroll, tab } from './steps.ts';

/** Opens the colour dialog and waits until all revisions are worked out. */
async function openedColour(page: Page): Promise<void> {
  await press('Colour')(page);
  await page.locator('.layers').waitFor();
}

/** Opens the study of doubt, runs few samples and waits for the answer. */
async function openedDoubt(page: Page): Promise<void> {
  await press('How sure')(page);
  const samples = page.getByLabel('Samples', { exact: true });
  await samples.fill('24');
  await samples.press('Enter');
  await press('Run the samples')(page);
  await page.getByText('24 of 24').waitFor({ state: 'hidden' });
  await page.getByRole('button', { name: 'Run the samples' }).waitFor();
}

/** Opens the dialog of hand-over files at a kind, by its name, and works it out where wanted. */
const handedOver = (kind: string, workOut: boolean) =>
  all(press('Hand over …'), async (page) => {
    await page.getByRole('radio', { name: kind }).first().click({ force: true });
    if (!workOut) return;
    await page.getByRole('button', { name: 'Work it out' }).click();
    await page.locator('.handover-file, .handover-refused').first().waitFor({ timeout: 60_000 });
    await scroll('.handover-acts')(page);
  });

/** Adds an input of a search by its name. */
async function addInput(page: Page, name: string): Promise<void> {
  if (!(await page.locator('.pick-input input').isVisible())) await page.locator('.pick-input summary').click();
  await page.locator('.pick-input input').fill(name);
  await page.locator('.pick-input .command').first().click();
}

const searchEnds = async (page: Page): Promise<void> => {
  await page
    .getByText(/designs looked at\.$/)
    .first()
    .waitFor({ timeout: 120_000 });
};

/** Sweeps the named inputs over their proposed ranges. */
const swept =
  (...names: readonly string[]) =>
  async (page: Page): Promise<void> => {
    await press('Better screw …')(page);
    for (const name of names) await addInput(page, name);
    for (const steps of await page.getByLabel('Values', { exact: true }).all()) {
      await steps.fill('9');
      await steps.press('Enter');
    }
    await page.getByRole('button', { name: /^Try them/ }).click();
    await searchEnds(page);
    await scroll('.search-bar')(page);
  };

async function mapped(page: Page): Promise<void> {
  await swept('whole metering part', 'screw speed')(page);
  const map = await page.locator('.map-box').boundingBox();
  if (map) await page.mouse.move(map.x + 0.4 * map.width, map.y + 0.5 * map.height);
}

async function goalSet(page: Page): Promise<void> {
  await press('Better screw …')(page);
  await tab('Reach a goal')(page);
  for (const name of ['whole metering part', 'lead of all', 'screw speed']) await addInput(page, name);
}

async function sought(page: Page): Promise<void> {
  await goalSet(page);
  await page.getByLabel('Designs at most').fill('40');
  await page.getByLabel('Designs at most').press('Enter');
  await page.getByLabel('Confirm the best three by solved fields').uncheck();
  await page.getByRole('button', { name: 'Search', exact: true }).click();
  await searchEnds(page);
  await page.getByRole('button', { name: 'Show candidate 1' }).first().click();
  await page.getByRole('button', { name: 'Work it out' }).click();
  await page.getByText('One step down').waitFor({ timeout: 60_000 });
}

/** Opens the comparison at a part of it, once all revisions have estimates, or solved fields. */
const compared = (part: string, till: 'estimates' | 'solved' = 'estimates') => {
  return async (page: Page): Promise<void> => {
    await press('Compare')(page);
    await page.getByRole('tab', { name: part }).click();
    await page.locator('.better-for-what').waitFor({ timeout: 60_000 });
    if (till === 'solved') await page.getByText('From solved flow fields.').waitFor({ timeout: 240_000 });
  };
};

/** The outlets beside each other; other buttons of the window speak of an outlet too. */
const drawnOutlet = (page: Page) =>
  page.getByRole('dialog').getByRole('button', { name: 'Outlet', exact: true }).click();

/** Its pictures. */
export const studiesShots: readonly Shot[] = [
  { name: 'compare', reach: compared('Predicted numbers', 'solved') },
  { name: 'compare-high', schemes: ['contrast'], reach: compared('Predicted numbers', 'solved') },
  { name: 'compare-described', reach: compared('Description') },
  { name: 'compare-drawings', reach: compared('Drawings') },
  { name: 'compare-outlet', reach: all(compared('Drawings'), drawnOutlet) },
  { name: 'compare-curves', reach: compared('Curves') },
  { name: 'compare-3d', reach: compared('In 3D', 'solved') },
  { name: 'colour', reach: openedColour },
  { name: 'colour-charts', reach: all(openedColour, scroll('.colour-studies')) },
  { name: 'colour-change', reach: all(openedColour, scroll('[aria-label^="Changing over"]')) },
  { name: 'colour-unknown', file: 'assets/examples/hdpe-regrind.json', reach: press('Colour') },
  { name: 'doubt', reach: openedDoubt },
  { name: 'doubt-rank', reach: all(openedDoubt, scroll('.colour-pair')) },
  { name: 'doubt-inputs', reach: all(openedDoubt, scroll('[aria-label^="What is not known"]')) },
  { name: 'search-sweep', reach: swept('whole metering part') },
  { name: 'search-map', reach: mapped },
  { name: 'search-goal', reach: goalSet },
  { name: 'search-candidates', reach: all(sought, scroll('.search-result')) },
  { name: 'search-candidate', reach: all(sought, scroll('.candidate-detail')) },
  { name: 'handover', reach: handedOver('3MF', false) },
  { name: 'handover-mesh', reach: handedOver('STL', true) },
  { name: 'handover-controller', reach: handedOver('Flow test', true) },
];
