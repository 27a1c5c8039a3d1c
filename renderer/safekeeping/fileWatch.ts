/** Watches the open file for what others do to it: when the window is come back to, and every few seconds meanwhile. */

import { type FileLook, getBridge } from '../bridge.ts';
import { reloadFile } from '../files.ts';
import { draftStore } from '../store/drafts.ts';
import { isUnsaved, type ProjectFile, projectStore } from '../store/project.ts';
import { viewStore } from '../store/view.ts';
import { safeText } from '../strings/safekeeping.ts';
import { openConflict } from './conflict.ts';
import { showHolder } from './holder.ts';
import { stay, staying, unstay } from './notices.ts';
import { isSaving, saveProjectAs } from './saving.ts';

const words = safeText.file;

/** Time between two looks, ms. It also tells a host without windows of its own that this one is still there. */
const lookEveryMs = 5_000;

/** The version that was told of last, so that each change is asked about once. */
let toldOf: string | null = null;
let looking = false;

/** A handle that no host gives out. Asking for it tells a host that knows windows only by their calls that this one is there. */
const noFile = '0'.repeat(32);

const hasOwnWork = (): boolean => isUnsaved(projectStore.getState()) || Object.keys(draftStore.getState()).length > 0;

function tellChanged(handle: string, name: string, version: string | null): void {
  const own = hasOwnWork();
  const acts = own
    ? [{ label: words.compare, perform: () => openConflict(handle, false) }]
    : [{ label: words.readAgain, perform: reloadFile }];
  const fresh = version !== toldOf;
  toldOf = version;
  if (fresh || staying('file')?.acts?.[0]?.label !== acts[0]?.label)
    stay({ subject: 'file', kind: 'note', text: words.changed(name), acts });
  // one dialog is not put over another
  if (fresh && own && viewStore.getState().dialog === 'none') void openConflict(handle, false);
}

function tellMissing(name: string, state: 'gone' | 'unreachable'): void {
  const text = state === 'gone' ? words.gone(name) : words.unreachable(name);
  if (toldOf === state && !staying('file')) return;
  toldOf = state;
  if (staying('file')?.text === text) return;
  const acts = [{ label: safeText.saveAs, perform: saveProjectAs }];
  stay({ subject: 'file', kind: 'bad', text, remedy: words.memory, acts });
}

function tell({ handle, name }: ProjectFile, { state, version, holder }: FileLook): void {
  showHolder(holder);
  if (state === 'gone' || state === 'unreachable') tellMissing(name, state);
  else if (state === 'changed' && handle !== null) tellChanged(handle, name, version);
  else {
    toldOf = null;
    unstay('file');
  }
}

/** Looks at the open file once and tells what is new. */
export async function lookNow(): Promise<void> {
  const { file } = projectStore.getState();
  if (file.handle === null || looking || isSaving()) return;
  looking = true;
  const looked = await getBridge().lookAtFile(file.handle, file.version ?? null);
  looking = false;
  // what was seen during a save, or of another file, says nothing
  if (!looked.ok || isSaving() || projectStore.getState().file !== file) return;
  tell(file, looked.value);
}

/** The file that a page loaded anew opens again. */
const fileKey = 'augerwright.file';

function follow({ handle }: ProjectFile, before: ProjectFile): void {
  if (handle === before.handle) return;
  toldOf = null;
  if (before.handle !== null) void getBridge().leaveFile(before.handle);
  if (handle === null) sessionStorage.removeItem(fileKey);
  else sessionStorage.setItem(fileKey, handle);
}

/** Handle of the file that was open before the page was loaded anew, or null. */
export const fileBefore = (): string | null => sessionStorage.getItem(fileKey);

/** Begins to watch; answers with the function that stops it. */
export function watchFile(): () => void {
  const stop = projectStore.subscribe((state, before) => follow(state.file, before.file));
  const look = () => document.visibilityState === 'visible' && void lookNow();
  const timer = setInterval(() => {
    if (document.visibilityState === 'visible' && projectStore.getState().file.handle !== null) void lookNow();
    else if (getBridge().host === 'loopback') void getBridge().lookAtFile(noFile, null);
  }, lookEveryMs);
  const leave = () => {
    const { handle } = projectStore.getState().file;
    if (handle !== null) void getBridge().leaveFile(handle);
  };
  window.addEventListener('focus', look);
  document.addEventListener('visibilitychange', look);
  window.addEventListener('pagehide', leave);
  return () => {
    stop();
    clearInterval(timer);
    window.removeEventListener('focus', look);
    document.removeEventListener('visibilitychange', look);
    window.removeEventListener('pagehide', leave);
    toldOf = null;
  };
}
