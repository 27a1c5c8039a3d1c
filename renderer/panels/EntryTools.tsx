/** What can be done with one entry of a list, behind one small button. */

import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { text } from '../strings.ts';

/** One act: its name and what it does. */
export interface EntryTool {
  readonly label: string;
  readonly disabled?: boolean;
  /** a few words below the name: why it cannot be done, or what it keeps */
  readonly note?: string;
  act(): void;
}

/** The acts on the entry called `entry`. */
export function EntryTools({ entry, tools }: { readonly entry: string; readonly tools: readonly EntryTool[] }) {
  const perform = (label: string) => tools.find((tool) => tool.label === label)?.act();
  return (
    <MenuTrigger>
      <Button className="tiny" aria-label={`${text.actions.more}: ${entry}`}>
        <span title={text.actions.more} aria-hidden="true">
          ⋯
        </span>
      </Button>
      <Popover className="popover" placement="bottom end">
        <Menu
          className="menu"
          aria-label={entry}
          disabledKeys={tools.filter((tool) => tool.disabled).map((tool) => tool.label)}
          onAction={(key) => perform(String(key))}
        >
          {tools.map(({ label, note }) => (
            <MenuItem key={label} id={label} textValue={label} className="menu-item">
              {label}
              {note && <span className="menu-note">{note}</span>}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
