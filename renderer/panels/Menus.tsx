/** The menus of the window: every command under its subject. Where the host has a menu of its own, that one shows them. */

import { Button, Keyboard, Menu, MenuItem, MenuTrigger, Popover, Text } from 'react-aria-components';
import { type CommandGroup, commandGroups, perform } from '../commands.ts';
import { keysText } from '../keys.ts';
import { useProjectState } from '../store/project.ts';
import { text } from '../strings.ts';

function GroupMenu({ group }: { readonly group: CommandGroup }) {
  // as one text, so that edits which switch no command draw nothing anew
  const off = useProjectState(() =>
    group.commands
      .filter((command) => !command.enabled())
      .map(({ id }) => id)
      .join(' '),
  );
  return (
    <MenuTrigger>
      <Button className="menu-head">{group.label}</Button>
      <Popover className="popover" placement="bottom start">
        <Menu
          className="menu commands"
          aria-label={group.label}
          disabledKeys={off.split(' ')}
          onAction={(id) => perform(String(id))}
        >
          {group.commands.map(({ id, label, keys }) => (
            <MenuItem key={id} id={id} textValue={label} className="menu-item">
              <Text slot="label">{label}</Text>
              {/* written by the style sheet: told as description, and no part of the name */}
              {keys && <Keyboard data-keys={keysText(keys)} />}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}

/** One button for each group. */
export function Menus() {
  return (
    <nav className="menus" aria-label={text.commands.menus}>
      {commandGroups.map((group) => (
        <GroupMenu key={group.id} group={group} />
      ))}
    </nav>
  );
}
