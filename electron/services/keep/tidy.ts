/** Removes what saves that were cut off left beside a file. */

import { basename, dirname, join } from 'node:path';
import { isLeftOver } from './besideNames.ts';
import type { Disk } from './disk.ts';
import { trueTarget } from './replaceFile.ts';

/** Left-overs are removed once after a file was taken, when nobody else writes beside it. */
export interface Tidy {
  /** A file was taken. */
  taken(target: string): void;
  /** Removes what lies beside a file taken since the last time; a folder that does not let it go is left as it is. */
  tidy(path: string): Promise<void>;
}

/** Nothing taken yet. */
export function createTidy(disk: Disk): Tidy {
  const taken = new Set<string>();
  return {
    taken: (target) => void taken.add(target),
    async tidy(path) {
      const target = await trueTarget(path, disk).catch(() => path);
      if (!taken.delete(target)) return;
      const names = await disk.readdir(dirname(target)).catch(() => []);
      const left = names.map(String).filter((name) => isLeftOver(target, name));
      for (const name of left) {
        if (name !== basename(target)) await disk.unlink(join(dirname(target), name)).catch(() => undefined);
      }
    },
  };
}
