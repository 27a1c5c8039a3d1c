/** What every result carries beside its numbers. */

/** What a result rests on; shown beside it. */
export interface Basis {
  /** short name of the model */
  readonly model: string;
  /** assumptions, one sentence each */
  readonly assumptions: readonly string[];
  /** author, year, equation */
  readonly source: string;
  /** range in which it holds, in words */
  readonly range: string;
  /** null inside the range, else why it is doubtful here */
  readonly doubt: string | null;
}
