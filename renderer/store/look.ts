/** When the window's colours change, whatever changes them, so that what is drawn on a canvas can be drawn anew. */

import { useSyncExternalStore } from 'react';

let count = 0;
const heard = new Set<() => void>();
let watching = false;

function changed(): void {
  count++;
  for (const listener of heard) listener();
}

/** Theme and contrast are attributes of the root element; forced colours are the system's. */
function watch(): void {
  if (watching) return;
  watching = true;
  new MutationObserver(changed).observe(document.documentElement, { attributes: true });
  for (const query of ['(forced-colors: active)', '(prefers-contrast: more)'])
    globalThis.matchMedia?.(query)?.addEventListener?.('change', changed);
}

function subscribe(listener: () => void): () => void {
  watch();
  heard.add(listener);
  return () => heard.delete(listener);
}

/** A number that grows with every change of the colours. */
export const useRootLook = (): number => useSyncExternalStore(subscribe, () => count);
