/** Places of the panel that can be led to by the path of what they edit. */

import type { ReactNode } from 'react';
import { type Path, pathKey } from '../../store/path.ts';

/** Names the place of what stands inside, for controls that carry no path of their own. */
export const Place = ({ path, children }: { readonly path: Path; readonly children: ReactNode }) => (
  <div className="place" data-place={pathKey(path)}>
    {children}
  </div>
);

/** Puts the cursor into the control that edits what stands at `path`, or the first one below it; false where none is. */
export function goToPlace(path: Path): boolean {
  const key = CSS.escape(pathKey(path));
  const wanted = [
    `[data-path="${key}/value"]`,
    `[data-path="${key}"]`,
    `[data-place="${key}"] :is(select, input, textarea, button)`,
    `[data-path^="${key}/"]`,
  ];
  for (const selector of wanted) {
    const control = document.querySelector<HTMLElement>(selector);
    if (!control) continue;
    control.focus();
    control.scrollIntoView?.({ block: 'center' });
    return true;
  }
  return false;
}
