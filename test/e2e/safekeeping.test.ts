import { copyFileSync, mkdtempSync, readFileSync, rmSync, unlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { accessFaults } from './axe.ts';
import { launchBrowser } from './browser.ts';
import { openWorkbench, type Workbench } from './harness.ts';

const folder = mkdtempSync(join(tmpdir(), 'augerwright-work-'));
const file = join(folder, 'mine.json');
let workbench: Workbench;
let page: Page;

beforeAll(async () => {
  copyFileSync('assets/examples/demo.json', file);
  const recentListPath = join(folder, 'recent.json');
  const browser = await launchBrowser();
  workbench = await openWorkbench({ browser, file, quietAfterMs: 300, recentListPath, noCalculation: true });
  page = workbench.page;
  page.context().setDefaultTimeout(15_000);
  await page.getByRole('textbox', { name: label, exact: true }).waitFor();
});

afterAll(async () => {
  const browser = page?.context().browser();
  await workbench?.close();
  await browser?.close();
  rmSync(folder, { recursive: true, force: true });
});

const label = 'Flight clearance';
const field = (on: Page = page) => on.getByRole('textbox', { name: label, exact: true });
const unsaved = () => page.locator('.unsaved');
const dialog = (name: string, on: Page = page) => on.getByRole('dialog', { name });
const button = (name: string | RegExp, on: Page = page) => on.getByRole('button', { name, exact: true });
const banner = (subject: string) => page.locator(`.banner[data-subject="${subject}"]`);

/** Takes a value over and waits until the host keeps it. */
async function edit(value: string): Promise<void> {
  const holds = page.waitForRequest((request) => {
    const body = request.url().endsWith('/api/writeJournal') ? request.postData() : null;
    return body?.includes(`"radialClearanceMm\\":${value}`) ?? false;
  });
  await field().fill(value);
  await field().press('Enter');
  await (await holds).response();
}

/** What the file says of the clearance of the revision that is shown. */
const onDisk = (): number => {
  const { revisions, activeRevision } = JSON.parse(readFileSync(file, 'utf8'));
  return revisions.find(({ id }: { id: string }) => id === activeRevision).screw.radialClearanceMm;
};

/** Somebody else writes the file. */
function writeElsewhere(value: number): void {
  const project = JSON.parse(readFileSync(file, 'utf8'));
  const shown = project.revisions.find(({ id }: { id: string }) => id === project.activeRevision);
  shown.screw.radialClearanceMm = value;
  writeFileSync(file, JSON.stringify(project));
}

/** The window is come back to. */
const comeBack = () => page.evaluate(() => window.dispatchEvent(new Event('focus')));

/** Drops files of these names and texts on the window. */
const drop = (...files: readonly (readonly [name: string, text: string])[]) =>
  page.evaluate((dropped) => {
    const dataTransfer = new DataTransfer();
    for (const [name, text] of dropped) dataTransfer.items.add(new File([text], name));
    for (const type of ['dragenter', 'dragover', 'drop'])
      document.body.dispatchEvent(new DragEvent(type, { dataTransfer, bubbles: true, cancelable: true }));
  }, files);

test('a page loaded anew has its unsaved work back, typed text included, as one step over the file', async () => {
  const before = await field().inputValue();
  await edit('0.31');
  const typed = page.waitForRequest((request) => request.postData()?.includes('"9000"') ?? false);
  await field().fill('9000');
  await (await typed).response();
  page.once('dialog', (question) => void question.accept());
  await page.reload();
  await page.getByText('is back as it was').waitFor();
  expect(await field().inputValue()).toBe('9000');
  await field().press('Escape');
  expect(await field().inputValue()).toBe('0.31');
  await button(/^Undo: Work brought back/).click();
  expect(await field().inputValue()).toBe(before);
  expect(await unsaved().count()).toBe(0);
});

test('a file changed by somebody else is told, with what differs, and is not written over unasked', async () => {
  writeElsewhere(0.4);
  await comeBack();
  await banner('file').getByRole('button', { name: 'Read it again' }).click();
  await page.getByText('Read mine.json again.').waitFor();
  expect(await field().inputValue()).toBe('0.4');

  await edit('0.25');
  writeElsewhere(0.5);
  await button(/^Save \(/).click();
  const asked = dialog('The file was changed by somebody else');
  await asked.waitFor();
  expect(onDisk()).toBe(0.5);
  expect(
    await asked
      .getByRole('row', { name: /Flight clearance, mm/ })
      .first()
      .textContent(),
  ).toMatch(/0\.5.*0\.25/);
  expect(await accessFaults(page)).toEqual([]);
  await button('Take theirs').click();
  expect(await field().inputValue()).toBe('0.5');
  await button(/^Undo: Read from the file again/).click();
  expect(await field().inputValue()).toBe('0.25');

  writeElsewhere(0.6);
  await comeBack();
  await asked.waitFor();
  await button('Keep mine').click();
  expect(onDisk()).toBe(0.6);
  await button(/^Save \(/).click();
  await page.getByText('Saved mine.json.').waitFor();
  expect(onDisk()).toBe(0.25);
});

test('a file that is gone is told; the work stays', async () => {
  const text = readFileSync(file, 'utf8');
  unlinkSync(file);
  await comeBack();
  await banner('file').getByText('is not there any more').waitFor();
  writeFileSync(file, text);
  await comeBack();
  await banner('file').waitFor({ state: 'detached' });
});

test('work of a window that is gone is offered with what differs, and gone on with', async () => {
  const other = await page.context().newPage();
  await other.goto(workbench.host.address);
  await field(other).waitFor();
  await edit('0.27');
  await page.close({ runBeforeUnload: false });
  await other.waitForTimeout(400);
  await other.reload();
  page = other;
  const offered = dialog('Work that was not saved');
  await offered.waitFor();
  expect(
    await offered
      .getByRole('row', { name: /Flight clearance, mm/ })
      .first()
      .textContent(),
  ).toMatch(/0\.25.*0\.27/);
  expect(await offered.getByText('Last edits').locator('..').textContent()).toContain(label);
  expect(await accessFaults(page)).toEqual([]);
  await button('Go on with it').click();
  await offered.waitFor({ state: 'detached' });
  expect(await field().inputValue()).toBe('0.27');
  expect(await unsaved().count()).toBe(1);
  expect(onDisk()).toBe(0.25);
  await button(/^Save \(/).click();
  await page.getByText('Saved mine.json.').waitFor();
  expect(onDisk()).toBe(0.27);
});

test('dropped files go where they belong, and others are refused by name', async () => {
  await drop(['a.csv', 'x'], ['b.csv', 'y']);
  await banner('drop').getByText('2 files were dropped').waitFor();
  await drop(['photo.png', 'x']);
  const faults = dialog('The file cannot be opened');
  await faults.getByText('photo.png has 1 fault').waitFor();
  await page.keyboard.press('Escape');
  const broken = JSON.parse(readFileSync(file, 'utf8'));
  broken.revisions[0].screw.radialClearanceMm = -1;
  delete broken.process;
  await drop(['broken.json', JSON.stringify(broken)]);
  await faults.getByRole('row', { name: /radialClearanceMm/ }).waitFor();
  expect(await faults.getByRole('row').count()).toBeGreaterThan(2);
  expect(await accessFaults(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await drop(['trials.csv', 'date;rpm;mass (g)\n2026-02-12;10;8,1']);
  await dialog('Bench log').getByText('trials.csv').waitFor();
  await page.keyboard.press('Escape');
  await drop(['wax-head.json', readFileSync('assets/examples/wax-head.json', 'utf8')]);
  await page.getByText('Opened wax-head.json.').waitFor();
});

test('recent files open again; one that is gone says so and is taken off the list', async () => {
  rmSync(file);
  await page.getByRole('button', { name: 'Project', exact: true }).click();
  await page.getByRole('menuitem', { name: /^Recent files/ }).click();
  const recent = dialog('Recent files');
  await recent.getByRole('button', { name: /^mine\.json/ }).click();
  await recent.getByText('There is no such file').waitFor();
  await button('Take off the list: mine.json').click();
  await recent.getByText('No file has been opened or saved yet.').waitFor();
  await page.keyboard.press('Escape');
});

test('the about box names versions and licence', async () => {
  await page.getByRole('button', { name: 'Help', exact: true }).click();
  await page.getByRole('menuitem', { name: 'About Augerwright' }).click();
  const about = dialog('About Augerwright');
  await about.getByText('Runs on').waitFor();
  expect(await about.textContent()).toMatch(/Node \d+/);
  expect(await accessFaults(page)).toEqual([]);
  await page.keyboard.press('Escape');
});
