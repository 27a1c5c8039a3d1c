/** Whether the motor's torque curve can be read. */

import type { Revision } from '../project/schema.ts';
import type { Issue } from '../result.ts';
import { brokenRules, type Path } from './issueList.ts';

/**
 * Faults of the drive: speeds of the motor curve must rise from point to point.
 * @param revision stored revision that fits the schema
 * @param path path of the revision
 * @returns one issue per point out of order
 */
export function driveIssues(revision: Revision, path: Path): readonly Issue[] {
  const curve = revision.drive.motorCurve;
  return brokenRules(
    curve.slice(1).map((point, i) => {
      const before = curve[i]?.speedRpm ?? Number.NaN;
      return {
        holds: point.speedRpm > before,
        path: [...path, 'drive', 'motorCurve', i + 1, 'speedRpm'],
        code: 'motor-curve-order',
        message: "The speeds of the motor's torque curve must rise.",
        value: `${point.speedRpm} rpm`,
        allowed: `more than ${before} rpm`,
        remedy: 'Sort the points by speed and give each speed once.',
      };
    }),
  );
}
