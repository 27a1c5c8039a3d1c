/** What a finding rule sees, and what it answers. */

import type { Design } from '../design/types.ts';
import type { DrivenPoint } from '../prediction/drivenPoint.ts';
import type { Machine } from '../prediction/machine.ts';
import type { Prediction } from '../prediction/types.ts';
import type { Finding } from './types.ts';

/** Everything known when findings are made. */
export interface FindingContext {
  readonly design: Design;
  readonly machine: Machine;
  readonly driven: DrivenPoint;
  readonly prediction: Omit<Prediction, 'findings'>;
}

/** A finding without its code, which the rule carries. */
export type Found = Omit<Finding, 'code'>;

/** One rule: a code and a test. Adding a finding is adding one rule to a group's list. */
export interface FindingRule {
  readonly code: string;
  /** What it looks at, for the list of all rules. */
  readonly about: string;
  /** the finding, or null where there is nothing to say */
  readonly check: (context: FindingContext) => Found | null;
}

/** Fills what most findings leave empty: no place, no number. */
export const found = (parts: Pick<Found, 'severity' | 'where' | 'saw' | 'why' | 'change'> & Partial<Found>): Found => ({
  z: null,
  value: null,
  limit: null,
  unit: '',
  ...parts,
});
