/** Numbers of the comparison as this window shows numbers. */

import { lookNumber, lookQuantity, type NumberLook, type NumberWriter } from '../../core/index.ts';

/** The writer of a look. */
export const writerOf = (look: NumberLook): NumberWriter => ({
  quantity: (si, unit, digits) => lookQuantity(si, unit, digits, look),
  number: (value, digits) => lookNumber(value, digits, look),
});
