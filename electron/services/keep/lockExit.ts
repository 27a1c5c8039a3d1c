/** Takes locks away when the process ends in an orderly way; one that was killed leaves them, as those of nobody. */

import { readFileSync, unlinkSync } from 'node:fs';

const held = new Map<string, string>();

/** Notes that the lock at a path, with this mark's instance in it, is to go when the process ends. */
export function unlockAtExit(lockPath: string, instance: string): void {
  if (held.size === 0) process.on('exit', unlockAll);
  held.set(lockPath, instance);
}

/** The lock was taken away, or over, before. */
export function forgetAtExit(lockPath: string): void {
  held.delete(lockPath);
  if (held.size === 0) process.off('exit', unlockAll);
}

function unlockAll(): void {
  for (const [path, instance] of held) {
    try {
      if (readFileSync(path, 'utf8').includes(instance)) unlinkSync(path);
    } catch {
      // its folder is gone, or it was taken away by somebody
    }
  }
}
