/** Below the drawing: scale bar, what the lines mean, what found no room, and why something cannot be done. */

import { Button, Menu, MenuItem, MenuTrigger, Popover } from 'react-aria-components';
import { unitText } from '../fields/spec.ts';
import { useLook } from '../look.ts';
import { useDesk } from '../panels/desk.ts';
import type { EntryTool } from '../panels/EntryTools.tsx';
import { scaleBarShape } from '../scene/scaleBar.ts';
import { drawingText } from '../strings/drawing.ts';
import { pieceTools, sectionTools, zoneTools } from './entryTools.ts';
import { setDrawing, useDrawing } from './store.ts';
import type { Entry } from './types.ts';

const words = drawingText;
/** Longest scale bar, px. */
const mostBar = 110;

function ScaleBar({ zoom }: { readonly zoom: number }) {
  const { width, label } = scaleBarShape(1000 * zoom, mostBar, useLook());
  return (
    <span className="drawing-scale" role="img" aria-label={words.scale(label)}>
      <i style={{ width }} />
      {label}
    </span>
  );
}

/** Name and tools of a chosen entry; null where it is gone. */
function useEntry(entry: Entry | null): { readonly name: string; readonly tools: readonly EntryTool[] } | null {
  const { revision, root, locked } = useDesk();
  if (!entry) return null;
  const { list, index } = entry;
  const place = (path: readonly (string | number)[], count: number) => ({ list: path, index, count, locked });
  const { sections } = revision.screw;
  const { zones } = revision.barrel;
  const { segments } = revision.nozzle;
  if (list === 'sections' && sections[index]) {
    const tools = sectionTools(revision, place([...root, 'screw', list], sections.length));
    return { name: words.section(index + 1, sections[index].name ?? ''), tools };
  }
  if (list === 'zones' && zones[index]) {
    const tools = zoneTools(revision, place([...root, 'barrel', list], zones.length));
    return { name: words.zone(zones[index].name), tools };
  }
  if (list === 'segments' && segments[index]) {
    const tools = pieceTools(place([...root, 'nozzle', list], segments.length));
    return { name: words.piece(index + 1, segments[index].name), tools };
  }
  return null;
}

/** The chosen piece, zone or section, and what can be done with it. */
function ChosenEntry() {
  const chosen = useDrawing((state) => state.chosen);
  const entry = useEntry(chosen);
  if (!entry) return null;
  const { name, tools } = entry;
  return (
    <MenuTrigger>
      <Button className="tool entry-tool" aria-label={words.entry.label(name)}>
        {name} <span aria-hidden="true">▾</span>
      </Button>
      <Popover className="popover" placement="top start">
        <Menu
          className="menu"
          aria-label={name}
          disabledKeys={tools.filter((tool) => tool.disabled).map((tool) => tool.label)}
          onAction={(key) => tools.find((tool) => tool.label === key)?.act()}
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

/** Why the latest attempt was refused; goes when it is pressed. */
function Notice() {
  const notice = useDrawing((state) => state.notice);
  return (
    <span className="drawing-notice" role="status">
      {notice && (
        <button type="button" className="link" onClick={() => setDrawing({ notice: null })}>
          {notice}
        </button>
      )}
    </span>
  );
}

/** The row over the drawing's lower edge. */
export function Foot({ zoom, left }: { readonly zoom: number; readonly left: number }) {
  const look = useLook();
  return (
    <div className="drawing-foot">
      <ScaleBar zoom={zoom} />
      <span className="quiet">{words.unitNote(unitText('mm', look))}</span>
      <span className="key-flow-wall">{words.flowWall}</span>
      <span className="key-solid-wall">{words.solid}</span>
      {left > 0 && <span className="quiet">{words.more(left)}</span>}
      <ChosenEntry />
      <Notice />
    </div>
  );
}
