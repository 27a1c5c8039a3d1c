/** The form of a break: one wrong character or term that a check must notice. */

/** A mistake put into a copy of core, to see the check fail. */
export interface Break {
  /** id of the check that must fail with it */
  readonly check: string;
  /** file that is changed, as `core/flow/reach.ts` */
  readonly file: string;
  /** text that stands there exactly once */
  readonly from: string;
  /** what it becomes: still valid code, with a wrong formula, sign, factor or unit */
  readonly to: string;
}
