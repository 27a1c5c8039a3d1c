/** Numbers stay with their units where a line ends. */

import { expect, test } from 'vitest';
import { heldTogether } from '../../../core/present/heldTogether.ts';

test.each([
  ['15 % less', '15\u00a0% less'],
  ['held for 960 s, 8.9 × the mean', 'held for 960\u00a0s, 8.9\u00a0× the mean'],
  ['a shift of 0.7 ΔE00.', 'a shift of 0.7\u00a0ΔE00.'],
  ['52.7 mm³/s at 10 rpm', '52.7\u00a0mm³/s at 10\u00a0rpm'],
  ['section 3 melts', 'section 3 melts'],
  ['section 2 should grow', 'section 2 should grow'],
])('%s', (text, held) => expect(heldTogether(text)).toBe(held));
