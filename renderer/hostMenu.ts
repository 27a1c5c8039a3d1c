/** Keeps the host's own menu the same as the window's: what it shows, and what can be given now. */

import { type Bridge, getBridge, type MenuGroup } from './bridge.ts';
import { commandGroups } from './commands.ts';
import { recoveryStore } from './safekeeping/recovery.ts';
import { projectStore } from './store/project.ts';
import { viewStore } from './store/view.ts';

/** The menu as it is to be shown now. */
export const menuNow = (): readonly MenuGroup[] =>
  commandGroups.map(({ id, label, commands }) => ({
    id,
    label,
    items: commands.map((command) => ({
      id: command.id,
      label: command.label,
      keys: command.keys ?? null,
      enabled: command.enabled(),
    })),
  }));

/** Tells the host of the menu now and whenever it changes; answers with the function that stops it. */
export function followMenu(bridge: Pick<Bridge, 'setMenu'> = getBridge()): () => void {
  let told = '';
  const tell = () => {
    const groups = menuNow();
    const said = JSON.stringify(groups);
    if (said === told) return;
    told = said;
    bridge.setMenu(groups);
  };
  tell();
  const stops = [projectStore.subscribe(tell), viewStore.subscribe(tell), recoveryStore.subscribe(tell)];
  return () => {
    for (const stop of stops) stop();
  };
}
