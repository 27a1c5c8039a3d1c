/** What a picture is of, and the steps that most of them take. */

import type { Page } from 'playwright-core';

/** One view: what to press or click, from the freshly opened workbench. */
export interface Shot {
  readonly name: string;
  /** Project file; the demo when absent. */
  readonly file?: string;
  /** Id of the revision to work on; the open one when absent. */
  readonly revision?: string;
  /** themes it is taken in; light and dark when absent */
  readonly schemes?: readonly ('light' | 'dark' | 'contrast')[];
  /** taken while the first calculation is under way */
  readonly unsettled?: boolean;
  reach?(page: Page): Promise<void>;
}

/** Presses the first button of a name. */
export const press = (name: string) => (page: Page) => page.getByRole('button', { name }).first().click();

/** Goes to a tab by its name. */
export const tab = (name: string) => (page: Page) => page.getByRole('tab', { name }).click();

/** Brings a part of the right side into sight. */
export const scroll = (selector: string) => (page: Page) =>
  page
    .locator(selector)
    .first()
    .evaluate((element) => element.scrollIntoView());

/** Several steps, one after the other. */
export const all =
  (...steps: readonly ((page: Page) => Promise<unknown>)[]) =>
  async (page: Page): Promise<void> => {
    for (const step of steps) await step(page);
  };
