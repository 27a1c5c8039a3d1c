/** Whether the shares of a print's time leave time for printing. */

import { asNumber, asObject } from '../project/looseView.ts';
import type { Issue } from '../result.ts';
import { formatNumber } from '../units.ts';
import { brokenRules } from './issueList.ts';

/**
 * Faults of the print demand between its fields: travel and idling together must leave time.
 * @param print stored print demand, whose shape may be wrong; shares outside 0 to 0.95 are left to the schema
 * @returns at most one issue, with its path from the project's root
 */
export function printIssues(print: unknown): readonly Issue[] {
  const { travelShare, idleShare } = asObject(print);
  const [travel, idle] = [asNumber(travelShare), asNumber(idleShare)];
  const judged = [travel, idle].every((share) => share >= 0 && share <= 0.95);
  return brokenRules([
    {
      holds: !judged || travel + idle < 1 - 1e-9,
      path: ['print', 'idleShare'],
      code: 'shares-fill-time',
      message: 'Travel and idling together take all the time, so none is left to lay a line.',
      value: formatNumber(idle, 5),
      allowed: `less than ${formatNumber(1 - travel, 5)} beside a travel share of ${formatNumber(travel, 5)}`,
      remedy: 'Reduce the idle share or the travel share.',
    },
  ]);
}
