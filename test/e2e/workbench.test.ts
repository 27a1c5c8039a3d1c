import { beforeEach, expect, test } from 'vitest';
import { screenshot } from './harness.ts';
import { sharedWorkbench } from './sharedWorkbench.ts';

const workbench = sharedWorkbench({
  reducedMotion: 'reduce',
  readySelector: '.results[data-stale="false"][data-fields="solved"] [data-testid="output"]',
});

beforeEach(async () => {
  await workbench().page.waitForSelector('.scene canvas');
});

interface Seen {
  readonly output: string;
  readonly hash: string;
  readonly triangles: number;
}

/** What the window says of output and solid, once both are current. */
async function seen(): Promise<Seen> {
  const { page } = workbench();
  await page.waitForSelector('.results[data-stale="false"][data-fields="solved"]');
  return page.evaluate(() => {
    const scene = document.querySelector<HTMLElement>('.scene');
    return {
      output: document.querySelector('[data-testid="output"]')?.textContent ?? '',
      hash: scene?.dataset.meshHash ?? '',
      triangles: Number(scene?.dataset.triangles),
    };
  });
}

const field = (label: string) => workbench().page.getByRole('textbox', { name: label, exact: true });

/** Waits until the solid is another one than `before` and everything is current. */
async function seenAfter(before: Seen): Promise<Seen> {
  await workbench().page.waitForFunction(
    (hash) => document.querySelector<HTMLElement>('.scene')?.dataset.meshHash !== hash,
    before.hash,
  );
  return seen();
}

const picture = async () => (await workbench().page.locator('.scene canvas').screenshot()).toString('base64');

/** The picture once it no longer changes. */
async function settledPicture(): Promise<string> {
  let [last, next] = ['', await picture()];
  while (last !== next) {
    await workbench().page.waitForTimeout(400);
    [last, next] = [next, await picture()];
  }
  return next;
}

/** Whether the picture is `other`, asked again until it is as expected. */
const expectPicture = (other: string) => expect.poll(async () => (await picture()) === other, { timeout: 30_000 });

test('a changed depth changes the numbers and the solid, and undo brings both back', async () => {
  const { page } = workbench();
  const before = await seen();
  const pictureBefore = await settledPicture();
  expect(before.triangles).toBeGreaterThan(1000);
  const depth = field('Section 3, Root Ø end');
  const typedBefore = await depth.inputValue();
  await depth.fill('9.2 mm');
  await depth.press('Enter');
  const changed = await seenAfter(before);
  expect(changed.output).not.toBe(before.output);
  expect(await depth.inputValue()).toBe('9.2');
  await expectPicture(pictureBefore).toBe(false);
  await screenshot(page, 'workbench-changed');

  await page.getByRole('button', { name: /^Undo: Section 3, Root Ø end/ }).click();
  const restored = await seenAfter(changed);
  expect(restored).toEqual(before);
  expect(await depth.inputValue()).toBe(typedBefore);
  await expectPicture(pictureBefore).toBe(true);

  await page.keyboard.press('Control+Shift+Z');
  expect(await seenAfter(restored)).toEqual(changed);
  expect(workbench().problems).toEqual([]);
});

test('a refused value stays typed, says what is allowed, and leaves the results alone', async () => {
  const before = await seen();
  const depth = field('Section 3, Root Ø end');
  await depth.fill('12 rpm');
  await depth.press('Enter');
  expect(await depth.inputValue()).toBe('12 rpm');
  expect(await depth.getAttribute('aria-invalid')).toBe('true');
  expect(await workbench().page.locator('#section-issues').textContent()).toMatch(/Section 3.*rotation.*mm/s);
  expect(await seen()).toEqual(before);
  await depth.press('Escape');
  expect(await depth.getAttribute('aria-invalid')).toBe('false');
});

test('a root that does not fit the bore stops the prediction, keeps the old results and leads to the field', async () => {
  const { page } = workbench();
  const { output } = await seen();
  await field('Section 3, Root Ø end').fill('20');
  await field('Section 3, Root Ø end').press('Enter');
  const refused = page.locator('.results .refused');
  await refused.waitFor();
  expect(await page.getAttribute('.results', 'data-stale')).toBe('true');
  expect(await page.locator('[data-testid="output"]').textContent()).toBe(output);
  await page.getByRole('tab', { name: 'Barrel' }).click();
  await refused.getByRole('button').first().click();
  await page.waitForFunction(() => document.activeElement?.getAttribute('data-path')?.includes('rootDiameter'));
  expect(await page.evaluate(() => document.activeElement?.getAttribute('aria-invalid'))).toBe('true');
});

test('a fault of the whole screw leads to its first section', async () => {
  const { page } = workbench();
  await field('Section 1, Length').fill('400');
  await field('Section 1, Length').press('Enter');
  await page.getByRole('tab', { name: 'Print' }).click();
  await page.locator('.results .refused').getByRole('button').first().click();
  await page.waitForFunction(() => document.activeElement?.getAttribute('data-path')?.includes('sections/0/'));
});

test('a finding marks its place in the drawing', async () => {
  const { page } = workbench();
  expect(await page.locator('.draw-mark').count()).toBe(0);
  await page.locator('.finding-head').first().waitFor();
  const show = page.getByRole('button', { name: 'Show where' });
  for (const head of await page.locator('.finding-head').all()) {
    if ((await show.count()) > 0) break;
    await head.click();
  }
  await show.first().click();
  expect(await page.locator('.draw-mark').count()).toBe(1);
});

test('pointing at the axis reads every lane at once, under names that do not cover each other', async () => {
  const { page } = workbench();
  const plot = await page.locator('.axial .u-over').boundingBox();
  if (!plot) throw new Error('no plot along the axis');
  await page.mouse.move(plot.x + 0.42 * plot.width, plot.y + plot.height / 2);
  for (const key of ['pressure', 'solid', 'filled', 'molten']) {
    expect(await page.locator(`.key-${key} + dd`).textContent()).toMatch(/^[\d.]+ (MPa|kPa|Pa|°C|%|mm)$/);
  }
  const x = await page.locator('.lane-hover').getAttribute('x1');
  expect(await page.locator('.draw-hover').getAttribute('x1')).toBe(x);
  const names = await page
    .locator('.melt-marks text')
    .evaluateAll((all) => all.map((one) => one.getBoundingClientRect()).map(({ left, right }) => [left, right]));
  expect(names.length).toBeGreaterThan(1);
  for (const [i, [left]] of names.slice(1).entries()) expect(left).toBeGreaterThan(names[i]?.[1] ?? 0);
});

test('a number for the controller can be copied', async () => {
  const { page } = workbench();
  await page.getByRole('button', { name: 'Copy the number: Motor steps per mm³' }).click();
  expect(await page.locator('.copy-all output').textContent()).toMatch(/^Copied: [\d.]+$/);
});

test('another revision is another machine; a branch of it can be edited', async () => {
  const { page } = workbench();
  const before = await seen();
  await page.getByRole('button', { name: /^A: / }).click();
  const first = await seenAfter(before);
  expect(first.output).not.toBe(before.output);
  expect(await field('Section 1, Length').isEditable()).toBe(false);
  await page.getByRole('button', { name: 'Branch it' }).click();
  await page.locator('.locked-note').waitFor({ state: 'detached' });
  expect(await field('Section 1, Length').isEditable()).toBe(true);
});

test('an example opens with its own machine, and the view stays alive', async () => {
  const { page } = workbench();
  const before = await seen();
  await page.getByRole('button', { name: 'Project', exact: true }).click();
  await page.getByRole('menuitem', { name: /^Examples/ }).click();
  await page.getByRole('dialog').getByRole('button', { name: /wax/i }).click();
  const opened = await seenAfter(before);
  expect(opened.output).not.toBe(before.output);
  // The old view gives its drawing context up only after a while.
  await page.waitForTimeout(1500);
  expect(await page.locator('.scene canvas').count()).toBe(1);
  expect(await page.locator('.no-scene').count()).toBe(0);
  expect(workbench().problems).toEqual([]);
});
