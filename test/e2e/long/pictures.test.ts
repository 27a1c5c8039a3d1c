/**
 * Parts of the window against kept pictures, so that nothing changes its look unnoticed. The browser and its fonts come
 * in a package, so the same machine-independent picture is expected everywhere. `UPDATE_PICTURES=1` renews the kept ones:
 * look at them before committing.
 */

import { existsSync, mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import pixelmatch from 'pixelmatch';
import type { Locator, Page } from 'playwright-core';
import { PNG } from 'pngjs';
import { beforeEach, describe, expect, test } from 'vitest';
import { outFolder } from '../browser.ts';
import { screenshotLimit } from '../harness.ts';
import { sharedWorkbench } from '../sharedWorkbench.ts';

const kept = join(import.meta.dirname, 'pictures');
const renew = process.env.UPDATE_PICTURES === '1';

/** Side of the square window that differences are counted in, px: about one number, so that one digit counts. */
const windowPx = 32;
/** Share of differing pixels that any such window may hold: rounding of edges, not a digit, line or colour. */
const tolerance = 0.01;
/** Colour distance from which a pixel differs, share of black against white. */
const threshold = 0.04;

/** Largest share of differing pixels in any small window; all of it where sizes differ. `diff` shows where. */
function differing(one: PNG, other: PNG): { share: number; diff: PNG | null } {
  const { width, height } = one;
  if (width !== other.width || height !== other.height) return { share: 1, diff: null };
  const diff = new PNG({ width, height });
  const most = pixelmatch(one.data, other.data, diff.data, width, height, { threshold, windowSize: windowPx });
  return { share: most / windowPx ** 2, diff };
}

/** Writes what was seen, and where it differs, for people to look at. */
function leave(name: string, got: Uint8Array, diff: PNG | null): string {
  const folder = join(outFolder, 'pictures');
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, `${name}-got.png`), got);
  if (diff) writeFileSync(join(folder, `${name}-diff.png`), PNG.sync.write(diff));
  return folder;
}

/** Holds a part of the window against its kept picture. */
async function looksAs(part: Locator, name: string): Promise<void> {
  const got = await part.screenshot({ animations: 'disabled', timeout: screenshotLimit });
  const path = join(kept, `${name}.png`);
  if (renew) {
    mkdirSync(kept, { recursive: true });
    return writeFileSync(path, got);
  }
  if (!existsSync(path)) throw new Error(`no picture ${name} is kept; UPDATE_PICTURES=1 makes it`);
  const { share, diff } = differing(PNG.sync.read(got), PNG.sync.read(readFileSync(path)));
  if (share <= tolerance) return;
  expect.fail(`${name} looks otherwise (${(100 * share).toFixed(1)} % of a spot): see ${leave(name, got, diff)}`);
}

const workbench = sharedWorkbench({
  reducedMotion: 'reduce',
  readySelector: '.results[data-stale="false"][data-fields="solved"] [data-testid="output"]',
});

async function themed(page: Page, theme: 'light' | 'dark'): Promise<void> {
  await page.evaluate((wanted) => {
    document.documentElement.dataset.theme = wanted;
  }, theme);
}

describe('parts of the window look as they did', () => {
  beforeEach(async () => {
    const { page } = workbench();
    await page.mouse.move(640, 1);
    await themed(page, 'light');
  });

  test('verdict, in light and dark', async () => {
    const { page } = workbench();
    const verdict = page.locator('.verdict');
    await looksAs(verdict, 'verdict-light');
    await themed(page, 'dark');
    await looksAs(verdict, 'verdict-dark');
  });

  test('table of sections', async () => {
    await looksAs(workbench().page.locator('.section-scroll'), 'sections');
  });

  test('side drawing', async () => {
    await looksAs(workbench().page.locator('.side-drawing'), 'side');
  });

  test('drawing with dimensions', async () => {
    const { page } = workbench();
    await page.keyboard.press('Control+Shift+D');
    await looksAs(page.locator('.drawing'), 'drawing');
    await page.keyboard.press('Control+Shift+D');
  });

  test('heads laid over each other', async () => {
    const { page } = workbench();
    await page.keyboard.press('Control+d');
    const dialog = page.getByRole('dialog', { name: 'Compare revisions' });
    await dialog.getByRole('tab', { name: 'Drawings' }).click();
    // the base's flights come with its estimate; no fields are needed, and where they are solved there is nothing to stop
    await dialog.locator('.head-flight').first().waitFor();
    const stop = dialog.getByRole('button', { name: 'Stop calculating' });
    await stop.click({ timeout: 5000 }).catch(() => undefined);
    await dialog.getByRole('img', { name: /^Half-section of the heads/ }).waitFor();
    await looksAs(dialog.locator('.heads-box'), 'heads');
  });
});

test('a changed digit and a changed colour are seen', async () => {
  const { page } = workbench();
  await page.keyboard.press('Escape');
  await page.getByRole('dialog').waitFor({ state: 'hidden' });
  await themed(page, 'light');
  const verdict = page.locator('.verdict');
  const picture = async () =>
    PNG.sync.read(await verdict.screenshot({ animations: 'disabled', timeout: screenshotLimit }));
  const before = await picture();
  const share = async () => differing(await picture(), before).share;
  expect(await share()).toBe(0);
  const number = verdict.locator('.capacity .number-text').first();
  const write = (text: string) =>
    number.evaluate((element, said) => {
      if (element.firstChild) element.firstChild.nodeValue = said;
    }, text);
  const said = (await number.textContent()) ?? '';
  await write(said.replace(/\d(?=\D*$)/, (digit) => String((Number(digit) + 1) % 10)));
  expect(await share()).toBeGreaterThan(tolerance);
  await write(said);
  await number.evaluate((element) => element.style.setProperty('color', 'rgb(120 60 0)'));
  expect(await share()).toBeGreaterThan(tolerance);
  await number.evaluate((element) => element.style.removeProperty('color'));
  expect(await share()).toBe(0);
});
