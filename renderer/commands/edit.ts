/** Undo and redo. */

import { dropStrayDrafts } from '../store/drafts.ts';
import { currentProject, projectStore, redo, undo } from '../store/project.ts';
import { text } from '../strings.ts';
import type { Command } from './types.ts';

function stepped(step: () => void): void {
  step();
  dropStrayDrafts(currentProject());
}

/** In the order of the menu. */
export const editCommands: readonly Command[] = [
  {
    id: 'undo',
    label: text.commands.undo,
    keys: 'Mod+Z',
    enabled: () => (projectStore.getState().history?.past.length ?? 0) > 0,
    perform: () => stepped(undo),
  },
  {
    id: 'redo',
    label: text.commands.redo,
    keys: 'Mod+Shift+Z',
    enabled: () => (projectStore.getState().history?.future.length ?? 0) > 0,
    perform: () => stepped(redo),
  },
];
