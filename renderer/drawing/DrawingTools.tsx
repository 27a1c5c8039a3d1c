/** Switch between the 3D view and the drawing, and the drawing's own row of tools. */

import { Button, ToggleButton } from 'react-aria-components';
import { commandOf, perform } from '../commands.ts';
import { keysText } from '../keys.ts';
import { type Place, setView, useView } from '../store/view.ts';
import { drawingText } from '../strings/drawing.ts';
import { text } from '../strings.ts';
import { setDrawing, useDrawing } from './store.ts';
import { type Group, groups, type Manners } from './types.ts';

const words = drawingText;
const places = Object.keys(text.see.places) as Place[];

/** Two ways to see the head. */
export function SeeSwitch() {
  const seeing = useView((state) => state.seeing);
  const keys = keysText(commandOf('drawing').keys ?? '');
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would bring a frame of its own
    <span className="see-switch" role="group" aria-label={words.seeing.label}>
      {(['solid', 'drawing'] as const).map((id) => (
        <ToggleButton key={id} className="tool" isSelected={seeing === id} onChange={() => setView({ seeing: id })}>
          <span title={`${words.command} (${keys})`}>{words.seeing[id]}</span>
        </ToggleButton>
      ))}
    </span>
  );
}

function GroupTools() {
  const shown = useDrawing((state) => state.shown);
  const toggle = (group: Group, on: boolean) =>
    setDrawing({ shown: groups.filter((one) => (one === group ? on : shown.includes(one))) });
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset would bring a frame of its own
    <span className="tool-set" role="group" aria-label={words.groupsLabel}>
      <span className="tool-label">{words.groupsWord}</span>
      {groups.map((group) => (
        <ToggleButton
          key={group}
          className={`tool group-${group}`}
          isSelected={shown.includes(group)}
          onChange={(on) => toggle(group, on)}
        >
          <span title={`${words.groupsLabel}: ${words.groups[group]}`}>{words.groups[group]}</span>
        </ToggleButton>
      ))}
    </span>
  );
}

function MannerTool({ name, help }: { readonly name: keyof Manners; readonly help: string }) {
  const manners = useDrawing((state) => state.manners);
  return (
    <label className="check" title={help}>
      <input
        type="checkbox"
        checked={manners[name]}
        onChange={(event) => setDrawing({ manners: { ...manners, [name]: event.target.checked } })}
      />
      {words[name]}
    </label>
  );
}

/** The row above the drawing. */
export function DrawingTools({ onZoom }: { onZoom(factor: number): void }) {
  return (
    <div className="view-tools drawing-tools" role="toolbar" aria-label={words.tools}>
      <span className="tool-set">
        {places.map((place) => (
          <Button key={place} className="tool" onPress={() => perform(`look-${place}`)}>
            {text.see.places[place]}
          </Button>
        ))}
        <Button className="tool sign" aria-label={words.zoomOut} onPress={() => onZoom(1 / 1.4)}>
          −
        </Button>
        <Button className="tool sign" aria-label={words.zoomIn} onPress={() => onZoom(1.4)}>
          +
        </Button>
      </span>
      <GroupTools />
      <MannerTool name="keepLength" help={words.keepLengthHelp} />
      <MannerTool name="joined" help={words.joinedHelp} />
    </div>
  );
}
