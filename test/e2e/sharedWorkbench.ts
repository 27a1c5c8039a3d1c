/** One open workbench for all tests of a file: a cold start and first solved fields take many seconds. */

import type { Page } from 'playwright-core';
import { afterAll, afterEach, beforeEach } from 'vitest';
import { openWorkbench, type Workbench, type WorkbenchOptions } from './harness.ts';

/** Undoes every step, so that the next test finds the project as it was opened. */
async function undoAll(page: Page): Promise<void> {
  const undo = page.getByRole('button', { name: /^Undo/ });
  while (await undo.isEnabled()) await undo.click();
}

/**
 * Opens the workbench before the first test and undoes everything before each further one. After a failed test a fresh
 * one is opened, so that one fault fails one test. Answers with the function that gives the open workbench.
 */
export function sharedWorkbench(options: WorkbenchOptions & { readonly readySelector: string }): () => Workbench {
  let open: Workbench | null = null;
  const close = async () => {
    await open?.close();
    open = null;
  };
  beforeEach(async () => {
    if (open) await undoAll(open.page);
    else open = await openWorkbench(options);
    await open.page.waitForSelector(options.readySelector);
  });
  afterEach(async ({ task }) => {
    if (task.result?.state === 'fail') await close();
  });
  afterAll(close);
  return () => {
    if (!open) throw new Error('no workbench is open');
    return open;
  };
}
