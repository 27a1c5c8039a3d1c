/** Collects the faults of a design, with lengths in millimetres as they are stored. */

import type { Issue } from '../result.ts';
import { formatNumber } from '../units.ts';

/** Path of a field from the root of the project. */
export type Path = readonly (string | number)[];

/** One geometric rule and what to say where it is broken. */
export interface Rule {
  /** true where all is well; NaN comparisons count as broken */
  readonly holds: boolean;
  readonly path: Path;
  readonly code: string;
  readonly message: string;
  readonly value: string;
  readonly allowed: string;
  readonly remedy: string;
}

/** Issues of the rules that are broken. */
export const brokenRules = (rules: readonly Rule[]): readonly Issue[] =>
  rules.filter((rule) => !rule.holds).map(({ holds: _, ...issue }) => issue);

/** Millimetres for reading, from millimetres. */
export const mmText = (mm: number): string => `${formatNumber(mm, 5)} mm`;

/** Rounding of typed millimetres that is forgiven, mm. */
export const slackMm = 1e-6;
