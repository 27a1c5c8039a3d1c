/** Puts the host's calls on Electron's channels, behind a check of who is asking. */

import type { IpcMain, IpcMainInvokeEvent, WebContents } from 'electron';
import { fail, type Result } from '../core/index.ts';
import { argumentChecks, type HostApi } from './contract.ts';
import { appOrigin } from './protocol.ts';
import { answer } from './services/answer.ts';

/** Registers every call. `isOurs` tells the windows we opened from anything else that may hold web contents. */
export function setupIpc(
  ipcMain: Pick<IpcMain, 'handle'>,
  api: HostApi,
  isOurs: (contents: WebContents) => boolean,
): void {
  for (const name of Object.keys(argumentChecks)) {
    ipcMain.handle(name, async (event, argument: unknown): Promise<Result<unknown>> => {
      return isTrusted(event, isOurs) ? answer(api, name, argument) : fail(foreignSender);
    });
  }
}

/** True for the main frame of one of our windows, showing a page of our own scheme. */
function isTrusted(event: IpcMainInvokeEvent, isOurs: (contents: WebContents) => boolean): boolean {
  const frame = event.senderFrame;
  if (!frame || frame !== event.sender.mainFrame || !isOurs(event.sender)) return false;
  return frame.url.startsWith(`${appOrigin}/`);
}

const foreignSender = {
  path: [],
  code: 'call-sender',
  message: 'The host answers its own window only.',
  remedy: 'Start Augerwright again.',
};
