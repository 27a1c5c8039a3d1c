/** The shipped materials, to be copied into the project. */

import { useState } from 'react';
import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import type { MaterialInfo } from '../../bridge.ts';
import { addFromLibrary, listLibrary } from '../../library.ts';
import { text } from '../../strings.ts';
import { knownSigns } from './Known.tsx';
import { type LibraryMark, libraryMarks } from './libraryMarks.ts';

const words = text.describe.granulate;

function Mark({ mark }: { readonly mark: LibraryMark | undefined }) {
  if (!mark) return null;
  return (
    <span className={`library-mark known-${mark.state}`}>
      <span aria-hidden="true">{knownSigns[mark.state]}</span> {mark.words}
    </span>
  );
}

/** A button that opens the list. */
export function LibraryMenu() {
  const [materials, setMaterials] = useState<readonly MaterialInfo[]>([]);
  const [marks, setMarks] = useState<ReadonlyMap<string, LibraryMark>>(new Map());
  const list = async () => {
    const listed = await listLibrary();
    setMaterials(listed);
    setMarks(await libraryMarks(listed.map(({ id }) => id)));
  };
  return (
    <MenuTrigger
      onOpenChange={(open) => {
        if (open) void list();
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
              <Mark mark={marks.get(id)} />
            </MenuItem>
          ))}
        </Menu>
      </Popover>
    </MenuTrigger>
  );
}
