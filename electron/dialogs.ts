/** The desktop's own dialogs and deeds, as the services want them. */

import { app, type BrowserWindow, dialog, shell } from 'electron';
import type { WindowMenu } from './menu.ts';
import type { Dialogs, FileFilter } from './services/dialogCalls.ts';

const filtersOf = ({ name, extensions }: FileFilter) => [{ name, extensions: [...extensions] }];

/** Dialogs that belong to a window, and its menu. `newWindow` opens one more window. */
export function windowDialogs(window: BrowserWindow, menu: WindowMenu, newWindow: () => void): Dialogs {
  return {
    async pickToOpen(filter) {
      const picked = await dialog.showOpenDialog(window, { properties: ['openFile'], filters: filtersOf(filter) });
      return picked.canceled ? null : (picked.filePaths[0] ?? null);
    },
    async pickToSave(suggestedName, filter) {
      const picked = await dialog.showSaveDialog(window, { defaultPath: suggestedName, filters: filtersOf(filter) });
      return picked.canceled || picked.filePath === '' ? null : picked.filePath;
    },
    pagePdf: () => window.webContents.printToPDF({ printBackground: true, preferCSSPageSize: true }),
    setMenu: (groups) => menu.set(groups),
    setEdited: (edited) => window.setDocumentEdited(edited),
    newWindow,
    // A folder of our own choosing: no path of the page's ever reaches the system.
    showLogFolder: async () => (await shell.openPath(app.getPath('logs'))) === '',
    closeWindow: () => window.destroy(),
  };
}
