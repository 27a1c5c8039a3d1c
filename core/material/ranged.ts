/** Sourced values as plain numbers with their doubt. */

import type { Sourced } from '../project/materialSchema.ts';
import type { Ranged } from './types.ts';

/**
 * Value and doubt range of a sourced value; one without doubt stands for all three.
 * @param sourced stored value
 * @param scale turns the stored unit into SI
 */
export function ranged(sourced: Sourced, scale = 1): Ranged {
  const { value, low = value, high = value } = sourced;
  return { value: value * scale, low: low * scale, high: high * scale };
}
