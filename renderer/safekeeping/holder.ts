/** The notice that a file is open elsewhere, and taking it over. */

import { issueText } from '../../core/index.ts';
import { announce } from '../announce.ts';
import { type FileHolder, getBridge } from '../bridge.ts';
import { projectStore } from '../store/project.ts';
import { safeText } from '../strings/safekeeping.ts';
import { stay, staying, unstay } from './notices.ts';
import { saveProjectAs } from './saving.ts';
import { whenText } from './when.ts';

const words = safeText.file;

async function takeOver(): Promise<void> {
  const { handle, name } = projectStore.getState().file;
  if (handle === null) return unstay('held');
  const taken = await getBridge().takeOverFile(handle);
  if (!taken.ok) return announce('bad', taken.issues.map(issueText).join(' '));
  unstay('held');
  unstay('save');
  announce('good', words.tookOver(name));
}

/** Says who else writes the open file, or that nobody does any more. */
export function showHolder(holder: FileHolder | null): void {
  if (!holder) {
    unstay('held');
    return;
  }
  const since = whenText(holder.since);
  const machine = holder.kind === 'program' ? holder.machine : null;
  const text = holder.alive === false ? words.heldGone(since) : words.held(since, machine);
  // told again only when it says something else, so that it can be closed and is not read out every few seconds
  if (staying('held')?.text === text) return;
  stay({
    subject: 'held',
    kind: 'note',
    text,
    acts: [
      { label: words.takeOver, perform: takeOver },
      { label: safeText.saveAs, perform: saveProjectAs },
    ],
  });
}
