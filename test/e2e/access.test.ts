/** Every view against the accessibility checker, in every theme; and what the keyboard alone can do. */

import type { Page } from 'playwright-core';
import { beforeEach, describe, expect, test } from 'vitest';
import { accessFaults } from './axe.ts';
import { sharedWorkbench } from './sharedWorkbench.ts';

const workbench = sharedWorkbench({
  reducedMotion: 'reduce',
  readySelector: '.results[data-stale="false"][data-fields="solved"] [data-testid="output"]',
});

/** Runs a command by its words, as somebody without a mouse does. */
async function command(page: Page, words: string): Promise<void> {
  await page.keyboard.press('Control+k');
  await page.getByRole('searchbox').fill(words);
  await page.keyboard.press('Enter');
}

beforeEach(async () => {
  await workbench().page.keyboard.press('Escape');
});

const parts = ['Granulate', 'Screw', 'Tip & shank', 'Barrel', 'Nozzle', 'Hopper', 'Drive', 'Running', 'Print'];

/** Commands that open something, by their words. */
const dialogs = [
  'All commands',
  'Examples',
  'Manage revisions',
  'Compare',
  'Colour',
  'How sure',
  'Bench log',
  'Fit viscosity',
];

describe('the accessibility checker has nothing to say', () => {
  test('of the window and every part of the description', async () => {
    const { page } = workbench();
    const faults: string[] = [];
    for (const name of parts) {
      await page.getByRole('tab', { name, exact: true }).click();
      faults.push(...(await accessFaults(page)).map((fault) => `${name}: ${fault}`));
    }
    expect(faults).toEqual([]);
  });

  test.each(dialogs)('of the dialog “%s”', async (words) => {
    const { page } = workbench();
    await command(page, words);
    await page.getByRole('dialog').waitFor();
    expect(await accessFaults(page)).toEqual([]);
  });

  test('of colours in any theme', async () => {
    const { page } = workbench();
    for (const theme of ['dark', 'contrast', 'light']) {
      await command(page, 'high contrast');
      await page.waitForSelector(`:root[data-theme="${theme}"]`);
      expect((await accessFaults(page, ['color-contrast'])).map((fault) => `${theme}: ${fault}`)).toEqual([]);
    }
  });
});
