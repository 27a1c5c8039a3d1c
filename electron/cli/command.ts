/** What every headless command has in common: where it writes, and what its exit status means. */

import { type Issue, issueText, type Project, unknownFields } from '../../core/index.ts';
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
  /** @param workerPath bundle of the thread that predicts, or null to work on this thread */
  run(given: readonly string[], output: Output, workerPath: string | null): Promise<Status>;
}

/**
 * Writes one message per issue and answers with the status for bad input.
 * @param file named before each message that does not name it itself
 */
export function refuse(issues: readonly Issue[], output: Output, file?: string): Status {
  for (const issue of issues) output.problem(messageOf(issue, file));
  return status.badInput;
}

/** Most fields that are named as unknown. */
const mostTold = 10;

/** Tells of fields of a project that are used for nothing; they hinder no command. */
export function tellUnknown(project: Project, output: Output, file: string): void {
  const found = unknownFields(project);
  for (const issue of found.slice(0, mostTold)) output.problem(messageOf(issue, file));
  if (found.length > mostTold) output.problem(`${file}: ${found.length - mostTold} more fields are not known here.`);
}

function messageOf(issue: Issue, file: string | undefined): string {
  if (file === undefined || issue.path[0] === file) return issueText(issue);
  return issue.path.length > 0 ? `${file}: ${issueText(issue)}` : issueText({ ...issue, path: [file] });
}
