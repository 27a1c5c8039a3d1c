/** Where to look from, what to leave out, whether the screw turns. */

import { Button, ToggleButton } from 'react-aria-components';
import { perform } from '../commands.ts';
import { useMelt } from '../store/melt.ts';
import { type Place, setView, useView, type ViewState } from '../store/view.ts';
import { text } from '../strings.ts';
import { useMeltShown } from './openPlanes.ts';

const words = text.see;
const places = Object.keys(words.places) as Place[];
const barrelViews = Object.entries(words.barrelViews) as [ViewState['barrel'], string][];

/** Moves the slice; stands in the view's corner, so that nothing shifts when it comes. */
export function SliceSlider() {
  const section = useView((state) => state.section);
  const throughAxis = useMeltShown();
  if (section === null || throughAxis) return null;
  return (
    <label className="slice-slider">
      {words.sectionAt}
      <input
        type="range"
        min={-1}
        max={1}
        step={0.02}
        value={section}
        onChange={(event) => setView({ section: Number(event.target.value) })}
      />
    </label>
  );
}

function SliceTool() {
  const on = useView((state) => state.section !== null);
  return (
    <ToggleButton className="tool" isSelected={on} onChange={(next) => setView({ section: next ? 0 : null })}>
      {words.section}
    </ToggleButton>
  );
}

function MeltTool() {
  const shown = useMelt((state) => state.shown);
  return (
    <ToggleButton className="tool" isSelected={shown} onChange={() => perform('melt-age')}>
      <span title={text.melt.showHelp}>{text.melt.show}</span>
    </ToggleButton>
  );
}

/** The row above the 3D view. */
export function ViewTools() {
  const barrel = useView((state) => state.barrel);
  const turning = useView((state) => state.turning);
  return (
    <div className="view-tools" role="toolbar" aria-label={words.title}>
      <span className="tool-set">
        {places.map((place) => (
          <Button key={place} className="tool" onPress={() => perform(`look-${place}`)}>
            {words.places[place]}
          </Button>
        ))}
      </span>
      <label className="tool-label">
        {words.barrel}{' '}
        <select value={barrel} onChange={(event) => setView({ barrel: event.target.value as ViewState['barrel'] })}>
          {barrelViews.map(([id, name]) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <SliceTool />
      <MeltTool />
      <ToggleButton className="tool" isSelected={turning} onChange={(on) => setView({ turning: on })}>
        <span title={words.turnHelp}>{turning ? words.stop : words.turn}</span>
      </ToggleButton>
    </div>
  );
}
