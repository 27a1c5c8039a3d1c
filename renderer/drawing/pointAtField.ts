/** Marks the field of the description that a dimension edits, without taking the cursor to it. */

import { type Path, pathKey } from '../store/path.ts';

let marked: Element | null = null;

/** Marks one field and brings it into sight once its part is shown; the mark before goes. */
export function pointAtField(path: Path): void {
  requestAnimationFrame(() => {
    marked?.removeAttribute('data-drawn');
    marked = document.querySelector(`input[data-path="${pathKey(path)}"]`);
    marked?.setAttribute('data-drawn', 'true');
    marked?.scrollIntoView?.({ block: 'nearest' });
  });
}

/** Takes the mark away. */
export function unpointField(): void {
  marked?.removeAttribute('data-drawn');
  marked = null;
}
