/** Where to look from, what to leave out, whether the screw turns. */

import { Button, ToggleButton } from 'react-aria-components';
import { perform } from '../commands.ts';
import { useMelt } from '../store/melt.ts';
import { type Place, setView, useView, type ViewState } from '../store/view.ts';
import { sceneText } from '../strings/scene.ts';
import { text } from '../strings.ts';
import { stepScrew, useScene } from './sceneStore.ts';
import { prefersStill } from './still.ts';

const words = text.see;
const places = Object.keys(words.places) as Place[];
const barrelViews = Object.entries(words.barrelViews) as [ViewState['barrel'], string][];

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

/** Turns the screw at its speed; where less motion is wanted, by steps. */
function TurnTool() {
  const turning = useView((state) => state.turning);
  if (prefersStill()) {
    return (
      <Button className="tool" onPress={stepScrew}>
        <span title={sceneText.step.help}>{sceneText.step.tool}</span>
      </Button>
    );
  }
  return (
    <ToggleButton className="tool" isSelected={turning} onChange={(on) => setView({ turning: on })}>
      <span title={words.turnHelp}>{turning ? words.stop : words.turn}</span>
    </ToggleButton>
  );
}

const extras = [
  ['grains', 'grains', sceneText.grains],
  ['front', 'melt-front', sceneText.front],
  ['measuring', 'measure', sceneText.measure],
] as const;

/** What can be shown besides the parts. */
function ExtraTools() {
  const state = useScene((scene) => scene);
  return extras.map(([key, command, { tool, help }]) => (
    <ToggleButton key={key} className="tool" isSelected={state[key]} onChange={() => perform(command)}>
      <span title={help}>{tool}</span>
    </ToggleButton>
  ));
}

/** The row above the 3D view. */
export function ViewTools() {
  const barrel = useView((state) => state.barrel);
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
      <span className="tool-set">
        <SliceTool />
        <MeltTool />
        <ExtraTools />
        <TurnTool />
      </span>
    </div>
  );
}
