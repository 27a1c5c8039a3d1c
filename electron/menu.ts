/** The desktop menu, made of the commands the window names: each item sends a command's id, the window does the rest. */

import type { MenuItemConstructorOptions } from 'electron';
import type { MenuGroup } from './contract.ts';

type Item = MenuItemConstructorOptions;

const separator: Item = { type: 'separator' };

const roles = (...names: readonly NonNullable<Item['role']>[]): readonly Item[] => names.map((role) => ({ role }));

/** Items of the system's own that follow ours in a group. */
function systemItems(id: MenuGroup['id'], platform: string): readonly Item[] {
  if (id === 'project') return [separator, ...roles(platform === 'darwin' ? 'close' : 'quit')];
  if (id === 'edit') return [separator, ...roles('cut', 'copy', 'paste', 'selectAll')];
  return id === 'view' ? [separator, ...roles('resetZoom', 'zoomIn', 'zoomOut', 'togglefullscreen')] : [];
}

/**
 * Template of the menu.
 * @param groups as the window last told them; none before its first word
 * @param send carries a command's id to the window
 */
export function menuTemplate(
  platform: string,
  groups: readonly MenuGroup[],
  send: (commandId: string) => void,
): readonly Item[] {
  const ours = ({ items }: MenuGroup): readonly Item[] =>
    items.map(({ id, label, keys, enabled }) => ({
      label,
      enabled,
      click: () => send(id),
      // The window hears these keys itself, as it must over loopback: the menu only shows them.
      ...(keys === null ? {} : { accelerator: keys.replace('Mod', 'CmdOrCtrl'), registerAccelerator: false }),
    }));
  const menus = groups.map(
    (group): Item => ({
      label: group.label,
      submenu: [...ours(group), ...systemItems(group.id, platform)],
    }),
  );
  return [...(platform === 'darwin' ? roles('appMenu') : []), ...menus, ...roles('windowMenu')];
}
