import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { openWorkbench, screenshot, type Workbench } from '../harness.ts';

let workbench: Workbench;

beforeAll(async () => {
  workbench = await openWorkbench({
    reducedMotion: 'reduce',
    readySelector: '.results[data-stale="false"] [data-testid="output"]',
  });
});

afterAll(() => workbench?.close());

const outputOf = (page: Page) => page.locator('[data-testid="output"]').textContent();

/** The output once it is current and another one than `before`. */
async function outputAfter(page: Page, before: string | null): Promise<string> {
  await page.waitForFunction((old) => {
    const results = document.querySelector<HTMLElement>('.results');
    const output = document.querySelector('[data-testid="output"]')?.textContent;
    return results?.dataset.stale === 'false' && output !== old;
  }, before);
  return (await outputOf(page)) ?? '';
}

test('a material of the library is added and run, its law is switched, and all of it is undone', async () => {
  const { page } = workbench;
  const start = await outputOf(page);
  await page.getByRole('tab', { name: 'Granulate' }).click();
  await page.getByRole('button', { name: 'Add from library' }).click();
  await page.getByRole('menuitem', { name: /^HDPE/ }).click();
  const list = page.getByRole('list', { name: 'Materials of this project' });
  await list.getByText('HDPE, generic').waitFor();
  // first figures, which are coarse, may have stood in meanwhile
  await page.waitForSelector('.results[data-stale="false"]');
  expect(await outputOf(page)).toBe(start);

  await page.getByRole('combobox', { name: 'Granulate' }).selectOption({ label: 'HDPE, generic' });
  const pellets = await outputAfter(page, start);
  // Pellets of 3 mm do not fit this small screw, whatever the melt; ground ones do.
  expect(pellets).toMatch(/^0\b/);
  for (const [name, size] of Object.entries({ 'Grain d10': '0.8', 'Grain d50': '1', 'Grain d90': '1.2 mm' })) {
    await page.getByRole('textbox', { name, exact: true }).fill(size);
    await page.getByRole('textbox', { name, exact: true }).press('Enter');
  }
  const ground = await outputAfter(page, pellets);
  const law = page.getByRole('combobox', { name: 'Viscosity law' });
  expect(await law.inputValue()).toBe('crossWlf');
  expect(await page.locator('.viscosity canvas').count()).toBe(1);

  await law.selectOption('newtonian');
  await outputAfter(page, ground);
  expect(await page.locator('.status-estimated').count()).toBeGreaterThan(1);
  await screenshot(page, 'granulate-newtonian');

  const steps = ['Viscosity law', 'Grain d90', 'Grain d50', 'Grain d10', 'Material of this revision', 'Add HDPE'];
  for (const step of steps) await page.getByRole('button', { name: `Undo: ${step}` }).click();
  await page.waitForFunction(
    (output) => document.querySelector('[data-testid="output"]')?.textContent === output,
    start,
  );
  expect(await list.getByText('HDPE, generic').count()).toBe(0);
  expect(await page.getByRole('button', { name: /^Undo/ }).isDisabled()).toBe(true);
  expect(workbench.problems).toEqual([]);
});
