/** Commands on revisions: branch, manage, compare, begin from a template. */

import { activeRevision, applyEdit, currentProject } from '../store/project.ts';
import { branchRevision, freeId } from '../store/revisions.ts';
import { setView } from '../store/view.ts';
import { templateText } from '../strings/templates.ts';
import { text } from '../strings.ts';
import { today } from '../today.ts';
import type { Command } from './types.ts';
import { isOpen } from './when.ts';

/** Copies a revision, the shown one unless another is named, and shows the copy. */
export function branchFrom(id?: string): void {
  const project = currentProject();
  if (!project) return;
  const from = project.revisions.find((revision) => revision.id === id) ?? activeRevision(project);
  const date = today();
  const name = text.revisions.copyOf(from.name).slice(0, 120);
  applyEdit(branchRevision(from.id, name, date), { label: `${text.revisions.branch} ${freeId(project)}` });
}

/** In the order of the menu. */
export const revisionCommands: readonly Command[] = [
  { id: 'branch', label: text.revisions.branch, keys: 'Mod+B', enabled: isOpen, perform: () => branchFrom() },
  { id: 'revisions', label: text.revisions.manage, enabled: isOpen, perform: () => setView({ dialog: 'revisions' }) },
  {
    id: 'compare',
    label: text.revisions.compare,
    keys: 'Mod+D',
    // with one revision the dialog says how to get a second
    enabled: isOpen,
    perform: () => setView({ dialog: 'compare' }),
  },
  {
    id: 'templates',
    label: templateText.command,
    keys: 'Mod+J',
    enabled: isOpen,
    perform: () => setView({ dialog: 'templates' }),
  },
];
