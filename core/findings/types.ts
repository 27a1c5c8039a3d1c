/** What a finding says. */

/** Weight of a finding: caution = standing safety note. */
export type Severity = 'stop' | 'warn' | 'note' | 'caution';

/** A doubtful point of a valid design. */
export interface Finding {
  readonly code: string;
  readonly severity: Severity;
  /** part and position in words */
  readonly where: string;
  /** axial position for the linked views, m, or null */
  readonly z: number | null;
  readonly saw: string;
  readonly why: string;
  readonly change: string;
  /** the number and its limit, SI, where there is one */
  readonly value: number | null;
  readonly limit: number | null;
  readonly unit: string;
}
