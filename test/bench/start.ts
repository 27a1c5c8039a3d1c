/**
 * How long a start takes: from the start of the process that `npm start -- --no-window` runs, everything built, to what
 * a person sees in a browser that is already up and has nothing in its cache. Middle of several starts.
 */

import { type ChildProcess, spawn } from 'node:child_process';
import type { Browser } from 'playwright-core';
import { launchBrowser } from '../e2e/browser.ts';

/** Starts that are counted, after one that is not. */
const starts = Number(process.argv[2] ?? 5);

/** Times of one start, ms since the process began, in the order in which they come. */
interface Times {
  /** The host prints its address. */
  readonly address: number;
  /** Something is painted, if only a word. */
  readonly paint: number;
  /** The window with the project stands. */
  readonly window: number;
  /** The verdict shows the first prediction. */
  readonly prediction: number;
  /** The cut-open head is drawn. */
  readonly scene: number;
}

/** Longest wait for a paint that the program is held to on two cores without graphics hardware, ms. */
const goal = 2000;

/** Notes the moments in the page; before the page's own scripts. */
function noteMoments(): void {
  localStorage.setItem('augerwright.tour', 'seen');
  const marks: Record<string, number> = {};
  window.startMarks = marks;
  const signs = {
    window: '.window',
    prediction: '.results[data-stale="false"] [data-testid="output"]',
    scene: '.scene canvas',
  };
  const look = () => {
    for (const [name, selector] of Object.entries(signs))
      if (!(name in marks) && document.querySelector(selector)) marks[name] = Date.now();
    if (Object.keys(marks).length < 3) requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

declare global {
  interface Window {
    startMarks: Record<string, number>;
  }
}

const addressOf = (process: ChildProcess) =>
  new Promise<string>((resolve, reject) => {
    let out = '';
    process.stdout?.on('data', (part) => {
      out += part;
      const found = /http:\/\/127\.0\.0\.1:\d+\/[0-9a-f]+\//.exec(out)?.[0];
      if (found) resolve(found);
    });
    process.once('exit', () => reject(new Error(`no address: ${out}`)));
  });

async function measureStart(browser: Browser): Promise<Times> {
  const context = await browser.newContext({ viewport: { width: 1440, height: 900 }, locale: 'en-US' });
  await context.addInitScript(noteMoments);
  const page = await context.newPage();
  const began = Date.now();
  const host = spawn(process.execPath, ['electron/cli/start.mjs', '--no-window'], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  try {
    const at = await addressOf(host);
    const address = Date.now();
    await page.goto(at);
    await page.waitForFunction(() => Object.keys(window.startMarks).length === 3, null, { timeout: 60_000 });
    const { paint, marks } = await page.evaluate(() => ({
      paint:
        performance.timeOrigin + (performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? Number.NaN),
      marks: window.startMarks,
    }));
    const since = (moment: number) => moment - began;
    return {
      address: since(address),
      paint: since(paint),
      window: since(marks.window),
      prediction: since(marks.prediction),
      scene: since(marks.scene),
    };
  } finally {
    host.kill('SIGKILL');
    await context.close();
  }
}

const browser = await launchBrowser();
await measureStart(browser);
const runs: Times[] = [];
for (let k = 0; k < starts; k++) runs.push(await measureStart(browser));
await browser.close();

console.log('ms since the process began, middle of', starts, 'starts (least to most)');
for (const name of ['address', 'paint', 'window', 'prediction', 'scene'] as const) {
  const times = runs.map((run) => run[name]).sort((a, b) => a - b);
  const range = `(${times[0]?.toFixed(0)} to ${times.at(-1)?.toFixed(0)})`;
  const middle = (times[Math.floor(times.length / 2)] ?? Number.NaN).toFixed(0);
  console.log(name.padEnd(12), middle.padStart(6), range, name === 'paint' ? `goal <= ${goal}` : '');
}
