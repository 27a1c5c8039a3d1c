/** Every command as one object, shared by the menus, keys, buttons and the command list. */

import { editCommands } from './commands/edit.ts';
import { helpCommands } from './commands/help.ts';
import { projectCommands } from './commands/project.ts';
import { revisionCommands } from './commands/revision.ts';
import { studyCommands } from './commands/study.ts';
import type { Command, CommandGroup } from './commands/types.ts';
import { viewCommands } from './commands/view.ts';
import { announce } from './files.ts';
import { text } from './strings.ts';

export { branchFrom } from './commands/revision.ts';
export type { Command, CommandGroup } from './commands/types.ts';

const heads = text.commands.groups;

/** All commands by subject, in the order of the menus. */
export const commandGroups: readonly CommandGroup[] = [
  { id: 'project', label: heads.project, commands: projectCommands },
  { id: 'edit', label: heads.edit, commands: editCommands },
  { id: 'revision', label: heads.revision, commands: revisionCommands },
  { id: 'study', label: heads.study, commands: studyCommands },
  { id: 'view', label: heads.view, commands: viewCommands },
  { id: 'help', label: heads.help, commands: helpCommands },
];

/** All commands, in the order of the list. */
export const commands: readonly Command[] = commandGroups.flatMap((group) => group.commands);

/** The command of this id. */
export function commandOf(id: string): Command {
  const command = commands.find((candidate) => candidate.id === id);
  if (!command) throw new Error(`no command is called ${id}`);
  return command;
}

/** Performs a command if it can be done now; a failure becomes a notice. */
export function perform(id: string): void {
  const command = commands.find((candidate) => candidate.id === id);
  if (!command?.enabled()) return;
  Promise.resolve()
    .then(() => command.perform())
    .catch((reason: unknown) => announce('bad', reason instanceof Error ? reason.message : String(reason)));
}
