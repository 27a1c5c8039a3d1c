/** What can be reached: by keys, and in small or very large windows. */

import type { Page } from 'playwright-core';

/** Where the focus is: the name of what has it, by its own label, the one beside it, or its text. */
export const focused = (page: Page) =>
  page.evaluate(() => {
    const at = document.activeElement;
    if (!at || at === document.body) return 'nowhere';
    const labels = 'labels' in at ? (at as HTMLInputElement).labels : null;
    return at.getAttribute('aria-label') ?? labels?.[0]?.textContent ?? at.textContent ?? at.tagName;
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

/** What the page remembers of a walk. */
type Walking = typeof window & { stops: Element[]; unseen: string[] };

/** In the page: takes note of the place that has the focus; answers whether the round is over, or where it is stuck. */
function noteStop(): string {
  const { stops, unseen } = window as unknown as Walking;
  const at = document.activeElement;
  if (!at || at === document.body) return 'on';
  const before = stops.indexOf(at);
  const name = `${at.tagName} “${(at.getAttribute('aria-label') ?? at.textContent ?? '').slice(0, 40)}”`;
  if (before >= 0) return before === 0 ? 'round' : name;
  stops.push(at);
  const shows = (element: Element): boolean => {
    const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(element);
    return (outlineStyle !== 'none' && Number.parseFloat(outlineWidth) >= 1) || boxShadow !== 'none';
  };
  // handles of a drawing show a ring instead of an outline, a hidden file choice the outline of its button
  const ring = at.querySelector('.grip-ring');
  const seen = ring ? getComputedStyle(ring).stroke !== 'none' : shows(at) || shows(at.parentElement ?? at);
  if (!seen) unseen.push(name);
  return 'on';
}

/** In the page: controls within a part that took no focus, apart from those that arrow keys walk through. */
function missedStops(within: string): string[] {
  const { stops } = window as unknown as Walking;
  const controls = ':is(button, input, select, textarea, summary, a[href], [role=slider]):not(:disabled)';
  const sets = '[role=tablist], [role=radiogroup], [role=menu], [role=toolbar], .dim-text';
  return [...document.querySelectorAll(`${within} ${controls}`)].flatMap((element) => {
    const { width } = element.getBoundingClientRect();
    const alike = element instanceof HTMLInputElement && element.type === 'radio';
    // a way out for screen readers, in no picture, is one pixel wide
    const unseen = element.closest('[inert], [aria-hidden=true], .unseen') !== null;
    const aside = element instanceof HTMLElement && element.tabIndex < 0 && element.parentElement?.clientWidth === 1;
    const hidden = width <= 1 || aside || unseen || !element.checkVisibility();
    if (hidden || alike || stops.includes(element) || element.closest(sets)) return [];
    return [`${element.tagName} “${(element.getAttribute('aria-label') ?? element.textContent ?? '').slice(0, 40)}”`];
  });
}

/**
 * Walks by Tab from where the focus is until it comes round. Answers with how many places took the focus, and what is
 * wrong: places that do not show the focus, one that holds it, and controls of the part `within` that it did not come to.
 */
export async function walkRound(page: Page, within: string, most = 600) {
  await page.evaluate(() => void Object.assign(window, { stops: [], unseen: [] }));
  let told = 'on';
  for (let step = 0; step < most && told === 'on'; step += 1) {
    told = await page.evaluate(noteStop);
    if (told === 'on') await page.keyboard.press('Tab');
  }
  const { stops, unseen } = await page.evaluate(() => {
    const walk = window as unknown as Walking;
    return { stops: walk.stops.length, unseen: walk.unseen };
  });
  const faults = [
    ...(told === 'round' ? [] : [`Tab does not lead on from ${told}`]),
    ...unseen.map((name) => `does not show the focus: ${name}`),
    ...(await page.evaluate(missedStops, within)).map((name) => `Tab does not come to: ${name}`),
  ];
  return { stops, faults };
}

/** Pairs of controls that cover each other by more than a hair, as far as they are in sight. */
export const overlaps = (page: Page, within: string): Promise<string[]> =>
  page.evaluate((selector) => {
    const controls = ':is(button, input, select, textarea, summary, [role=tab])';
    /** the part of an element that no box around it cuts off */
    const inSight = (element: Element) => {
      let { left, top, right, bottom } = element.getBoundingClientRect();
      for (let at = element.parentElement; at; at = at.parentElement) {
        if (getComputedStyle(at).overflow === 'visible') continue;
        const box = at.getBoundingClientRect();
        [left, top] = [Math.max(left, box.left), Math.max(top, box.top)];
        [right, bottom] = [Math.min(right, box.right), Math.min(bottom, box.bottom)];
      }
      return { left, top, right, bottom };
    };
    const floats = (element: Element): boolean => {
      for (let at: Element | null = element; at && !at.matches(selector); at = at.parentElement)
        if (/sticky|fixed|absolute/.test(getComputedStyle(at).position)) return true;
      return false;
    };
    const boxes = [...document.querySelectorAll(`${selector} ${controls}`)].flatMap((element) => {
      const box = inSight(element);
      // what a closed list of details holds keeps its box
      const there = box.right - box.left > 2 && box.bottom - box.top > 2 && element.checkVisibility();
      return there && !element.closest('.unseen, svg') && !floats(element) ? [{ element, box }] : [];
    });
    const name = (element: Element) => (element.getAttribute('aria-label') ?? element.textContent ?? '').slice(0, 30);
    return boxes.flatMap(({ element, box }, i) =>
      boxes.slice(i + 1).flatMap((other) => {
        if (element.contains(other.element) || other.element.contains(element)) return [];
        const across = Math.min(box.right, other.box.right) - Math.max(box.left, other.box.left);
        const down = Math.min(box.bottom, other.box.bottom) - Math.max(box.top, other.box.top);
        return across > 2 && down > 2 ? [`“${name(element)}” and “${name(other.element)}” cover each other`] : [];
      }),
    );
  }, within);
