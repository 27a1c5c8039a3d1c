import { expect, test } from 'vitest';
import { sharedWorkbench } from './sharedWorkbench.ts';

const workbench = sharedWorkbench({
  reducedMotion: 'reduce',
  readySelector: '.results[data-stale="false"] [data-testid="output"]',
});

const solved = '.results[data-stale="false"][data-fields="solved"]';
const attribute = (selector: string, name: string) => workbench().page.locator(selector).first().getAttribute(name);

test('after an estimate come solved fields: melt is painted, places where it lingers are listed and can be visited', async () => {
  const { page } = workbench();
  await page.waitForSelector('.results[data-fields="formula"]');
  await page.waitForSelector(solved);
  expect(await page.locator('.run-state').textContent()).toMatch(/^Solved fields/);

  const look = await attribute('.scene canvas', 'data-look-z');
  expect(await attribute('.scene', 'data-painted')).toBe('0');
  await page.getByRole('button', { name: 'Melt age' }).click();
  await page.waitForFunction(() => Number(document.querySelector<HTMLElement>('.scene')?.dataset.painted) > 5000);
  expect(await page.locator('.melt-legend').textContent()).toMatch(/\d s/);

  const spots = page.locator('.spot');
  expect(await spots.count()).toBeGreaterThan(0);
  expect(await page.locator('.spot-marker').count()).toBe(await spots.count());
  expect(await spots.first().textContent()).toMatch(/mm³.*s since melting, .*× mean/);
  const across = await attribute('.across-box', 'data-z');
  await spots.first().press('Enter');
  await page.waitForFunction((z) => document.querySelector<HTMLElement>('.scene canvas')?.dataset.lookZ !== z, look);
  expect(await spots.first().getAttribute('aria-pressed')).toBe('true');
  const z = Number(await spots.first().getAttribute('data-z'));
  expect(Number(await attribute('.scene canvas', 'data-look-z'))).toBeCloseTo(1000 * z, 1);
  expect(await page.locator('.draw-mark').count()).toBe(1);
  expect(await attribute('.across-box', 'data-z')).not.toBe(across);
  expect(workbench().problems).toEqual([]);
});

test('a position picked in the plot along the axis changes the section, and pointing reads it', async () => {
  const { page } = workbench();
  await page.waitForSelector(solved);
  await page.locator('.across-box').scrollIntoViewIfNeeded();
  const before = await attribute('.across-box', 'data-oldest');
  const plot = await page.locator('.axial .u-over').boundingBox();
  await page.mouse.click((plot?.x ?? 0) + 0.62 * (plot?.width ?? 0), (plot?.y ?? 0) + 20);
  await page.waitForFunction(
    (oldest) => document.querySelector<HTMLElement>('.across-box')?.dataset.oldest !== oldest,
    before,
  );
  const picture = page.locator('.across-picture');
  const box = await picture.boundingBox();
  await picture.hover({ position: { x: (box?.width ?? 0) / 2, y: 30 } });
  expect(await page.locator('.across-reading').textContent()).toMatch(/mm .*s .*mm\/s/);
  await page.getByLabel('Coloured by').selectOption('speed');
  expect(await page.locator('.across-box .ramp').textContent()).toMatch(/mm\/s/);
});

test('an edit shows its estimate while the older fields stay in sight, marked as such', async () => {
  const { page } = workbench();
  await page.waitForSelector(solved);
  const depth = page.getByRole('textbox', { name: 'Section 3, Root Ø end', exact: true });
  await depth.fill('10.2');
  await depth.press('Enter');
  await page.waitForSelector('.results[data-stale="false"][data-fields="formula"]');
  expect(await page.locator('.melt').getAttribute('data-old')).toBe('true');
  expect(await page.locator('.spot').count()).toBeGreaterThan(0);
  await page.waitForSelector(solved);
  expect(await page.locator('.melt').getAttribute('data-old')).toBe('false');
});
