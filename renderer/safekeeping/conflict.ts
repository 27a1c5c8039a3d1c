/** A file that somebody else changed while there is work of one's own: what it holds now, and the ways out. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { faultyFileIssues, type Issue, issueText, type Project, parseProject } from '../../core/index.ts';
import { announce } from '../announce.ts';
import { getBridge } from '../bridge.ts';
import { record, startHistory } from '../store/history.ts';
import { type ProjectFile, projectStore } from '../store/project.ts';
import { setView, viewStore } from '../store/view.ts';
import { safeText } from '../strings/safekeeping.ts';
import { unstay } from './notices.ts';
import { saveProject, saveProjectAs } from './saving.ts';

const words = safeText.file;

/** What the file holds now. */
export interface Conflict {
  readonly file: ProjectFile;
  /** null where the file cannot be read as a project */
  readonly theirs: Project | null;
  readonly issues: readonly Issue[];
  /** a save was refused for it */
  readonly fromSave: boolean;
}

/** The conflict under decision, or null. */
export const conflictStore = createStore<{ readonly conflict: Conflict | null }>(() => ({ conflict: null }));

/** Picks it inside a view. */
export const useConflict = (): Conflict | null => useStore(conflictStore, (state) => state.conflict);

/** Reads what the file holds now and asks what to do. */
export async function openConflict(handle: string, fromSave: boolean): Promise<void> {
  const opened = await getBridge().openRecent(handle);
  if (!opened.ok) return announce('bad', opened.issues.map(issueText).join(' '));
  const { name, path, version, text } = opened.value;
  const read = parseProject(text);
  const conflict = {
    file: { handle, name, path, version },
    theirs: read.ok ? read.value : null,
    issues: read.ok ? [] : faultyFileIssues(text),
    fromSave,
  };
  conflictStore.setState({ conflict });
  setView({ dialog: 'conflict' });
}

function decided(): void {
  conflictStore.setState({ conflict: null });
  if (viewStore.getState().dialog === 'conflict') setView({ dialog: 'none' });
}

/**
 * Goes on with one's own work. The version that was looked at counts as known, so that the next save writes over it, and
 * over no other: a file changed once more is asked about once more.
 */
export async function keepMine({ file, fromSave }: Conflict): Promise<void> {
  projectStore.setState({ file });
  decided();
  unstay('file');
  if (fromSave) await saveProject();
  else announce('good', words.keptMine);
}

/** Shows what is in the file now, as one step that can be undone. */
export function takeTheirs({ file, theirs }: Conflict): void {
  if (!theirs) return;
  projectStore.setState(({ history }) => ({
    file,
    saved: theirs,
    history: history ? record(history, theirs, { label: words.takenStep }, Date.now()) : startHistory(theirs),
  }));
  decided();
  unstay('file');
  announce('good', words.taken(file.name));
}

/** Leaves the file alone and goes on in a copy. */
export async function copyMine(): Promise<void> {
  if ((await saveProjectAs()) === 'saved') decided();
}
