/** The form of a check: one computed number held against one from outside. */

/** The stages of the way through, in order; each has checks of its own file. */
export const checkStages = [
  'geometry',
  'material',
  'heat',
  'feed',
  'melting',
  'channel',
  'tip',
  'operatingPoint',
  'residence',
  'degradation',
  'drive',
  'print',
  'calibration',
  'search',
  'handOver',
] as const;

/** One of them. */
export type CheckStage = (typeof checkStages)[number];

/**
 * Where the expected number comes from: printed in a named source (`published`), computed by a general program or by a
 * second way that shares no formula with ours (`independent`), the value of a closed form (`exact`), a rule of the
 * trade without a source (`commonPractice`), a printed value that was not seen again (`fromMemory`).
 */
export type CheckKind = 'published' | 'independent' | 'exact' | 'commonPractice' | 'fromMemory';

/** A number of ours to be held against one from outside. */
export interface Check {
  /** stage and a name of its own, as `channel.openDischargeOf75mmScrew`; never changed, never used twice */
  readonly id: string;
  readonly stage: CheckStage;
  /** what is compared and under which conditions, one short sentence without a full stop, for a reader of the table */
  readonly quantity: string;
  /** unit of both numbers as shown, empty for a pure number */
  readonly unit: string;
  readonly expected: number;
  /** largest error that passes: a share of the expected number, or in the unit where `measure` says so */
  readonly limit: number;
  readonly measure: 'relative' | 'absolute';
  readonly kind: CheckKind;
  /** author, year, place (equation, table, example, page); what was done to the printed number, if anything */
  readonly source: string;
  /** true where it takes more than a second */
  readonly slow?: boolean;
  /** Computes our number through the functions that the prediction itself uses. May throw: that is a failed check. */
  got(): number;
}

/** A check that was run. */
export interface CheckResult extends Omit<Check, 'got'> {
  /** null where it could not be computed */
  readonly got: number | null;
  /** as `limit`: a share or in the unit; null with `got` */
  readonly error: number | null;
  readonly pass: boolean;
  /** why there is no number */
  readonly fault: string | null;
}
