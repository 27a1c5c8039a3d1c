/** Runs axe-core, the accessibility checker of the web's standards (WCAG 2.x), over the page as it stands. */

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type axe from 'axe-core';
import type { Page } from 'playwright-core';

const source = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** One line for each offending element: rule, place, and what is wrong. */
export async function accessFaults(page: Page, rules?: readonly string[]): Promise<string[]> {
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(source);
  return page.evaluate(async (only) => {
    const checker = Reflect.get(window, 'axe') as typeof axe;
    // one dialog hides the window behind it; what is hidden is not read
    const found = await checker.run(document, {
      resultTypes: ['violations'],
      ...(only ? { runOnly: { type: 'rule', values: [...only] } } : {}),
    });
    return found.violations.flatMap(({ id, help, nodes }) =>
      nodes.map((node) => `${id}: ${help}: ${node.target.join(' ')} ${node.failureSummary?.split('\n')[1] ?? ''}`),
    );
  }, rules);
}
