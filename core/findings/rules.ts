/** The table of all finding rules, and its evaluation. Adding a finding is one entry in one group. */

import { cautionRules } from './cautionRules.ts';
import { colourRules } from './colourRules.ts';
import { contentRules } from './contentRules.ts';
import type { FindingContext, FindingRule } from './context.ts';
import { deadRules } from './deadRules.ts';
import { driveRules } from './driveRules.ts';
import { feedRules } from './feedRules.ts';
import { flowRules } from './flowRules.ts';
import { grainRules } from './grainRules.ts';
import { heaterRules } from './heaterRules.ts';
import { heatRules } from './heatRules.ts';
import { makeRules } from './makeRules.ts';
import { printRules } from './printRules.ts';
import type { Finding } from './types.ts';

/** Every rule, in the order in which the material meets what they look at; cautions last. */
export const findingRules: readonly FindingRule[] = [
  ...grainRules,
  ...feedRules,
  ...heatRules,
  ...contentRules,
  ...heaterRules,
  ...flowRules,
  ...deadRules,
  ...colourRules,
  ...driveRules,
  ...printRules,
  ...makeRules,
  ...cautionRules,
];

const weight: Readonly<Record<Finding['severity'], number>> = { stop: 0, warn: 1, note: 2, caution: 3 };

/** Findings of a prediction, gravest first, else in the table's order. */
export function findingsOf(context: FindingContext): Finding[] {
  const findings = findingRules.flatMap((rule) => {
    const finding = rule.check(context);
    return finding ? [{ code: rule.code, ...finding }] : [];
  });
  return findings.sort((a, b) => weight[a.severity] - weight[b.severity]);
}
