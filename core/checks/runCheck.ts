/** Running one check, and what many add up to. */

import type { Check, CheckKind, CheckResult } from './types.ts';

/**
 * Computes our number and holds it against the expected one.
 * @returns never throws: a check that throws, or has no finite number, fails and says why
 */
export function runCheck({ got: compute, ...check }: Check): CheckResult {
  try {
    const got = compute();
    if (!Number.isFinite(got)) return { ...check, got: null, error: null, pass: false, fault: `gave ${got}` };
    const away = Math.abs(got - check.expected);
    const error = check.measure === 'relative' ? away / Math.abs(check.expected) : away;
    return { ...check, got, error, pass: error <= check.limit, fault: null };
  } catch (fault) {
    return {
      ...check,
      got: null,
      error: null,
      pass: false,
      fault: fault instanceof Error ? fault.message : `${fault}`,
    };
  }
}

/** Counts over results: how many passed and failed, and how many of each kind there are. */
export function checkCounts(results: readonly CheckResult[]) {
  const kinds: Record<CheckKind, number> = { published: 0, independent: 0, exact: 0, commonPractice: 0, fromMemory: 0 };
  for (const { kind } of results) kinds[kind]++;
  const passed = results.filter(({ pass }) => pass).length;
  return { passed, failed: results.length - passed, kinds };
}
