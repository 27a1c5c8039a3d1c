/** The desktop menu, made of the commands the window names: each item sends a command's id, the window does the rest. */

import { type BrowserWindow, Menu, type MenuItemConstructorOptions } from 'electron';
import { commandChannel, type MenuGroup, type MenuItem } from './contract.ts';

type Item = MenuItemConstructorOptions;

const separator: Item = { type: 'separator' };

const roles = (...names: readonly NonNullable<Item['role']>[]): readonly Item[] => names.map((role) => ({ role }));

/** Items of the system's own that follow ours in a group; `tools` are the engine's for developers. */
function systemItems(id: MenuGroup['id'], platform: string, tools: boolean): readonly Item[] {
  if (id === 'project') return [separator, ...roles(platform === 'darwin' ? 'close' : 'quit')];
  if (id === 'edit') return [separator, ...roles('cut', 'copy', 'paste', 'selectAll')];
  if (id !== 'view') return [];
  const own = roles('resetZoom', 'zoomIn', 'zoomOut', 'togglefullscreen');
  return [separator, ...own, ...(tools ? roles('toggleDevTools') : [])];
}

/** The menu that macOS names after the program; what tells about it is the window's own command. */
function programMenu(about: Item | null): Item {
  const first = about ? [about, separator] : [];
  const rest = roles('services', 'hide', 'hideOthers', 'unhide', 'quit');
  return { label: 'Augerwright', submenu: [...first, ...rest] };
}

/**
 * Template of the menu.
 * @param groups as the window last told them; none before its first word
 * @param send carries a command's id to the window
 * @param tools whether to offer the engine's tools for developers
 */
export function menuTemplate(
  platform: string,
  groups: readonly MenuGroup[],
  send: (commandId: string) => void,
  tools = false,
): readonly Item[] {
  const ours = ({ id, label, keys, enabled }: MenuItem): Item => ({
    label,
    enabled,
    click: () => send(id),
    // The window hears these keys itself, as it must over loopback: the menu only shows them.
    ...(keys === null ? {} : { accelerator: keys.replace('Mod', 'CmdOrCtrl'), registerAccelerator: false }),
  });
  const menus = groups.map(
    (group): Item => ({
      label: group.label,
      submenu: [...group.items.map(ours), ...systemItems(group.id, platform, tools)],
    }),
  );
  const about = groups.flatMap(({ items }) => items).find(({ id }) => id === 'about');
  const program = platform === 'darwin' ? [programMenu(about ? ours(about) : null)] : [];
  return [...program, ...menus, ...roles('windowMenu')];
}

/** The menu of one window. */
export interface WindowMenu {
  /** Takes the groups that the window names from now on. */
  set(groups: readonly MenuGroup[]): void;
}

/**
 * Keeps a window's menu: in the window itself, or on macOS in the one bar of the desktop while the window is in front.
 * @param platform Node's name of the operating system
 */
export function createWindowMenu(window: BrowserWindow, platform: string, tools: boolean): WindowMenu {
  let groups: readonly MenuGroup[] = [];
  const send = (id: string) => {
    if (!window.isDestroyed()) window.webContents.send(commandChannel, id);
  };
  const show = () => {
    const menu = Menu.buildFromTemplate([...menuTemplate(platform, groups, send, tools)]);
    if (platform === 'darwin') Menu.setApplicationMenu(menu);
    else window.setMenu(menu);
  };
  if (platform === 'darwin') window.on('focus', show);
  return {
    set(told) {
      groups = told;
      if (platform !== 'darwin' || window.isFocused()) show();
    },
  };
}

/** The menu while no window has named one; the engine's own would offer to load the page anew. */
export function clearMenu(platform: string): void {
  const bare = () => Menu.buildFromTemplate([...menuTemplate(platform, [], () => undefined)]);
  Menu.setApplicationMenu(platform === 'darwin' ? bare() : null);
}
