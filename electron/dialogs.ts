/** The desktop's own dialogs, as the services want them. */

import { app, type BrowserWindow, dialog, Menu, shell } from 'electron';
import { commandChannel } from './contract.ts';
import { menuTemplate } from './menu.ts';
import type { Dialogs } from './services/dialogCalls.ts';

/** Dialogs that belong to a window; closing it with unsaved edits asks first. `newWindow` opens one more. */
export function windowDialogs(window: BrowserWindow, newWindow: () => void): Dialogs {
  let edited = false;
  window.on('close', (event) => {
    if (edited && !confirmLoss(window)) event.preventDefault();
  });
  return {
    async pickToOpen(filter) {
      const filters = [{ name: filter.name, extensions: [...filter.extensions] }];
      const picked = await dialog.showOpenDialog(window, { properties: ['openFile'], filters });
      return picked.canceled ? null : (picked.filePaths[0] ?? null);
    },
    async pickToSave(suggestedName, filter) {
      const filters = [{ name: filter.name, extensions: [...filter.extensions] }];
      const picked = await dialog.showSaveDialog(window, { defaultPath: suggestedName, filters });
      return picked.canceled || picked.filePath === '' ? null : picked.filePath;
    },
    pagePdf: () => window.webContents.printToPDF({ printBackground: true, preferCSSPageSize: true }),
    setMenu(groups) {
      const template = menuTemplate(process.platform, groups, (id) => window.webContents.send(commandChannel, id));
      Menu.setApplicationMenu(Menu.buildFromTemplate([...template]));
    },
    setEdited(now) {
      edited = now;
      window.setDocumentEdited(now);
    },
    newWindow,
    // A folder of our own choosing: no path of the page's ever reaches the system.
    showLogFolder: async () => (await shell.openPath(app.getPath('logs'))) === '',
    closeWindow: () => window.destroy(),
  };
}

function confirmLoss(window: BrowserWindow): boolean {
  const choice = dialog.showMessageBoxSync(window, {
    type: 'warning',
    message: 'Close without saving?',
    detail: 'The edits since the last save will be lost.',
    buttons: ['Keep editing', 'Close without saving'],
    defaultId: 0,
    cancelId: 0,
  });
  return choice === 1;
}
