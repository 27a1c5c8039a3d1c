/** Hands finished files to the host, which asks where to put them. */

import { type HandoverFile, issueText } from '../../core/index.ts';
import { getBridge } from '../bridge.ts';
import { announce } from '../files.ts';
import { handoverText as words } from '../strings/handover.ts';

/** Saves the files one after the other; stops where one fails or the person cancels. Failures name path, cause and what was saved. */
export async function saveFiles(files: readonly HandoverFile[]): Promise<void> {
  const saved: string[] = [];
  for (const { name, bytes } of files) {
    const result = await getBridge().exportFile(name, bytes);
    if (!result.ok) {
      const cause = result.issues.map(issueText).join(' ');
      return announce('bad', saved.length > 0 ? `${cause} ${words.savedBefore(saved.join(', '))}` : cause);
    }
    if (result.value === null) break;
    saved.push(result.value.path ?? result.value.name);
  }
  if (saved.length > 0) announce('good', words.saved(saved.join(', ')));
}
