/** Words for a save that failed: what happened, where, that the work is still in the window, and what to do. */

import type { Issue } from '../../../core/index.ts';
import { fileIssue } from '../fileIssues.ts';
import type { Disk } from './disk.ts';

/** An issue about saving to a path, from whatever the file system threw. */
export async function saveIssue(path: string, error: unknown, _disk: Disk): Promise<Issue> {
  return fileIssue(path, error);
}
