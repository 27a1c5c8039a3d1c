/** Lengths in sentences of templates and of the new project. */

import { lookQuantity, toSi } from '../../../core/index.ts';
import { useLook } from '../../look.ts';

/** Writes a length, mm, as the reader sees it: their unit and decimal sign. */
export function useLength(): (mm: number) => string {
  const look = useLook();
  return (mm) => lookQuantity(toSi(mm, 'mm'), 'mm', 4, look);
}
