/** What every headless command has in common: where it writes, and what its exit status means. */

import { type Issue, issueText } from '../../core/index.ts';
import type { CommandShape } from './options.ts';

/** Exit statuses. */
export const status = { done: 0, fault: 1, badInput: 2, checksFailed: 3 } as const;
/** One of the exit statuses. */
export type Status = (typeof status)[keyof typeof status];

/** Where a command writes; the shell's streams, or a test's. */
export interface Output {
  /** Writes one line, or a block of lines, of results. */
  result(text: string): void;
  /** Writes one line about what is wrong. */
  problem(text: string): void;
}

/** A headless command. */
export interface Command {
  readonly shape: CommandShape;
  run(given: readonly string[], output: Output): Promise<Status>;
}

/** Writes one message per issue and answers with the status for bad input. */
export function refuse(issues: readonly Issue[], output: Output): Status {
  for (const issue of issues) output.problem(issueText(issue));
  return status.badInput;
}
