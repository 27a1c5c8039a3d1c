/** Puts texts that were typed but not taken over back into their fields. */

import type { Project } from '../../core/index.ts';
import { typeNumber } from '../fields/numberEdits.ts';
import { keepDraft } from '../store/drafts.ts';
import { type Path, valueAt } from '../store/path.ts';
import { safeText } from '../strings/safekeeping.ts';
import { specAt } from './fieldNames.ts';

const words = safeText.recovery;

/** The path that a draft's key stands for. */
export const pathOfKey = (key: string): Path =>
  key.split('/').map((part) => (/^\d+$/.test(part) ? Number(part) : part));

/**
 * Puts texts back.
 * @param project the project that they were typed into
 * @param drafts texts by path key; those whose place is not there any more are left out
 */
export function restoreDrafts(project: Project, drafts: Readonly<Record<string, string>>): void {
  for (const [key, typed] of Object.entries(drafts)) {
    const path = pathOfKey(key);
    if (valueAt(project, path.slice(0, -1)) === undefined) continue;
    const spec = specAt(path);
    // judged as if typed just now, so that the field says again why it was not taken over
    if (spec) typeNumber(path, spec, typed);
    else {
      const issue = { path, code: 'draft-kept', message: words.draftIssue, remedy: words.draftRemedy, value: typed };
      keepDraft({ path, text: typed, value: null, issue });
    }
  }
}
