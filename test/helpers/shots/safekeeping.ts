/** Keeping work safe: kept work, changed and refused files, notices, about: how each picture is reached. */

import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { all, type Shot } from './steps.ts';

const demo = () => JSON.parse(readFileSync('assets/examples/demo.json', 'utf8'));

type Answer = (argument: { handle?: string; id?: string }) => unknown;

/** Lets the host's call answer otherwise, as it would on a machine where this has happened. */
const answering = (call: string, answer: Answer) => (page: Page) =>
  page.route(`**/api/${call}`, (route) =>
    route.fulfill({ json: { ok: true, value: answer(route.request().postDataJSON() ?? {}) } }),
  );

const since = '2026-03-02T09:41:00Z';
const machineFile = { path: '/home/me/heads/first-head.json', name: 'first-head.json' };

function kept(id: string, name: string, edits: number) {
  const project = demo();
  project.revisions[2].screw.radialClearanceMm = 0.19;
  project.revisions[2].screw.sections[1].lengthMm += 4;
  project.process.screwSpeedRpm = 24;
  const found = { id, name, path: `/home/me/heads/${name}`, at: since, edits };
  const steps = ['Section 2, Length', 'Flight clearance', 'Screw speed'];
  const drafts = { 'revisions/2/screw/steel/yieldMPa': '9o0' };
  const file = { handle: '0'.repeat(31).concat('1'), fileText: JSON.stringify(demo()), fileVersion: 'a'.repeat(64) };
  return { ...found, ...file, text: JSON.stringify(project), drafts, steps, fileChanged: edits > 5, holder: null };
}

const pieces = [kept('1'.repeat(32), 'first-head.json', 3), kept('2'.repeat(32), 'second-head.json', 12)];

/** Work kept by two windows that are gone, both looked at. */
async function offered(page: Page): Promise<void> {
  await answering('listRecoveries', () => pieces)(page);
  await answering('readRecovery', ({ id }) => pieces.find((piece) => piece.id === id) ?? pieces[0])(page);
  await page.reload();
  const dialog = page.getByRole('dialog', { name: 'Work that was not saved' });
  for (let i = 0; i < 2; i++) await dialog.getByRole('button', { name: 'Show what differs' }).first().click();
  await dialog.getByRole('button', { name: 'Throw away' }).first().click();
}

/** The demo as if it were a file of somebody's own. */
async function asFile(page: Page): Promise<void> {
  const handle = '3'.repeat(32);
  const opened = { ...machineFile, handle, text: JSON.stringify(demo()), version: 'b'.repeat(64), holder: null };
  await answering('readStartProject', () => opened)(page);
  await page.reload();
  await page.getByRole('textbox', { name: 'Flight clearance', exact: true }).waitFor();
}

async function edited(page: Page): Promise<void> {
  const field = page.getByRole('textbox', { name: 'Flight clearance', exact: true });
  await field.fill('0.21');
  await field.press('Enter');
}

const comeBack = (page: Page) => page.evaluate(() => window.dispatchEvent(new Event('focus')));

async function changedElsewhere(page: Page): Promise<void> {
  const theirs = demo();
  theirs.revisions[2].screw.sections[0].lengthMm = 52;
  theirs.process.screwSpeedRpm = 31;
  const file = { ...machineFile, handle: '3'.repeat(32), version: 'c'.repeat(64), holder: null };
  await answering('openRecent', () => ({ ...file, text: JSON.stringify(theirs) }))(page);
  await answering('lookAtFile', () => ({ state: 'changed', version: 'c'.repeat(64), holder: null }))(page);
  await comeBack(page);
  await page.getByRole('dialog', { name: 'The file was changed by somebody else' }).waitFor();
}

/** A file held elsewhere, gone from its folder, and a journal that cannot be written. */
async function troubled(page: Page): Promise<void> {
  const holder = { kind: 'program', machine: 'bench-2', since, alive: true };
  await answering('lookAtFile', () => ({ state: 'gone', version: null, holder }))(page);
  const full = {
    path: ['/home/me/.local/state/augerwright'],
    code: 'journal-unwritable',
    message: 'The drive is full.',
    remedy: 'Free some space.',
  };
  await page.route('**/api/writeJournal', (route) => route.fulfill({ json: { ok: false, issues: [full] } }));
  await edited(page);
  await comeBack(page);
  await page.locator('.banner[data-subject="journal"]').waitFor();
}

async function faulty(page: Page): Promise<void> {
  const broken = demo();
  broken.revisions[0].screw.radialClearanceMm = -1;
  broken.revisions[1].screw.sections[0].starts = 9;
  delete broken.print;
  await page.evaluate((text) => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File([text], 'from-the-workshop.json'));
    document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true }));
  }, JSON.stringify(broken));
  await page.getByRole('dialog', { name: 'The file cannot be opened' }).waitFor();
}

const dragging = (page: Page) =>
  page.evaluate(() => {
    const dataTransfer = new DataTransfer();
    dataTransfer.items.add(new File(['{}'], 'a.json'));
    document.body.dispatchEvent(new DragEvent('dragenter', { dataTransfer, bubbles: true }));
  });

/** Gives a command of a menu of the window. */
const command = (menu: string, item: RegExp) => async (page: Page) => {
  await page.getByRole('button', { name: menu, exact: true }).click();
  await page.getByRole('menuitem', { name: item }).click();
};

async function recentGone(page: Page): Promise<void> {
  const files = ['first-head.json', 'old-head.json'].map((name, i) => ({
    handle: `${i}`.repeat(32),
    path: `/home/me/heads/${name}`,
    name,
  }));
  await answering('listRecent', () => files)(page);
  await command('Project', /^Recent files/)(page);
  await page.getByRole('button', { name: /^old-head/ }).click();
  await page.getByText('cannot be opened any more').waitFor();
}

/** The table of checks, once all have run. */
async function evidence(page: Page): Promise<void> {
  await command('Help', /^Evidence/)(page);
  await page.getByText(/within their limits/).waitFor({ timeout: 120_000 });
}

/** A page of the handbook, at a picture of it. */
const handbookAt = (page: string) =>
  all(command('Help', /^Method handbook/), async (window) => {
    const book = window.getByRole('dialog', { name: 'Method handbook' });
    await book.getByRole('button', { name: page, exact: true }).click();
    await book.getByRole('img').first().scrollIntoViewIfNeeded();
  });

/** Its pictures. */
export const safekeepingShots: readonly Shot[] = [
  { name: 'keep-recovery', reach: offered },
  { name: 'keep-conflict', reach: all(asFile, edited, changedElsewhere) },
  { name: 'keep-notices', reach: all(asFile, troubled) },
  { name: 'keep-faults', reach: faulty },
  { name: 'keep-drop', reach: dragging },
  { name: 'keep-recent', reach: recentGone },
  { name: 'keep-about', reach: command('Help', /^About/) },
  { name: 'handbook', reach: command('Help', /^Method handbook/) },
  { name: 'handbook-geometry', unsettled: true, reach: handbookAt('Geometry') },
  { name: 'handbook-tip', unsettled: true, reach: handbookAt('Tip') },
  { name: 'handbook-search', unsettled: true, reach: handbookAt('Search') },
  { name: 'evidence', reach: evidence },
  { name: 'keep-menu', reach: (page) => page.getByRole('button', { name: 'Project', exact: true }).click() },
];
