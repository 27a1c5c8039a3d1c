/** Names of the hidden files that stand beside a project: lock, previous version, bytes on their way. */

import { createHash } from 'node:crypto';
import { basename, dirname, join } from 'node:path';

/** Longest name that common file systems take, bytes, less what is put around it. */
const longestName = 215;

/** `.NAME.` where the name leaves room for more, else a stand-in drawn from it. */
function hiddenStem(target: string): string {
  const name = basename(target);
  const short = Buffer.byteLength(name) <= longestName;
  return `.${short ? name : createHash('sha256').update(name).digest('hex').slice(0, 32)}.`;
}

/** Path of the hidden file beside `target` that has this ending, such as `.NAME.previous`. */
export const beside = (target: string, ending: string): string => join(dirname(target), hiddenStem(target) + ending);

/** Whether a name in the target's folder is left over from a save that was cut off. */
export function isLeftOver(target: string, name: string): boolean {
  const stem = hiddenStem(target);
  return name.startsWith(stem) && /^[0-9a-f]{16}\.(?:new|old|lock)$/.test(name.slice(stem.length));
}
