/** Runs the checks one after the other, off the main thread. */

import { config } from 'zod';
import { type CheckResult, checks, runCheck } from '../../../core/index.ts';
import { answering } from '../../solve/answering.ts';

// The content security policy forbids code made from text, which zod would otherwise try.
config({ jitless: true });

/** What the window hears of a check. */
export interface CheckAnswer {
  readonly kind: 'result';
  readonly result: CheckResult;
  /** how many there are */
  readonly total: number;
}

/** The quick ones first: the table fills at once. */
function* results(): Generator<CheckAnswer> {
  const ordered = [...checks].sort((a, b) => Number(a.slow ?? false) - Number(b.slow ?? false));
  for (const check of ordered) yield { kind: 'result', result: runCheck(check), total: checks.length };
}

self.onmessage = answering(results, (answer) => self.postMessage(answer));
