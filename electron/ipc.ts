/** Puts the host's calls on Electron's channels, behind a check of who is asking. */

import type { IpcMain, IpcMainInvokeEvent, WebContents } from 'electron';
import { fail, type Result } from '../core/index.ts';
import { argumentChecks, type HostApi } from './contract.ts';
import { appOrigin } from './protocol.ts';
import { answer } from './services/answer.ts';

/** A window that may call. */
export interface Caller {
  readonly api: HostApi;
  /** Takes note of a call once it is answered. */
  heard(name: string, argument: unknown, result: Result<unknown>): void;
}

/** Registers every call. `callerOf` tells the windows we opened, each with its calls, from whatever else may hold web contents. */
export function setupIpc(
  ipcMain: Pick<IpcMain, 'handle'>,
  callerOf: (contents: WebContents) => Caller | undefined,
): void {
  for (const name of Object.keys(argumentChecks)) {
    ipcMain.handle(name, async (event, argument: unknown): Promise<Result<unknown>> => {
      const caller = isOurPage(event) ? callerOf(event.sender) : undefined;
      if (!caller) return fail(foreignSender);
      const result = await answer(caller.api, name, argument);
      caller.heard(name, argument, result);
      return result;
    });
  }
}

/** True for a main frame that shows a page of our own scheme. */
function isOurPage({ sender, senderFrame: frame }: IpcMainInvokeEvent): boolean {
  return frame !== null && frame === sender.mainFrame && frame.url.startsWith(`${appOrigin}/`);
}

const foreignSender = {
  path: [],
  code: 'call-sender',
  message: 'The host answers its own window only.',
  remedy: 'Start Augerwright again.',
};
