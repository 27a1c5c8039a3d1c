/** Every check of a revision's parts against each other, each run wherever the parts it reads are sound. */

import type { z } from 'zod';
import { asObject } from '../project/looseView.ts';
import { barrelSchema, driveSchema, nozzleSchema, type Revision, screwSchema } from '../project/schema.ts';
import type { Issue } from '../result.ts';
import { barrelIssues, feedIssues, nozzleIssues } from './checkBarrel.ts';
import { driveIssues } from './checkDrive.ts';
import { screwIssues } from './checkScrew.ts';
import { tipIssues } from './checkTip.ts';
import type { Path } from './issueList.ts';

/** Parts that the checks read. */
type Part = 'screw' | 'barrel' | 'nozzle' | 'drive';

const schemas: Readonly<Record<Part, z.ZodType>> = {
  screw: screwSchema,
  barrel: barrelSchema,
  nozzle: nozzleSchema,
  drive: driveSchema,
};

/** A check with the parts that must fit the schema before it says anything sensible. */
interface Check {
  readonly reads: readonly Part[];
  readonly run: (revision: Revision, path: Path) => readonly Issue[];
}

const checks: readonly Check[] = [
  { reads: ['screw', 'barrel'], run: screwIssues },
  { reads: ['screw', 'barrel', 'nozzle'], run: tipIssues },
  { reads: ['barrel'], run: barrelIssues },
  { reads: ['screw', 'barrel'], run: feedIssues },
  { reads: ['barrel', 'nozzle'], run: nozzleIssues },
  { reads: ['drive'], run: driveIssues },
];

/**
 * Faults of screw, tip, barrel, feed opening, nozzle and drive.
 * @param revision stored revision; parts whose shape is wrong are passed over and left to the schema
 * @param path path of the revision
 * @returns one issue per fault
 */
export function geometryIssues(revision: unknown, path: Path): readonly Issue[] {
  const parts = asObject(revision);
  const sound = new Set(Object.entries(schemas).flatMap(([part, s]) => (s.safeParse(parts[part]).success ? part : [])));
  // Each check reads the named parts alone, and those have passed.
  const view = parts as unknown as Revision;
  return checks.filter(({ reads }) => reads.every((part) => sound.has(part))).flatMap(({ run }) => run(view, path));
}
