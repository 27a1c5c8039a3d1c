/** Ways through the window that its long tests share: commands by their words, dialogs and their tabs, all by keys. */

import type { Locator, Page } from 'playwright-core';

/** Parts of the description, by their tabs. */
export const parts = ['Granulate', 'Screw', 'Tip & shank', 'Barrel', 'Nozzle', 'Hopper', 'Drive', 'Running', 'Print'];

/** Commands that open a dialog, by words that find them. */
export const dialogs = [
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
  'Method handbook',
  'Evidence',
];

/** Runs a command by its words, as somebody without a mouse does. */
export async function command(page: Page, words: string): Promise<void> {
  await page.keyboard.press('Control+k');
  const finder = page.getByRole('searchbox', { name: 'Type to find a command' });
  await finder.fill(words);
  await page.keyboard.press('Enter');
  await finder.waitFor({ state: 'hidden', timeout: 10_000 });
}

/** Opens a dialog by its command; answers with it. */
export async function opened(page: Page, words: string): Promise<Locator> {
  await command(page, words);
  const dialog = page.getByRole('dialog');
  // what is in it may be fetched or worked out first
  await dialog.locator('.dialog-body :is(button, input, select, textarea)').locator('visible=true').first().waitFor();
  return dialog;
}

/**
 * Shows the head as a solid or drawn. A software rasteriser takes seconds over every picture of the solid, and each
 * change of theme or size asks for one, so tests that are not about it look at the drawing.
 */
export async function see(page: Page, how: 'solid' | 'drawn'): Promise<void> {
  const drawn = page.getByRole('toolbar', { name: 'Tools of the drawing' });
  if ((await drawn.isVisible()) === (how === 'drawn')) return;
  await page.keyboard.press('Control+Shift+D');
  await drawn.waitFor({ state: how === 'drawn' ? 'visible' : 'hidden' });
}

/** Leaves what is open by Escape. */
export async function leave(page: Page): Promise<void> {
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'hidden' });
}

/**
 * Visits each tab of a dialog by arrow keys and goes back to the first; `visit` gets its name, or an empty one where the
 * dialog has no tabs. Tabs whose names are `skipped` have to be the last ones.
 */
export async function eachTab(
  dialog: Locator,
  visit: (name: string) => Promise<void>,
  skipped: RegExp | null = null,
): Promise<void> {
  const tabs = dialog.getByRole('tab');
  const names = (await tabs.allTextContents()).filter((name) => !skipped?.test(name));
  if (names.length === 0) return visit('');
  await tabs.first().focus();
  for (const [place, name] of names.entries()) {
    if (place > 0) await dialog.page().keyboard.press('ArrowRight');
    await dialog.getByRole('tab', { name, exact: true, selected: true }).waitFor();
    await visit(name);
  }
  await dialog.page().keyboard.press('Home');
}
