/** The bench log: how each picture is reached. */

import type { Page } from 'playwright-core';
import { all, press, type Shot, tab } from './steps.ts';

/** Opens the bench log at a part of it. */
const bench = (part: string) => all(press('Bench log …'), tab(part));

async function calibratedOnce(page: Page): Promise<void> {
  await bench('Calibrate')(page);
  await press('Find the factors')(page);
  await page.getByTestId('factors').waitFor();
}

async function proposed(page: Page): Promise<void> {
  await bench('Next trials')(page);
  await press('Propose trials')(page);
  await page.getByTestId('plan').waitFor();
}

const measured = (page: Page) => page.getByTestId('measured').waitFor();

/** Its pictures. */
export const trialsShots: readonly Shot[] = [
  { name: 'bench-trials', reach: press('Bench log …') },
  { name: 'bench-form', reach: all(press('Bench log …'), press('Add a trial')) },
  { name: 'bench-import', reach: bench('Import') },
  { name: 'bench-measured', reach: all(bench('Measured & predicted'), measured) },
  { name: 'bench-calibrate', reach: calibratedOnce },
  { name: 'bench-plan', reach: proposed },
  { name: 'bench-picture', reach: bench('Colour from a picture') },
];
