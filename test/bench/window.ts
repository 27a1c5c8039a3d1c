/** Frames per second while orbiting the demo and a screw of about 200 000 triangles, and the wait from keystroke to estimate. */

import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { launchBrowser, outFolder } from '../e2e/browser.ts';
import { openWorkbench, settled } from '../e2e/harness.ts';

/** Seconds of orbiting that are counted. */
const seconds = 4;

/** Least frames per second while orbiting, and longest wait for an estimate, ms: what the window is held to. */
const goals = { frames: 8, first: 100, wait: 300 } as const;

interface Lengths {
  lengthMm: number;
}
interface Zoned {
  startMm: number;
  endMm: number;
}
interface DemoFile {
  revisions: {
    id: string;
    screw: { sections: Lengths[] };
    barrel: Lengths & { zones: Zoned[] };
  }[];
  activeRevision: string;
}

/** The demo drawn out to `factor` times its length, so that its mesh has as many times the triangles. */
function longProject(factor: number): string {
  const file = JSON.parse(readFileSync('assets/examples/demo.json', 'utf8')) as DemoFile;
  for (const { screw, barrel } of file.revisions) {
    for (const section of screw.sections) section.lengthMm *= factor;
    barrel.lengthMm *= factor;
    for (const zone of barrel.zones) {
      zone.startMm *= factor;
      zone.endMm *= factor;
    }
  }
  mkdirSync(outFolder, { recursive: true });
  const path = join(outFolder, 'long-screw.json');
  writeFileSync(path, JSON.stringify(file));
  return path;
}

/** Drags the view about for some seconds, a step each frame, and counts frames in which something was drawn. */
async function framesWhileOrbiting(page: Page): Promise<number> {
  const box = await page.locator('.scene canvas').boundingBox();
  if (!box) throw new Error('no 3D view');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  const frames = await page.evaluate(
    ({ x, y, time }) =>
      new Promise<number>((resolve) => {
        const canvas = document.querySelector('.scene canvas');
        const began = performance.now();
        let drawn = 0;
        let before = window.drawCalls;
        const step = (now: number) => {
          if (window.drawCalls > before) drawn++;
          before = window.drawCalls;
          if (now - began > 1000 * time) return resolve(drawn / ((now - began) / 1000));
          const turn = (now - began) / 400;
          const place = { clientX: x + 90 * Math.sin(turn), clientY: y + 30 * Math.cos(turn), pointerId: 1 };
          canvas?.dispatchEvent(
            new PointerEvent('pointermove', { ...place, bubbles: true, pointerType: 'mouse', buttons: 1 }),
          );
          requestAnimationFrame(step);
        };
        requestAnimationFrame(step);
      }),
    { x: box.x + box.width / 2, y: box.y + box.height / 2, time: seconds },
  );
  await page.mouse.up();
  return frames;
}

/** Counts what is drawn; before the page's own scripts. */
function countDraws(): void {
  window.drawCalls = 0;
  const { drawElements } = WebGL2RenderingContext.prototype;
  WebGL2RenderingContext.prototype.drawElements = function counted(...call) {
    window.drawCalls++;
    drawElements.apply(this, call);
  };
}

declare global {
  interface Window {
    drawCalls: number;
  }
}

async function opened(browser: Browser, file?: string) {
  const workbench = await openWorkbench({ browser, width: 1280, height: 800, ...(file ? { file } : {}) });
  await workbench.page.addInitScript(countDraws);
  await workbench.page.reload();
  await settled(workbench.page);
  await workbench.page.waitForSelector('.scene canvas');
  return workbench;
}

/** Waits from a keystroke to the first figures and to the estimate that it leads to, ms; several, rising. */
async function waits(page: Page, count = 9): Promise<{ first: number[]; estimate: number[] }> {
  const field = page.getByRole('textbox', { name: 'Section 3, Root Ø end', exact: true });
  const first: number[] = [];
  const estimate: number[] = [];
  for (let i = 0; i < count; i++) {
    await field.fill((10.3 + 0.05 * i).toFixed(2));
    await page.evaluate(watchAnswers);
    await field.press('Enter');
    const waited = await page.evaluate(() => window.keyWait);
    first.push(waited.first);
    estimate.push(waited.estimate);
    // fields begin to be solved, as they do when somebody looks at a result before typing on
    await page.waitForTimeout(700);
  }
  return { first: first.sort((a, b) => a - b), estimate: estimate.sort((a, b) => a - b) };
}

/** In the page: notes when answers to the next key come, counted to the frame that shows them. */
function watchAnswers(): void {
  const results = document.querySelector<HTMLElement>('.results');
  window.keyWait = new Promise((resolve) => {
    let stale = false;
    let began = 0;
    let first = Number.NaN;
    const observer = new MutationObserver(() => {
      stale ||= results?.dataset.stale === 'true';
      if (!stale) return;
      const shown = results?.querySelector<HTMLElement>('.verdict')?.dataset.first === 'true';
      if (shown && Number.isNaN(first)) requestAnimationFrame(() => (first = performance.now() - began));
      if (results?.dataset.stale !== 'false') return;
      observer.disconnect();
      requestAnimationFrame(() => {
        const estimate = performance.now() - began;
        resolve({ first: Number.isNaN(first) ? estimate : first, estimate });
      });
    });
    window.addEventListener('keydown', () => (began = performance.now()), { once: true, capture: true });
    if (results)
      observer.observe(results, { attributes: true, subtree: true, attributeFilter: ['data-stale', 'data-first'] });
  });
}

declare global {
  interface Window {
    keyWait: Promise<{ first: number; estimate: number }>;
  }
}

const rows: string[][] = [['what', 'triangles', 'measured', 'goal']];

const rowOf = (what: string, times: readonly number[], goal: number): string[] => {
  const middle = times[Math.floor(times.length / 2)] ?? Number.NaN;
  return [what, '', `${middle.toFixed(0)} ms (${times[0]?.toFixed(0)} to ${times.at(-1)?.toFixed(0)})`, `<= ${goal}`];
};

async function measureOrbit(browser: Browser, name: string, file?: string): Promise<void> {
  const { page, close } = await opened(browser, file);
  const triangles = await page
    .locator('.scene')
    .evaluate((scene) => Number((scene as HTMLElement).dataset.allTriangles));
  await framesWhileOrbiting(page);
  const frames = await framesWhileOrbiting(page);
  rows.push([`orbit ${name}`, String(triangles), `${frames.toFixed(1)} frames/s`, `>= ${goals.frames}`]);
  if (file === undefined) {
    const { first, estimate } = await waits(page);
    rows.push(rowOf('key to first figures', first, goals.first), rowOf('key to estimate', estimate, goals.wait));
  }
  await close();
}

const browser = await launchBrowser();
await measureOrbit(browser, 'demo');
await measureOrbit(browser, 'long screw', longProject(Number(process.argv[2] ?? 4)));
await browser.close();
const widths = [0, 1, 2, 3].map((k) => Math.max(...rows.map((row) => row[k]?.length ?? 0)));
for (const row of rows) console.log(row.map((cell, k) => cell.padEnd(widths[k] ?? 0)).join('  '));
