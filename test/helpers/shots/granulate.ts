/** The granulate: its panel, sources, library and fit: how each picture is reached. */

import type { Page } from 'playwright-core';
import { press, type Shot, tab } from './steps.ts';

/** Brings a group of the granulate's panel to its top. */
function scrolledTo(title: string) {
  return async (page: Page): Promise<void> => {
    await tab('Granulate')(page);
    await page.getByRole('heading', { name: title, exact: true }).evaluate((heading) => heading.scrollIntoView());
  };
}

async function openedSource(page: Page): Promise<void> {
  await scrolledTo('Density and heat')(page);
  await page.getByRole('button', { name: /^Source and doubt of Melt density/ }).click();
}

async function openedLibrary(page: Page): Promise<void> {
  await tab('Granulate')(page);
  await press('Add from library')(page);
  await page.getByRole('menuitem').first().waitFor();
}

/** Readings of a filled melt at three temperatures, with a slip and a reading that cannot be read. */
const readings = [
  'shear rate (1/s)\ttemperature (°C)\tviscosity (Pa·s)',
  ...[175, 185, 195].flatMap((celsius, row) =>
    [1, 3, 10, 30, 100, 300, 1000].map((rate, column) => {
      const noise = 1 + 0.06 * Math.sin(7 * row + 3 * column);
      const slip = row === 1 && column === 4 ? 1.6 : 1;
      const level = 3200 * Math.exp(-0.024 * (celsius - 185));
      return `${rate}\t${celsius}\t${(slip * noise * (level / (1 + (0.06 * rate) ** 0.68))).toFixed(1)}`;
    }),
  ),
  '3000\t195\tn.a.',
].join('\n');

async function fitted(page: Page): Promise<void> {
  await tab('Granulate')(page);
  await press('Fit viscosity …')(page);
  await page.getByLabel('Table of readings').fill(readings);
  await page.locator('.fit-constants').waitFor();
}

async function openedTopic(page: Page): Promise<void> {
  await tab('Granulate')(page);
  const heading = page.getByRole('heading', { name: 'What can be predicted with it' });
  await heading.evaluate((element) => element.scrollIntoView());
  await page.locator('.known-chip', { hasText: 'Pumping' }).click();
}

/** Its pictures. */
export const granulateShots: readonly Shot[] = [
  { name: 'granulate', reach: tab('Granulate') },
  { name: 'granulate-law', reach: scrolledTo('Melt flow') },
  { name: 'granulate-source', reach: openedSource },
  { name: 'granulate-aging', reach: scrolledTo('Changes with time and heat') },
  { name: 'granulate-library', reach: openedLibrary },
  { name: 'granulate-complete', reach: openedTopic },
  { name: 'granulate-fit', reach: fitted },
];
