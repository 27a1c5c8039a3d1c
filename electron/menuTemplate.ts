/** What the desktop menu holds: the commands the window names, each sending its id, and the system's own items. */

import type { MenuItemConstructorOptions } from 'electron';
import type { MenuGroup, MenuItem } from './contract.ts';

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
