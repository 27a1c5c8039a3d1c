/** Results within a check, where an issue is a failed check. */

import { issueText, type Result } from '../result.ts';

/**
 * The value of a result.
 * @throws Error with every issue in words
 */
export function orThrow<T>(result: Result<T>): T {
  if (!result.ok) throw new Error(result.issues.map(issueText).join(' '));
  return result.value;
}
