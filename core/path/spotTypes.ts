/** A dead spot as the solved fields show it, before its degradation is worked out. */

import type { DeadSpot } from '../prediction/types.ts';

/** Place, size, age, cause and remedy. */
export type FoundSpot = Pick<DeadSpot, 'part' | 'where' | 'z' | 'r' | 'volume' | 'meanAge' | 'cause' | 'remedy'> & {
  /** stretch of z it covers, m */
  readonly zFrom: number;
  readonly zTo: number;
};
