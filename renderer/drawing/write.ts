/** Values of dimensions as this window writes them. */

import type { NumberLook } from '../../core/index.ts';
import { showNumber } from '../fields/quantity.ts';
import { type FieldSpec, unitText } from '../fields/spec.ts';

/** A value with its unit, such as `14 mm` or `60°`. */
export function writeValue(value: number, { unit }: FieldSpec, look: NumberLook): string {
  const symbol = unitText(unit, look);
  return `${showNumber(value, unit, look)}${symbol === '°' ? '' : ' '}${symbol}`;
}
