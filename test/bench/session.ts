/**
 * What a long session leaves in memory: edits in bursts, a prediction after each burst, the 3D view left and
 * entered in between. Memory is read after the page's garbage was collected.
 */

import { readFileSync } from 'node:fs';
import type { CDPSession, Page } from 'playwright-core';
import { launchBrowser } from '../e2e/browser.ts';
import { openWorkbench, settled } from '../e2e/harness.ts';

const [edits = 1000, predictions = 200] = process.argv.slice(2).map(Number);
/** Edits of one burst, quicker than the window answers. */
const burst = Math.round(edits / predictions);

/** Predictions after which the level is taken that later ones are held against. */
const settledAfter = 50;
/** Most that the level may have grown by the end, as a share. */
const goal = 0.2;

/** Memory in use, MB: the page's own heap, and what its process holds for itself, workers and pictures too. */
interface Level {
  readonly page: number;
  /** null where the system does not tell */
  readonly process: number | null;
}

/** Memory that the processes of pages hold for themselves, MB; Linux alone tells. */
async function ownedByPages(browser: CDPSession): Promise<number | null> {
  const { processInfo } = (await browser.send('SystemInfo.getProcessInfo')) as {
    processInfo: { type: string; id: number }[];
  };
  try {
    const kilobytes = processInfo
      .filter(({ type }) => type === 'renderer')
      .map(({ id }) => Number(/^Private_Dirty:\s+(\d+)/m.exec(readFileSync(`/proc/${id}/smaps_rollup`, 'utf8'))?.[1]));
    return kilobytes.reduce((sum, one) => sum + one, 0) / 1000;
  } catch {
    return null;
  }
}

async function level(tools: CDPSession, browser: CDPSession): Promise<Level> {
  // two rounds: what the first one finalises holds further objects
  for (let k = 0; k < 2; k++) await tools.send('HeapProfiler.collectGarbage');
  const { metrics } = await tools.send('Performance.getMetrics');
  const used = metrics.find(({ name }) => name === 'JSHeapUsedSize')?.value ?? Number.NaN;
  return { page: used / 1e6, process: await ownedByPages(browser) };
}

/** A burst of typing into two fields by turns, so that each is a step of its own; quicker than a person, in the page. */
async function edit(page: Page, from: number, count: number): Promise<void> {
  const fieldOf = (end: string) =>
    page.getByRole('textbox', { name: `Section 3, Root Ø ${end}`, exact: true }).elementHandle();
  const fields = [await fieldOf('start'), await fieldOf('end')];
  for (let k = from; k < from + count; k++)
    await fields[k % 2]?.evaluate(
      (element, value) => {
        const field = element as HTMLInputElement;
        field.focus();
        // React sees what is typed only when it is set past its own setter
        Object.getOwnPropertyDescriptor(HTMLInputElement.prototype, 'value')?.set?.call(field, value);
        field.dispatchEvent(new Event('input', { bubbles: true }));
        field.dispatchEvent(new KeyboardEvent('keydown', { key: 'Enter', bubbles: true, cancelable: true }));
      },
      (10.2 + 0.01 * (k % 17)).toFixed(2),
    );
}

/** Goes to the drawing and back, which takes the 3D view down and builds it anew. */
async function lookAround(page: Page): Promise<void> {
  for (const k of [1, 0]) {
    await page.locator('.see-switch button').nth(k).click();
    await page.evaluate(() => new Promise((next) => requestAnimationFrame(() => requestAnimationFrame(next))));
  }
}

const current = '.results[data-stale="false"] [data-testid="output"]';
const browser = await launchBrowser();
const { page, problems, close } = await openWorkbench({ width: 1280, height: 800, browser });
await settled(page);
const tools = await page.context().newCDPSession(page);
await tools.send('Performance.enable');
const whole = await browser.newBrowserCDPSession();

const say = (done: number, { page: here, process: all }: Level) => {
  const row = `${String(done).padStart(5)} predictions  page ${here.toFixed(1)} MB  process ${all?.toFixed(1) ?? 'not told'} MB`;
  console.log(row);
};

let early: Level | null = null;
const mark = Math.min(settledAfter, Math.round(predictions / 4));
let last: Level = await level(tools, whole);
say(0, last);
for (let done = 1; done <= predictions; done++) {
  await edit(page, done * burst, burst);
  await page.waitForSelector(current);
  if (done % 10 === 0) await lookAround(page);
  if (done === mark || done % Math.round(predictions / 8) === 0 || done === predictions) {
    await settled(page);
    last = await level(tools, whole);
    say(done, last);
    if (done === mark) early = last;
  }
}
await close();
await browser.close();

const growth = (now: number | null, then: number | null) =>
  now !== null && then !== null ? now / then - 1 : Number.NaN;
const share = (value: number) => (Number.isNaN(value) ? 'not told' : `${(100 * value).toFixed(1)} %`);
console.log(`${predictions * burst} edits, ${predictions} predictions; growth since the ${mark}th:`);
console.log(
  `page ${share(growth(last.page, early?.page ?? null))}, process ${share(growth(last.process, early?.process ?? null))}; goal <= ${share(goal)}`,
);
if (problems.length > 0) console.log(`problems: ${problems.join('; ')}`);
