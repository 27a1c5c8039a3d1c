/** Runs axe-core, the accessibility checker of the web's standards (WCAG 2.x), over the page as it stands. */

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type axe from 'axe-core';
import type { Page } from 'playwright-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What of the page is checked, and by which rules; everything where left out. */
export interface AccessCheck {
  /** selector of the part that is looked at */
  readonly within?: string;
  /** ids of the checker's rules */
  readonly rules?: readonly string[];
}

/** One line for each offending element: rule, place, and what is wrong. */
export async function accessFaults(page: Page, check: AccessCheck = {}): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(source);
  return page.evaluate(async ({ within, rules }) => {
    const checker = Reflect.get(window, 'axe') as typeof axe;
    if (within && !document.querySelector(within)) return [`nothing to check: ${within}`];
    // one dialog hides the window behind it; what is hidden is not read
    const found = await checker.run(within ?? document, {
      resultTypes: ['violations'],
      ...(rules ? { runOnly: { type: 'rule', values: [...rules] } } : {}),
    });
    return found.violations.flatMap(({ id, help, nodes }) =>
      nodes.map((node) => `${id}: ${help}: ${node.target.join(' ')} ${node.failureSummary?.split('\n')[1] ?? ''}`),
    );
  }, check);
}

/** Colours in the themes beside the light one, of the part that `within` names. */
export async function colourFaults(page: Page, within: string): Promise<string[]> {
  const show = (theme: string) =>
    page.evaluate((name) => {
      document.documentElement.dataset.theme = name;
    }, theme);
  const faults: string[] = [];
  for (const theme of ['dark', 'contrast']) {
    await show(theme);
    const found = await accessFaults(page, { within, rules: ['color-contrast'] });
    faults.push(...found.map((fault) => `${theme}: ${fault}`));
  }
  await show('light');
  return faults;
}
