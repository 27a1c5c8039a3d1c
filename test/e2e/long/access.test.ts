/** Every view and every dialog against the accessibility checker; colours in every theme. */

import type { Page } from 'playwright-core';
import { afterEach, describe, expect, test } from 'vitest';
import { accessFaults, colourFaults } from '../axe.ts';
import { sharedWorkbench } from '../sharedWorkbench.ts';
import { command, dialogs, eachTab, leave, opened, parts, see } from './walk.ts';

const workbench = sharedWorkbench({
  reducedMotion: 'reduce',
  readySelector: '.results[data-stale="false"][data-fields="solved"] [data-testid="output"]',
});

afterEach(() => leave(workbench().page));

/** Faults of a part of the page in every theme. */
const faultsOf = async (page: Page, within: string, name = within): Promise<string[]> =>
  [...(await accessFaults(page, { within })), ...(await colourFaults(page, within))].map((one) => `${name}: ${one}`);

describe('the accessibility checker has nothing to say', () => {
  test('of the whole window', async () => {
    const { page } = workbench();
    expect((await accessFaults(page)).join('\n')).toBe('');
    await see(page, 'drawn');
    expect((await colourFaults(page, '.window')).join('\n')).toBe('');
    await see(page, 'solid');
  });

  test('of the melt’s age, and of the drawing with dimensions', async () => {
    const { page } = workbench();
    await page.keyboard.press('Alt+5');
    await page.getByRole('region', { name: 'Colours of the melt' }).waitFor();
    const faults = await accessFaults(page, { within: '.see' });
    await page.keyboard.press('Alt+5');
    await see(page, 'drawn');
    faults.push(...(await faultsOf(page, '.see')));
    expect(faults.join('\n')).toBe('');
  });

  test('of every part of the description', async () => {
    const { page } = workbench();
    await see(page, 'drawn');
    const faults: string[] = [];
    for (const name of parts) {
      await page.getByRole('tab', { name, exact: true }).click();
      faults.push(...(await faultsOf(page, '.describe', name)));
    }
    expect(faults.join('\n')).toBe('');
  });

  test.each(dialogs)('of the dialog “%s”', async (words) => {
    const { page } = workbench();
    await see(page, 'drawn');
    const faults: string[] = [];
    await eachTab(await opened(page, words), async (tab) => {
      // another theme draws three solids anew, over which a software rasteriser takes a minute
      const solid = /3D/.test(tab);
      faults.push(...(await (solid ? accessFaults(page, { within: '.overlay' }) : faultsOf(page, '.overlay', tab))));
    });
    expect(faults.join('\n')).toBe('');
  });

  test('of the list of commands', async () => {
    const { page } = workbench();
    await page.keyboard.press('Control+k');
    await page.getByRole('searchbox').waitFor();
    expect((await faultsOf(page, '.overlay')).join('\n')).toBe('');
  });

  test.each(['Project', 'Edit', 'Revision', 'Study', 'View', 'Help'])('of the menu “%s”', async (name) => {
    const { page } = workbench();
    await page.getByRole('navigation', { name: 'Menus' }).getByRole('button', { name, exact: true }).click();
    await page.getByRole('menu', { name }).waitFor();
    expect((await faultsOf(page, '.popover')).join('\n')).toBe('');
    await page.keyboard.press('Escape');
    await page.getByRole('menu', { name }).waitFor({ state: 'hidden' });
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
});

test('the command for themes goes round light, dark and high contrast', async () => {
  const { page } = workbench();
  for (const theme of ['dark', 'contrast', 'light']) {
    await command(page, 'high contrast');
    await page.waitForSelector(`:root[data-theme="${theme}"]`);
  }
});

test('nothing of this made an error', () => {
  expect(workbench().problems).toEqual([]);
});
