/** The desktop menu: kept by window, shown in it or in the desktop's one bar. */

import { type BrowserWindow, Menu } from 'electron';
import { commandChannel, type MenuGroup } from './contract.ts';
import { menuTemplate } from './menuTemplate.ts';

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
