/** The desktop menu: each item of ours sends the id of a command, and the renderer does the rest. */

import type { MenuItemConstructorOptions } from 'electron';

const separator: MenuItemConstructorOptions = { type: 'separator' };

/** Template of the menu. `send` carries a command's id to the window; ids are those of renderer/commands.ts. */
export function menuTemplate(platform: string, send: (commandId: string) => void): MenuItemConstructorOptions[] {
  const item = (label: string, id: string, accelerator?: string): MenuItemConstructorOptions => ({
    label,
    click: () => send(id),
    // The renderer has the same keys for the loopback host; the accelerator is shown but left to it.
    ...(accelerator === undefined ? {} : { accelerator, registerAccelerator: false }),
  });
  const file: MenuItemConstructorOptions = {
    label: 'File',
    submenu: [
      item('Open project…', 'open', 'CmdOrCtrl+O'),
      item('Examples…', 'examples'),
      item('Save', 'save', 'CmdOrCtrl+S'),
      item('Save as…', 'save-as', 'CmdOrCtrl+Shift+S'),
      separator,
      { role: platform === 'darwin' ? 'close' : 'quit' },
    ],
  };
  const edit: MenuItemConstructorOptions = {
    label: 'Edit',
    submenu: [
      item('Undo', 'undo', 'CmdOrCtrl+Z'),
      item('Redo', 'redo', 'CmdOrCtrl+Shift+Z'),
      separator,
      { role: 'cut' },
      { role: 'copy' },
      { role: 'paste' },
      { role: 'selectAll' },
    ],
  };
  const revision: MenuItemConstructorOptions = {
    label: 'Revision',
    submenu: [
      item('Branch this revision', 'branch', 'CmdOrCtrl+B'),
      item('Manage revisions…', 'revisions'),
      item('Compare…', 'compare'),
    ],
  };
  const view: MenuItemConstructorOptions = {
    label: 'View',
    submenu: [
      item('Light or dark', 'theme'),
      item('All commands…', 'commands'),
      separator,
      { role: 'resetZoom' },
      { role: 'zoomIn' },
      { role: 'zoomOut' },
      separator,
      { role: 'togglefullscreen' },
    ],
  };
  return [
    ...(platform === 'darwin' ? [{ role: 'appMenu' } as const] : []),
    file,
    edit,
    revision,
    view,
    { role: 'windowMenu' },
  ];
}
