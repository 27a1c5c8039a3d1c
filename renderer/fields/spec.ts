/** What a field needs to know of the value it edits. */

import type { Unit } from '../../core/index.ts';

/** Units that values are stored in; the last ones have no other spelling and are not converted. */
export type FieldUnit = Unit | 'ratio' | 'count' | 'ΔE00' | 'Pa·sⁿ' | 'K/Pa';

/** Place, name, unit and help of one number. */
export interface FieldSpec {
  /** place below the part's root, joined by dots */
  readonly key: string;
  readonly label: string;
  readonly unit: FieldUnit;
  readonly help: string;
  /** arrow-key step in the field's unit; 0.1 where left out */
  readonly step?: number;
  /** an empty field takes the value away */
  readonly optional?: boolean;
}

/** The unit as written beside the field; counts and ratios carry none. */
export const unitText = (unit: FieldUnit): string => (unit === 'ratio' || unit === 'count' ? '' : unit);
