import { afterAll, beforeAll, expect, test } from 'vitest';
import { openWorkbench, screenshot, settled, type Workbench } from './harness.ts';

let workbench: Workbench;

beforeAll(async () => {
  workbench = await openWorkbench();
});

afterAll(async () => {
  await workbench?.close();
});

test('the demo is predicted without console errors, exceptions, failed requests or policy violations', async () => {
  await settled(workbench.page);
  await screenshot(workbench.page, 'smoke');
  expect(await workbench.page.locator('[role="alert"]').count()).toBe(0);
  expect(await workbench.page.title()).toContain('Augerwright');
  expect(workbench.problems).toEqual([]);
});

test('the page is cross-origin isolated, so that solver workers may share memory', async () => {
  expect(await workbench.page.evaluate(() => globalThis.crossOriginIsolated)).toBe(true);
});

test('inline code is refused, and the harness notices it', async () => {
  const before = workbench.problems.length;
  const ran = await workbench.page.evaluate(async () => {
    const script = document.createElement('script');
    script.textContent = 'globalThis.inlineRan = true';
    document.head.append(script);
    return 'inlineRan' in globalThis;
  });
  expect(ran).toBe(false);
  expect(workbench.problems.length).toBeGreaterThan(before);
});
