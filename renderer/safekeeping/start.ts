/** How a window begins: who it is, what it shows first, and everything that keeps its work safe from then on. */

import { getBridge } from '../bridge.ts';
import { openStart, saveProject, takeIn } from '../files.ts';
import { projectStore } from '../store/project.ts';
import { listenToDrops } from './drop.ts';
import { listenToFaults } from './faultLog.ts';
import { fileBefore, watchFile } from './fileWatch.ts';
import { followWork } from './journal.ts';
import { rememberRecent } from './recent.ts';
import { bringBackOwn, findRecoveries } from './recovery.ts';
import { settleWindow } from './windowId.ts';

/** A page that was closed just before counts as there for 20 s, so its work is looked for once more after this, ms. */
const lookAgainAfterMs = 25_000;

/** Opens the file again that was open before the page was loaded anew; false where there was none, or it is gone. */
async function openAgain(): Promise<boolean> {
  const handle = fileBefore();
  if (handle === null) return false;
  const opened = await getBridge().openRecent(handle);
  return opened.ok && takeIn(opened.value);
}

/** Saves because the host wants to close the window, and closes it only when everything is saved. */
async function saveAndClose(): Promise<void> {
  // a field that is being typed into hands its text over
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  if ((await saveProject()) === 'saved') getBridge().closeWindow();
}

/** Begins; ends when the first project is shown and what was left unsaved before is known. */
export async function startWindow(): Promise<void> {
  listenToFaults();
  listenToDrops();
  projectStore.subscribe(({ file }, before) => {
    if (file !== before.file && file.path) rememberRecent(file.path);
  });
  getBridge().onSaveAndClose(() => void saveAndClose());
  const loadedAnew = await settleWindow();
  watchFile();
  if (!(loadedAnew && ((await bringBackOwn()) || (await openAgain())))) await openStart();
  followWork();
  await findRecoveries(true);
  if (getBridge().host === 'loopback') setTimeout(() => void findRecoveries(false), lookAgainAfterMs);
}
