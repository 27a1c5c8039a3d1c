/** The shipped materials, to be copied into the project. */

import { useState } from 'react';
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import type { MaterialInfo } from '../../bridge.ts';
import { addFromLibrary, listLibrary } from '../../library.ts';
import { text } from '../../strings.ts';

const words = text.describe.granulate;

/** A button that opens the list. */
export function LibraryMenu() {
  const [materials, setMaterials] = useState<readonly MaterialInfo[]>([]);
  return (
    <MenuTrigger
      onOpenChange={(open) => {
        if (open) void listLibrary().then(setMaterials);
      }}
    >
      <Button className="tool" aria-label={words.addFromLibrary}>
        {words.addFromLibrary} …
      </Button>
      <Popover className="popover" placement="bottom start">
        <Menu
          className="menu library"
          aria-label={words.addFromLibrary}
          onAction={(id) => void addFromLibrary(String(id))}
          renderEmptyState={() => <p className="quiet menu-item">{words.libraryEmpty}</p>}
        >
          {materials.map(({ id, title, note }) => (
            <MenuItem key={id} id={id} textValue={title} className="menu-item">
              {title}
              {note && <span className="quiet">{note}</span>}
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
