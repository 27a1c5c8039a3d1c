/** A rule about the values of a material, and the common rule that one value stays below another. */

import type { Sourced } from '../project/materialSchema.ts';

/** One rule as it turned out; `holds` false makes an issue of the rest. */
export interface Rule {
  readonly holds: boolean;
  readonly field: readonly (string | number)[];
  readonly code: string;
  readonly message: string;
  readonly value: string;
  readonly allowed: string;
  readonly remedy: string;
}

/** A value with its place and words. */
export interface Named {
  readonly field: readonly (string | number)[];
  readonly words: string;
  readonly value: number;
  readonly unit: string;
}

/** A sourced value with its place and words. */
export const named = (
  field: readonly (string | number)[],
  words: string,
  quantity: Pick<Sourced, 'value'>,
  unit: string,
): Named => ({ field: [...field, 'value'], words, value: quantity.value, unit });

const withUnit = (value: number, unit: string): string => `${value} ${unit}`.trim();

/** `low` must stay below (or at most at, where `equal`) `high`. */
export function inOrder(low: Named, high: Named, equal: boolean): Rule {
  const relation = equal ? 'at most' : 'below';
  return {
    holds: equal ? low.value <= high.value : low.value < high.value,
    field: low.field,
    code: 'values-out-of-order',
    message: `The ${low.words} must be ${equal ? 'at most' : 'below'} the ${high.words}.`,
    value: withUnit(low.value, low.unit),
    allowed: `${relation} ${withUnit(high.value, high.unit)}`,
    remedy: `Correct the ${low.words} or the ${high.words}.`,
  };
}
