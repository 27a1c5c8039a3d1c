/** What can be reached: by keys, and in small or very large windows. */

import type { Page } from 'playwright-core';

/** Where the focus is: role or element, and its name. */
export const focused = (page: Page) =>
  page.evaluate(() => {
    const at = document.activeElement;
    return at && at !== document.body ? (at.getAttribute('aria-label') ?? at.textContent ?? at.tagName) : 'nowhere';
  });

/** Presses Tab until the focus is on what is named so. */
export async function tabTo(page: Page, name: RegExp, most = 120): Promise<void> {
  for (let step = 0; step < most; step += 1) {
    if (name.test(await focused(page))) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab does not lead to ${name}`);
}

/** Controls and heads that lie outside the window sideways where nothing around them scrolls that far. */
const outside = (page: Page, within: string): Promise<string[]> =>
  page.evaluate((selector) => {
    const reachable = (element: Element): boolean => {
      for (let at = element.parentElement; at; at = at.parentElement) {
        const scrolls = /auto|scroll/.test(getComputedStyle(at).overflowX);
        if (scrolls && at.scrollWidth > at.clientWidth) return true;
      }
      return false;
    };
    const controls = ':is(button, input, select, textarea, a, summary, [role=slider], h2, h3)';
    return [...document.querySelectorAll(`${selector} ${controls}`)].flatMap((element) => {
      const { left, right, width } = element.getBoundingClientRect();
      if (width === 0 || element.closest('.unseen, svg')) return [];
      const inside = left >= -1 && right <= document.documentElement.clientWidth + 1;
      const { className, textContent } = element;
      return inside || reachable(element) ? [] : [`outside the window: ${className} “${textContent?.slice(0, 30)}”`];
    });
  }, within);

/** Boxes whose content is wider than they are and hidden there, apart from texts that end in an ellipsis. */
const clipped = (page: Page, within: string): Promise<string[]> =>
  page.evaluate((selector) => {
    const boxes = ':is(section, div, form, fieldset, ul, header, footer)';
    return [...document.querySelectorAll(`${selector}, ${selector} ${boxes}`)].flatMap((element) => {
      const { overflowX, textOverflow } = getComputedStyle(element);
      const { scrollWidth, clientWidth, className, textContent } = element;
      const over = scrollWidth - clientWidth;
      const hides = /hidden|clip/.test(overflowX) && textOverflow !== 'ellipsis';
      if (clientWidth <= 1 || over <= 2 || !hides || element.closest('.unseen')) return [];
      return [`cut off by ${over} px: ${className} “${textContent?.slice(0, 30)}”`];
    });
  }, within);

/** What cannot be reached sideways below `within`: lying outside the window, or cut off in a box that does not scroll. */
export const cutOff = async (page: Page, within: string): Promise<string[]> => [
  ...(await outside(page, within)),
  ...(await clipped(page, within)),
];

/** Whether the lowest control of the window can be brought into sight. */
export const lowestInSight = async (page: Page): Promise<boolean> => {
  const last = page.locator('.results-body').getByRole('button').last();
  await last.scrollIntoViewIfNeeded();
  return last.evaluate((element) => {
    const { top, bottom } = element.getBoundingClientRect();
    return top >= 0 && bottom <= window.innerHeight;
  });
};
