/** Work kept by windows that are gone: found, looked at, gone on with, saved as a copy or thrown away. */

import { useStore } from 'zustand';
import { createStore } from 'zustand/vanilla';
import { type Issue, issueText, type Project, parseProject, serializeProject } from '../../core/index.ts';
import { announce } from '../announce.ts';
import { getBridge, type RecoveredWork, type Recovery } from '../bridge.ts';
import { orAsk } from '../files.ts';
import { dropDrafts } from '../store/drafts.ts';
import { record, startHistory } from '../store/history.ts';
import { type ProjectFile, projectStore, startProject } from '../store/project.ts';
import { flyTo, setView } from '../store/view.ts';
import { safeText } from '../strings/safekeeping.ts';
import { showHolder } from './holder.ts';
import { keepNow } from './journal.ts';
import { stay, unstay } from './notices.ts';
import { restoreDrafts } from './restoreDrafts.ts';
import { fileNameFor } from './saving.ts';
import { renewWindow, windowId } from './windowId.ts';

const words = safeText.recovery;

/** Work that was read, and both sides of its difference as far as they can be read. */
export interface ReadWork {
  readonly work: RecoveredWork;
  /** null where its text is no project */
  readonly project: Project | null;
  /** the file as it is now; null where there is none or it is no project */
  readonly onFile: Project | null;
  readonly issues: readonly Issue[];
}

/** What waits to be decided on, and what of it was read, by id. */
export interface RecoveryState {
  readonly waiting: readonly Recovery[];
  readonly read: Readonly<Record<string, ReadWork>>;
}

/** Outside React: read with getState. */
export const recoveryStore = createStore<RecoveryState>(() => ({ waiting: [], read: {} }));

/** Picks a part of the state inside a view. */
export const useRecovery = <T>(pick: (state: RecoveryState) => T): T => useStore(recoveryStore, pick);

const show = (): void => setView({ dialog: 'recovery' });

/** Says, as long as something waits, that it does. */
function remind(): void {
  const { length } = recoveryStore.getState().waiting;
  const acts = [{ label: words.look, perform: show }];
  if (length === 0) unstay('recovery');
  else stay({ subject: 'recovery', kind: 'note', text: words.waiting(length), acts });
}

/** Asks the host what waits; shows it where `open`. */
export async function findRecoveries(open: boolean): Promise<void> {
  const listed = await getBridge().listRecoveries(windowId());
  if (!listed.ok) return announce('bad', listed.issues.map(issueText).join(' '));
  const waiting = listed.value.filter(({ id }) => id !== windowId());
  recoveryStore.setState({ waiting });
  remind();
  if (open && waiting.length > 0) show();
}

const parsed = (text: string | null): Project | null => {
  const read = text === null ? null : parseProject(text);
  return read?.ok ? read.value : null;
};

/** Work as both sides of a difference. */
function understood(work: RecoveredWork): ReadWork {
  const project = parseProject(work.text);
  return {
    work,
    project: project.ok ? project.value : null,
    onFile: parsed(work.fileText),
    issues: project.ok ? [] : project.issues,
  };
}

/** Reads kept work where it was not read yet. */
export async function readWork(id: string): Promise<void> {
  if (recoveryStore.getState().read[id]) return;
  const read = await getBridge().readRecovery(id);
  if (!read.ok) return announce('bad', read.issues.map(issueText).join(' '));
  recoveryStore.setState((state) => ({ read: { ...state.read, [id]: understood(read.value) } }));
}

/** Looking at work took its file for this window; it is given back where the window does not go on with it. */
function leaveFile({ work }: ReadWork): void {
  const open = projectStore.getState().file.handle;
  if (work.handle !== null && work.handle !== open) void getBridge().leaveFile(work.handle);
}

/** Nothing is decided for now: what was read is read anew next time, since files may change meanwhile. */
export function decideLater(): void {
  for (const read of Object.values(recoveryStore.getState().read)) leaveFile(read);
  recoveryStore.setState({ read: {} });
}

function forget(id: string): void {
  const known = recoveryStore.getState().read[id];
  if (known) leaveFile(known);
  recoveryStore.setState(({ waiting, read }) => {
    const { [id]: _, ...others } = read;
    return { waiting: waiting.filter((one) => one.id !== id), read: others };
  });
  remind();
  if (recoveryStore.getState().waiting.length === 0) setView({ dialog: 'none' });
}

const nameOf = (path: string | null, name: string): string => path?.split(/[/\\]/).at(-1) || name;

/** The file that the work goes on in: its own, or none where it goes on as a copy. */
const fileOf = ({ handle, path, name, fileVersion }: RecoveredWork, asCopy: boolean): ProjectFile =>
  handle === null || asCopy
    ? { handle: null, name: '' }
    : { handle, name: nameOf(path, name), path, version: fileVersion };

/**
 * Puts work into the window as one step over the file as it is now, so that Undo goes back to the file; texts that were
 * typed but not taken over stand in their fields again.
 */
function bringBack({ work, project, onFile }: ReadWork, asCopy: boolean): void {
  if (!project) return;
  dropDrafts([]);
  const file = fileOf(work, asCopy);
  if (onFile && file.handle !== null) {
    const history = record(startHistory(onFile), project, { label: words.step }, Date.now());
    projectStore.setState({ history, file, saved: onFile });
  } else startProject(project);
  restoreDrafts(project, work.drafts);
  showHolder(file.handle === null ? null : work.holder);
  setView({ mark: null, hoverZ: null });
  flyTo('whole');
}

/** Goes on with kept work; it is dropped there only once this window keeps it itself. */
export const goOnWith = (read: ReadWork, asCopy: boolean): Promise<void> =>
  orAsk(async () => {
    const { id, name, path } = read.work;
    bringBack(read, asCopy);
    await keepNow();
    const dropped = await getBridge().dropRecovery(id);
    if (!dropped.ok) announce('bad', dropped.issues.map(issueText).join(' '));
    else announce('good', words.back(nameOf(path, name)));
    setView({ dialog: 'none' });
    forget(id);
  });

/** Saves kept work where the person wants it; what the browser took as a download is not known to be there, and stays. */
export async function saveCopy({ work, project }: ReadWork): Promise<void> {
  const stem = nameOf(work.path, work.name).replace(/\.(json|augerwright)$/i, '');
  const written = project ? serializeProject(project) : work.text;
  const saved = await getBridge().saveProjectAs(written, fileNameFor(`${stem}-kept`));
  if (!saved.ok) return announce('bad', saved.issues.map(issueText).join(' '));
  if (!saved.value) return;
  if (saved.value.path === null) return announce('good', words.copied(saved.value.name));
  await getBridge().dropRecovery(work.id);
  forget(work.id);
}

/** Throws kept work away. */
export async function throwAway({ id, name }: Recovery): Promise<void> {
  const dropped = await getBridge().dropRecovery(id);
  if (!dropped.ok) return announce('bad', dropped.issues.map(issueText).join(' '));
  forget(id);
  announce('good', words.dropped(name));
}

/** Brings this window's own work back after its page was loaded anew; false where there is none. */
export async function bringBackOwn(): Promise<boolean> {
  const kept = await getBridge().readRecovery(windowId());
  if (!kept.ok) return false;
  const read = understood(kept.value);
  if (!read.project) {
    // it stays kept under its name, to be saved as a copy
    await renewWindow();
    return false;
  }
  bringBack(read, false);
  announce('good', words.back(nameOf(read.work.path, read.work.name)));
  return true;
}
