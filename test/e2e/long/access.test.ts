/** Every view against the accessibility checker, in every theme; and what the keyboard alone can do. */

import type { Locator, Page } from 'playwright-core';
import { beforeEach, describe, expect, test } from 'vitest';
import { accessFaults } from '../axe.ts';
import { cutOff, focused, lowestInSight, tabTo } from '../reach.ts';
import { sharedWorkbench } from '../sharedWorkbench.ts';

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

/** The dialog that a command opened, not the list of commands it was chosen from. */
async function opened(page: Page): Promise<Locator> {
  await page.getByRole('searchbox', { name: 'Type to find a command' }).waitFor({ state: 'hidden' });
  const dialog = page.getByRole('dialog');
  await dialog.waitFor();
  return dialog;
}

beforeEach(async () => {
  const { page } = workbench();
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'hidden' });
  await page.setViewportSize({ width: 1280, height: 800 });
});

const parts = ['Granulate', 'Screw', 'Tip & shank', 'Barrel', 'Nozzle', 'Hopper', 'Drive', 'Running', 'Print'];

/** Commands that open something, by their words. */
const dialogs = [
  'Examples',
  'Revisions',
  'Compare',
  'Better screw',
  'Colour',
  'How sure',
  'Bench log',
  'Fit viscosity',
  'Hand over',
  'Screw templates',
  'New project',
];

const menus = ['Project', 'Edit', 'Revision', 'Study', 'View', 'Help'];

describe('the accessibility checker has nothing to say', () => {
  test('of the window and every part of the description', async () => {
    const { page } = workbench();
    const faults: string[] = [];
    for (const name of parts) {
      await page.getByRole('tab', { name, exact: true }).click();
      faults.push(...(await accessFaults(page)).map((fault) => `${name}: ${fault}`));
    }
    expect(faults.join('\n')).toBe('');
  });

  test.each(dialogs)('of the dialog “%s”', async (words) => {
    const { page } = workbench();
    await command(page, words);
    await opened(page);
    expect((await accessFaults(page)).join('\n')).toBe('');
  });

  test('of the list of commands and of searching for a goal', async () => {
    const { page } = workbench();
    await page.keyboard.press('Control+k');
    await page.getByRole('searchbox').waitFor();
    expect((await accessFaults(page)).join('\n')).toBe('');
    await page.keyboard.press('Escape');
    await command(page, 'Better screw');
    await page.getByRole('tab', { name: 'Reach a goal' }).click();
    expect((await accessFaults(page)).join('\n')).toBe('');
    await page.getByRole('tab', { name: 'Try values' }).click();
  });

  test.each(menus)('of the menu “%s”', async (name) => {
    const { page } = workbench();
    await page.getByRole('navigation', { name: 'Menus' }).getByRole('button', { name, exact: true }).click();
    await page.getByRole('menu', { name }).waitFor();
    expect((await accessFaults(page)).join('\n')).toBe('');
  });

  test('of the drawing with dimensions', async () => {
    const { page } = workbench();
    await page.keyboard.press('Control+Shift+D');
    await page
      .getByRole('slider', { name: /^Section 1/ })
      .first()
      .waitFor();
    const faults = await accessFaults(page);
    await page.keyboard.press('Control+Shift+D');
    expect(faults.join('\n')).toBe('');
  });

  test('of the guided tour', async () => {
    const { page } = workbench();
    await command(page, 'guided tour');
    const card = page.getByRole('complementary', { name: /^Guided tour/ });
    await card.waitFor();
    expect((await accessFaults(page)).join('\n')).toBe('');
    await page.keyboard.press('Escape');
    await card.waitFor({ state: 'hidden' });
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

describe('the keyboard alone', () => {
  test('reaches a field from the start of the window, changes it, and undoes that', async () => {
    const { page } = workbench();
    await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
    await tabTo(page, /^Section 1, Length$/);
    const field = page.getByRole('textbox', { name: 'Section 1, Length', exact: true });
    const before = await field.inputValue();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('Enter');
    await expect.poll(() => field.inputValue()).not.toBe(before);
    await page.keyboard.press('Control+z');
    await expect.poll(() => field.inputValue()).toBe(before);
  });

  test('opens a menu, walks through it, and comes back to its button', async () => {
    const { page } = workbench();
    await page.getByRole('button', { name: 'Study', exact: true }).focus();
    await page.keyboard.press('Enter');
    await page.getByRole('menu', { name: 'Study' }).waitFor();
    await page.keyboard.press('ArrowDown');
    expect(await focused(page)).toMatch(/^Colour …/);
    await page.keyboard.press('Escape');
    await expect.poll(() => focused(page)).toBe('Study');
  });

  test.each(dialogs)('leaves the dialog “%s” by Escape, back where it was', async (words) => {
    const { page } = workbench();
    await page.getByRole('textbox', { name: 'Section 2, Length', exact: true }).focus();
    await command(page, words);
    const dialog = await opened(page);
    expect(await dialog.evaluate((element) => element.contains(document.activeElement))).toBe(true);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'hidden' });
    await expect.poll(() => focused(page)).toBe('Section 2, Length');
  });
});

describe.each([
  ['at 200 % of 1280×800', { width: 640, height: 400 }],
  ['at 3840×2160', { width: 3840, height: 2160 }],
])('%s nothing is out of reach', (_, size) => {
  beforeEach(() => workbench().page.setViewportSize(size));

  test('in the window and every part of the description', async () => {
    const { page } = workbench();
    const faults: string[] = [];
    for (const name of parts) {
      await page.getByRole('tab', { name, exact: true }).click();
      faults.push(...(await cutOff(page, '.window')).map((fault) => `${name}: ${fault}`));
    }
    await page.getByRole('tab', { name: 'Screw', exact: true }).click();
    expect(faults.join('\n')).toBe('');
    expect(await lowestInSight(page)).toBe(true);
  });

  test('in any dialog', async () => {
    const { page } = workbench();
    const faults: string[] = [];
    for (const words of dialogs) {
      await command(page, words);
      await opened(page);
      faults.push(...(await cutOff(page, '.modal')).map((fault) => `${words}: ${fault}`));
      await page.keyboard.press('Escape');
      await page.getByRole('dialog').waitFor({ state: 'hidden' });
    }
    expect(faults.join('\n')).toBe('');
  });
});

test('nothing of this made an error', () => {
  expect(workbench().problems).toEqual([]);
});
