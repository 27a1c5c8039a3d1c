import { afterAll, beforeAll, expect, test } from 'vitest';
import { openWorkbench, screenshot, settled, type Workbench } from './harness.ts';

let workbench: Workbench;

beforeAll(async () => {
  workbench = await openWorkbench();
});

afterAll(async () => {
  await workbench?.close();
});

test('the demo is predicted without console errors, exceptions, failed requests or policy violations', async () => {
  await settled(workbench.page);
  await screenshot(workbench.page, 'smoke');
  expect(await workbench.page.locator('[role="alert"]').count()).toBe(0);
  expect(await workbench.page.title()).toContain('Augerwright');
  expect(workbench.problems).toEqual([]);
});

test('the page is cross-origin isolated, so that solver workers may share memory', async () => {
  expect(await workbench.page.evaluate(() => globalThis.crossOriginIsolated)).toBe(true);
});

test('a picture of the handbook comes from our own origin and is drawn', async () => {
  const { page, problems } = workbench;
  await page.getByRole('button', { name: 'Help', exact: true }).click();
  await page.getByRole('menuitem', { name: /^Method handbook/ }).click();
  const book = page.getByRole('dialog', { name: 'Method handbook' });
  await book.getByRole('button', { name: 'Tip', exact: true }).click();
  const image = book.getByRole('img').first();
  await expect.poll(() => image.evaluate((one: HTMLImageElement) => one.naturalWidth)).toBeGreaterThan(500);
  expect(await image.evaluate((one: HTMLImageElement) => new URL(one.src).origin === location.origin)).toBe(true);
  expect(problems).toEqual([]);
  await page.keyboard.press('Escape');
});

test('inline code is refused, and the harness notices it', async () => {
  const before = workbench.problems.length;
  const ran = await workbench.page.evaluate(async () => {
    const script = document.createElement('script');
    script.textContent = 'globalThis.inlineRan = true';
    document.head.append(script);
    return 'inlineRan' in globalThis;
  });
  expect(ran).toBe(false);
  expect(workbench.problems.length).toBeGreaterThan(before);
});
