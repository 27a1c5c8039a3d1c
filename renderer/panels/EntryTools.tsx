/** What can be done with one entry of a list, behind one small button. */

import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { text } from '../strings.ts';

/** One act: its name and what it does. */
export interface EntryTool {
  readonly label: string;
  readonly disabled?: boolean;
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
          {tools.map((tool) => (
            <MenuItem key={tool.label} id={tool.label} className="menu-item">
              {tool.label}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
