/** Commands on how things are looked at. */

import { otherUnits, showUnits } from '../look.ts';
import { sceneCommands } from '../scene/sceneCommands.ts';
import { turnScrew } from '../scene/sceneStore.ts';
import { toggleMelt } from '../store/melt.ts';
import { flyTo, type Place, setView, toggleTheme, viewStore } from '../store/view.ts';
import { drawingText } from '../strings/drawing.ts';
import { editText } from '../strings/editing.ts';
import { text } from '../strings.ts';
import type { Command } from './types.ts';
import { always, isOpen } from './when.ts';

const look = (to: Place, keys: string): Command => ({
  id: `look-${to}`,
  label: text.commands.look(text.see.places[to]),
  keys,
  enabled: isOpen,
  perform: () => flyTo(to),
});

/** In the order of the menu. */
export const viewCommands: readonly Command[] = [
  look('whole', 'Alt+1'),
  look('feed', 'Alt+2'),
  look('screw', 'Alt+3'),
  look('outlet', 'Alt+4'),
  {
    id: 'drawing',
    label: drawingText.command,
    keys: 'Mod+Shift+D',
    enabled: isOpen,
    perform: () => setView({ seeing: viewStore.getState().seeing === 'drawing' ? 'solid' : 'drawing' }),
  },
  { id: 'melt-age', label: text.melt.command, keys: 'Alt+5', enabled: isOpen, perform: toggleMelt },
  { id: 'turn', label: text.commands.turn, enabled: isOpen, perform: turnScrew },
  {
    id: 'slice',
    label: text.commands.slice,
    enabled: isOpen,
    perform: () => setView({ section: viewStore.getState().section === null ? 0 : null }),
  },
  ...sceneCommands,
  {
    id: 'units',
    label: editText.units.command,
    keys: 'Mod+I',
    enabled: always,
    perform: () => showUnits(otherUnits()),
  },
  { id: 'theme', label: text.commands.theme, enabled: always, perform: toggleTheme },
];
