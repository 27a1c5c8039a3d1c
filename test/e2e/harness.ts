/** Opens the built workbench in a browser over the loopback host, and watches it for errors. */

import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { createHost } from '../../electron/services/host.ts';
import { pageQuietAfterMs } from '../../electron/services/keep/windows.ts';
import { type Loopback, startLoopback } from '../../electron/services/loopback.ts';
import { launchBrowser, outFolder } from './browser.ts';

const root = resolve(import.meta.dirname, '../..');

/** The software rasteriser takes its time over a scene on a busy machine, ms. */
export const screenshotLimit = 120_000;

/** How the window is to look and what it starts with. */
export interface WorkbenchOptions {
  readonly width?: number;
  readonly height?: number;
  /** pixels of a picture for one of the window; 1 when absent */
  readonly density?: number;
  readonly colorScheme?: 'light' | 'dark';
  readonly reducedMotion?: 'reduce' | 'no-preference';
  readonly forcedColors?: 'active' | 'none';
  /** Project file to start with; the demo when absent. */
  readonly file?: string;
  /** An already running browser, which then stays open when the workbench closes. */
  readonly browser?: Browser;
  /** Offers the guided tour, as a first start does; left out otherwise. */
  readonly tour?: boolean;
  /** Silence after which a page counts as gone, ms; that of the program when absent. */
  readonly quietAfterMs?: number;
  /** File of the list of recent files; none is kept when absent. */
  readonly recentListPath?: string;
  /** Starts no calculation, for tests of what surrounds it. */
  readonly noCalculation?: boolean;
  /** Selector to wait for; the root's first child when absent. */
  readonly readySelector?: string;
}

/** An open workbench. */
export interface Workbench {
  readonly page: Page;
  readonly host: Loopback;
  /** Console errors, uncaught exceptions, policy violations and failed requests so far. */
  readonly problems: readonly string[];
  close(): Promise<void>;
}

/** Opens the workbench. The renderer must have been built (`npm run build`). */
export async function openWorkbench(options: WorkbenchOptions = {}): Promise<Workbench> {
  const stateFolder = mkdtempSync(join(tmpdir(), 'augerwright-state-'));
  const services = createHost({
    examplesFolder: join(root, 'assets/examples'),
    materialsFolder: join(root, 'assets/materials'),
    startPath: options.file ?? null,
    recentListPath: options.recentListPath ?? null,
    stateFolder,
    quietAfterMs: options.quietAfterMs ?? pageQuietAfterMs,
  });
  const host = await startLoopback(services.apiFor, join(root, 'dist/renderer'));
  const browser = options.browser ?? (await launchBrowser());
  const context = await browser.newContext({
    viewport: { width: options.width ?? 1280, height: options.height ?? 800 },
    deviceScaleFactor: options.density ?? 1,
    colorScheme: options.colorScheme ?? 'light',
    reducedMotion: options.reducedMotion ?? 'no-preference',
    forcedColors: options.forcedColors ?? 'none',
    // The browser's own default, en-US@posix, breaks Intl.
    locale: 'en-US',
    timezoneId: 'UTC',
    acceptDownloads: true,
  });
  // solving fields takes seconds, and many on a busy machine
  context.setDefaultTimeout(90_000);
  if (!options.tour) await context.addInitScript("localStorage.setItem('augerwright.tour', 'seen')");
  if (options.noCalculation) await context.addInitScript(noWorkers);
  const page = await context.newPage();
  const problems = watch(page);
  await page.goto(host.address);
  await page.waitForSelector(options.readySelector ?? '#root > *');
  const close = async () => {
    await context.close();
    if (!options.browser) await browser.close();
    await host.close();
    await services.close();
    rmSync(stateFolder, { recursive: true, force: true });
  };
  return { page, host, problems, close };
}

/** Puts workers in place that never answer. */
const noWorkers = 'globalThis.Worker = class extends EventTarget { postMessage() {} terminate() {} }';

/** Collects everything that should never happen on a page of ours. Policy violations arrive as console errors. */
function watch(page: Page): string[] {
  const problems: string[] = [];
  page.on('console', (message) => {
    if (message.type() === 'error') problems.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => problems.push(`exception: ${error.message}`));
  page.on('requestfailed', (request) => problems.push(`request: ${request.url()} ${request.failure()?.errorText}`));
  page.on('response', (response) => {
    if (response.status() >= 400) problems.push(`status ${response.status()}: ${response.url()}`);
  });
  return problems;
}

/** Waits until what is shown belongs to what is described: no run under way, and one has ended. */
export async function settled(page: Page): Promise<void> {
  await page.locator('.run-state:not(.busy)', { hasText: /\S/ }).waitFor({ timeout: 90_000 });
}

/** Saves a picture of the window to test/.out/NAME.png and answers with its path. */
export async function screenshot(page: Page, name: string): Promise<string> {
  mkdirSync(outFolder, { recursive: true });
  const path = join(outFolder, `${name}.png`);
  await page.screenshot({ path, timeout: screenshotLimit });
  return path;
}
