/** The desktop menu: each item of ours sends the id of a command, and the renderer does the rest. */

import type { MenuItemConstructorOptions } from 'electron';

type Item = MenuItemConstructorOptions;
/** Label, command id as in renderer/commands.ts, and the keys to show. */
type OurItem = readonly [label: string, id: string, keys?: string];

const separator: Item = { type: 'separator' };

const fileItems: readonly OurItem[] = [
  ['Open project…', 'open', 'CmdOrCtrl+O'],
  ['Examples…', 'examples'],
  ['Save', 'save', 'CmdOrCtrl+S'],
  ['Save as…', 'save-as', 'CmdOrCtrl+Shift+S'],
  ['Hand over…', 'handover', 'CmdOrCtrl+E'],
];
const editItems: readonly OurItem[] = [
  ['Undo', 'undo', 'CmdOrCtrl+Z'],
  ['Redo', 'redo', 'CmdOrCtrl+Shift+Z'],
];
const revisionItems: readonly OurItem[] = [
  ['Branch this revision', 'branch', 'CmdOrCtrl+B'],
  ['Manage revisions…', 'revisions'],
  ['Compare…', 'compare'],
];
const viewItems: readonly OurItem[] = [
  ['Light or dark', 'theme'],
  ['All commands…', 'commands'],
];

const roles = (...names: readonly NonNullable<Item['role']>[]): readonly Item[] => names.map((role) => ({ role }));

/** Template of the menu. `send` carries a command's id to the window. */
export function menuTemplate(platform: string, send: (commandId: string) => void): Item[] {
  const ours = (items: readonly OurItem[]): readonly Item[] =>
    items.map(([label, id, keys]) => ({
      label,
      click: () => send(id),
      // The renderer hears these keys itself, as it must over loopback: the menu only shows them.
      ...(keys === undefined ? {} : { accelerator: keys, registerAccelerator: false }),
    }));
  const menu = (label: string, ...submenu: Item[]): Item => ({ label, submenu });
  return [
    ...(platform === 'darwin' ? roles('appMenu') : []),
    menu('File', ...ours(fileItems), separator, ...roles(platform === 'darwin' ? 'close' : 'quit')),
    menu('Edit', ...ours(editItems), separator, ...roles('cut', 'copy', 'paste', 'selectAll')),
    menu('Revision', ...ours(revisionItems)),
    menu('View', ...ours(viewItems), separator, ...roles('resetZoom', 'zoomIn', 'zoomOut', 'togglefullscreen')),
    ...roles('windowMenu'),
  ];
}
