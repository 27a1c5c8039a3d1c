/** What a command is, and the groups that menus and the list of commands show them in. */

/** One thing that can be done. `keys` as written: Mod is Ctrl, or Cmd on a Mac. */
export interface Command {
  readonly id: string;
  readonly label: string;
  readonly keys?: string;
  /** whether it can be done now */
  enabled(): boolean;
  perform(): void | Promise<void>;
}

/** Commands of one subject, under one head of the menu. */
export interface CommandGroup {
  readonly id: 'project' | 'edit' | 'revision' | 'study' | 'view' | 'help';
  readonly label: string;
  readonly commands: readonly Command[];
}
